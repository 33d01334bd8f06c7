/**
 * The relay: devices that show the secret share documents by rooms, over WebSocket and with y-websocket's own messages. It passes on
 * and keeps; what a document means it does not know.
 */
import { STATUS_CODES } from 'node:http';
import { WebSocketServer } from 'ws';
import { atTheDoor, PROTOCOL } from './relay/door.mjs';
import { openRoom } from './relay/room.mjs';

const MOST_CONNECTIONS = 32;
/** Bytes of one message. */
const LARGEST_MESSAGE = 16 * 2 ** 20;
/** Bytes of one message from who has not shown the secret: it is thrown away. */
const LARGEST_OF_STRANGERS = 1024;
/** ms between two questions whether a connection still lives. */
const ASKED_EVERY = 30_000;
/** ms that a closed connection has to agree. */
const CLOSED_WITHIN = 1000;

const GOING_AWAY = 1001;
const TEXT = 1003;
const FAULT_HERE = 1011;
const NOT_LET_IN = 4401;

/** @param {number} maxPayload */
function sockets(maxPayload) {
  const options = {
    noServer: true,
    maxPayload,
    closeTimeout: CLOSED_WITHIN, // not in the types yet
    perMessageDeflate: false,
    handleProtocols: () => PROTOCOL,
  };
  return new WebSocketServer(options);
}

/**
 * @param {import('node:stream').Duplex} socket
 * @param {number} status
 */
function refuse(socket, status) {
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

/** @param {import('ws').WebSocket} socket */
function sendAway(socket) {
  socket.on('error', () => {}); // what it still sends is not looked at
  socket.close(NOT_LET_IN, 'the secret is not let in');
}

/**
 * Opens a relay on a folder.
 *
 * @param {ReturnType<typeof import('./relay/folder.mjs').openFolder>} folder
 */
export function openRelay(folder) {
  const devices = sockets(LARGEST_MESSAGE);
  const strangers = sockets(LARGEST_OF_STRANGERS);
  /** @type {Map<string, ReturnType<typeof openRoom>>} */
  const rooms = new Map();

  /** @param {string} name */
  function roomOf(name) {
    const open = rooms.get(name);
    if (open) return open;
    const disk = folder.ofRoom(name);
    const room = openRoom({
      ...disk,
      write(state) {
        disk.write(state);
        folder.thin((other) => rooms.has(other));
      },
    });
    rooms.set(name, room);
    return room;
  }

  /** @param {string} name */
  function closeRoom(name) {
    const room = rooms.get(name);
    try {
      room?.save();
      room?.end();
      rooms.delete(name);
    } catch (error) {
      // It stays open, and tries again by itself.
      console.error(`A shared job could not be written: ${/** @type {Error} */ (error).message}`);
    }
  }

  /**
   * @param {import('ws').WebSocket} socket
   * @param {string} name
   */
  function letIn(socket, name) {
    socket.on('error', () => {}); // it is closed with the code that says what was wrong
    socket.binaryType = 'arraybuffer';
    let room;
    try {
      room = roomOf(name);
    } catch (error) {
      console.error(`A shared job could not be read: ${/** @type {Error} */ (error).message}`);
      socket.close(FAULT_HERE, 'the shared job cannot be read');
      return;
    }
    room.join(socket);

    let isAlive = true;
    socket.on('pong', () => (isAlive = true));
    const asking = setInterval(() => {
      if (!isAlive) socket.terminate();
      isAlive = false;
      socket.ping();
    }, ASKED_EVERY);

    socket.on('message', (data, isBinary) => {
      if (socket.readyState !== socket.OPEN) return; // it was closed, and what it had sent before it knew does not count
      if (!isBinary) {
        socket.close(TEXT, 'text is not spoken here');
        return;
      }
      try {
        room.take(socket, /** @type {ArrayBuffer} */ (data));
      } catch (error) {
        console.error(`A message was not taken: ${/** @type {Error} */ (error).message}`);
        socket.close(FAULT_HERE, 'a fault of the relay');
      }
    });
    socket.on('close', () => {
      clearInterval(asking);
      if (room.leave(socket)) closeRoom(name);
    });
  }

  return {
    /** What lets a device in. */
    secret: folder.secret,

    /** Makes a new secret; everybody is out until they show it. */
    renewSecret() {
      folder.renewSecret();
      for (const socket of devices.clients) sendAway(socket);
    },

    /**
     * Answers the upgrade of a connection.
     *
     * @param {import('node:http').IncomingMessage} request
     * @param {import('node:stream').Duplex} socket
     * @param {Buffer} head
     */
    upgrade(request, socket, head) {
      socket.on('error', () => {}); // one that goes before it was let in
      const asked = atTheDoor(request, folder.secret());
      if ('status' in asked) {
        refuse(socket, asked.status);
        return;
      }
      const these = asked.isLetIn ? devices : strangers;
      if (these.clients.size >= MOST_CONNECTIONS) refuse(socket, 503);
      else these.handleUpgrade(request, socket, head, (ws) => (asked.isLetIn ? letIn(ws, asked.room) : sendAway(ws)));
    },

    /** Writes all rooms and ends all connections. */
    close() {
      for (const socket of devices.clients) socket.close(GOING_AWAY, 'the server is ended');
      for (const room of rooms.keys()) closeRoom(room);
      for (const socket of [...devices.clients, ...strangers.clients]) socket.terminate();
    },
  };
}
