/**
 * A room: one document that several devices share, as long as one of them is there. Each message goes into it whole or not at all, and
 * what it has become is on the disk at the latest KEPT_WITHIN later.
 */
import { applyAwarenessUpdate, Awareness, removeAwarenessStates } from 'y-protocols/awareness';
import * as Y from 'yjs';
import { answering, asking, introducing, readMessage, telling } from './wire.mjs';

/** ms from a change to the disk, also while changes go on. */
const KEPT_WITHIN = 300;
/** ms to the next try where the disk did not take it. */
const TRIED_AGAIN_AFTER = 5000;
/** Bytes of a room's document, encoded. */
const LARGEST = 64 * 2 ** 20;
/** Bytes that may wait for a device that does not read: its whole document twice. */
const WAITING = 2 * LARGEST;
/** Bytes of what devices say of themselves in one message. */
const LARGEST_AWARENESS = 64 * 2 ** 10;
/** Devices that are gone and still remembered, so that late word of them is known to be late. */
const REMEMBERED = 1000;

/** Close codes: what cannot be taken, what is not whole, and what is too large; from 4400 on the page does not try again. */
const UNKNOWN_KIND = 1003;
const NOT_WHOLE = 1007;
const TOO_LARGE = 4413;

/** @typedef {import('ws').WebSocket} Socket */

/**
 * A document of what was kept; throws where one part does not go in.
 *
 * @param {readonly Uint8Array[]} parts
 */
function documentOf(parts) {
  const doc = new Y.Doc();
  for (const part of parts) Y.applyUpdate(doc, part);
  return doc;
}

/**
 * @param {Uint8Array} a
 * @param {Uint8Array} b
 */
const isSame = (a, b) => Buffer.compare(a, b) === 0;

/**
 * @param {Socket} socket
 * @param {Uint8Array} bytes
 */
function send(socket, bytes) {
  if (socket.readyState !== socket.OPEN) return;
  if (socket.bufferedAmount > WAITING) socket.terminate();
  else socket.send(bytes, () => {}); // one that went meanwhile is heard of by its close
}

/**
 * Opens a room with what lies of it on the disk.
 *
 * @param {{ read(): Uint8Array | undefined, changed(): Uint8Array | undefined, write(state: Uint8Array): void }} disk `changed` is what lies
 *   there if somebody else has written it since
 */
export function openRoom(disk) {
  /** Each with the devices that it speaks for. @type {Map<Socket, Set<number>>} */
  const connections = new Map();
  /** What the disk has, and what came since: from these the document can be made again. */
  let kept = disk.read() ?? Y.encodeStateAsUpdate(new Y.Doc());
  /** @type {Uint8Array[]} */
  let since = [];
  let doc = documentOf([kept]);
  const awareness = new Awareness(new Y.Doc());
  awareness.setLocalState(null); // the relay is no device
  /** @type {NodeJS.Timeout | undefined} */
  let timer;

  /** @param {Uint8Array} bytes */
  const toAll = (bytes) => {
    for (const socket of connections.keys()) send(socket, bytes);
  };

  /**
   * Makes the document again, since part of an update may have gone in. If what does not go in is what lay there waiting for something
   * that never came, that is left out, and everybody is asked for what they have. False: it is the update.
   *
   * @param {Uint8Array} update
   */
  function putAgain(update) {
    doc = documentOf([kept, ...since]);
    if (doc.store.pendingStructs === null) return false;
    const whole = documentOf([kept, ...since]);
    whole.store.pendingStructs = null;
    whole.store.pendingDs = null;
    const state = Y.encodeStateAsUpdate(whole);
    try {
      Y.applyUpdate(whole, update);
    } catch {
      return false;
    }
    [doc, kept, since] = [whole, state, [update]];
    toAll(telling(update));
    toAll(asking(doc));
    return true;
  }

  /**
   * Puts an update into the document and tells everybody what it has changed: also the one that sent it, since it may have been what
   * another's waited for. False: it does not go in, and the document is what it was.
   *
   * @param {Uint8Array} update
   */
  function put(update) {
    /** @type {Uint8Array[]} */
    const changes = [];
    /** @param {Uint8Array} change */
    const note = (change) => changes.push(change);
    doc.on('update', note);
    try {
      Y.applyUpdate(doc, update);
    } catch {
      return putAgain(update);
    }
    doc.off('update', note);
    since.push(update);
    for (const change of changes) toAll(telling(change));
    return true;
  }

  /** Writes what the document has become; throws the system's error, and then all is kept for the next try. */
  function save() {
    clearTimeout(timer);
    timer = undefined;
    try {
      const others = disk.changed(); // of a second program on the same folder: both have part of the whole
      if (others !== undefined) put(others);
      const state = Y.encodeStateAsUpdate(doc);
      if (!isSame(state, others ?? kept)) disk.write(state);
      kept = state;
      since = [];
    } catch (error) {
      saveAfter(TRIED_AGAIN_AFTER);
      throw error;
    }
  }

  /** @param {number} wait ms */
  function saveAfter(wait) {
    timer ??= setTimeout(() => {
      try {
        save();
      } catch (error) {
        console.error(`A shared job could not be written, and will be again: ${/** @type {Error} */ (error).message}`);
      }
    }, wait);
  }

  /** @param {Uint8Array} update */
  function hasRoomFor(update) {
    const grown = since.reduce((sum, { length }) => sum + length, kept.length) + update.length;
    return grown <= LARGEST || Y.encodeStateAsUpdate(doc).length + update.length <= LARGEST;
  }

  awareness.on(
    'update',
    /**
     * @param {{ added: number[], updated: number[], removed: number[] }} changes
     * @param {unknown} from
     */
    ({ added, updated, removed }, from) => {
      const own = connections.get(/** @type {Socket} */ (from));
      for (const client of own ? [...added, ...updated] : []) {
        // The last that had news of a device speaks for it: after a break it comes again by another connection.
        for (const devices of connections.values()) devices.delete(client);
        own?.add(client);
      }
      for (const devices of connections.values()) for (const client of removed) devices.delete(client);
      // Also to the one that sent it: a provider that hears nothing for 30 s, not even itself, takes the connection for dead.
      toAll(introducing(awareness, [...added, ...updated, ...removed]));
    },
  );

  /**
   * @param {Socket} socket
   * @param {Uint8Array} update
   */
  function hear(socket, update) {
    if (update.length > LARGEST_AWARENESS) {
      socket.close(TOO_LARGE, 'too much said of a device');
      return;
    }
    applyAwarenessUpdate(awareness, update, socket);
    if (awareness.meta.size <= REMEMBERED) return;
    for (const client of awareness.meta.keys()) if (!awareness.states.has(client)) awareness.meta.delete(client);
  }

  return {
    /** @param {Socket} socket one that was let in */
    join(socket) {
      connections.set(socket, new Set());
      send(socket, asking(doc));
      const present = [...awareness.getStates().keys()];
      if (present.length > 0) send(socket, introducing(awareness, present));
    },

    /**
     * @param {Socket} socket
     * @param {ArrayBuffer} data
     */
    take(socket, data) {
      let message;
      try {
        message = readMessage(data);
      } catch {
        socket.close(NOT_WHOLE, 'a message that is not whole');
        return;
      }
      if (message === undefined) socket.close(UNKNOWN_KIND, 'a message of no known kind');
      else if (message.kind === 'asks') send(socket, answering(doc, message.stateVector));
      else if (message.kind === 'asks who') send(socket, introducing(awareness, [...awareness.getStates().keys()]));
      else if (message.kind === 'awareness') hear(socket, message.update);
      else if (!hasRoomFor(message.update)) socket.close(TOO_LARGE, 'the shared job would be too large');
      else if (!put(message.update)) socket.close(NOT_WHOLE, 'a change that does not go in');
      else saveAfter(KEPT_WITHIN);
    },

    /**
     * @param {Socket} socket
     * @returns {boolean} nobody is left
     */
    leave(socket) {
      const devices = connections.get(socket) ?? [];
      connections.delete(socket);
      removeAwarenessStates(awareness, [...devices], null);
      return connections.size === 0;
    },

    save,

    /** To be called once it is saved. */
    end() {
      clearTimeout(timer);
      awareness.doc.destroy();
    },
  };
}
