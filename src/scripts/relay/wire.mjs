/**
 * The messages of y-websocket, read with suspicion: what is not whole and of a known kind never reaches a room. A message is a number
 * (0 the document, 1 who is there, 3 a question who is there) and what belongs to it.
 */
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { encodeAwarenessUpdate, modifyAwarenessUpdate } from 'y-protocols/awareness';
import {
  messageYjsSyncStep1,
  messageYjsSyncStep2,
  messageYjsUpdate,
  writeSyncStep1,
  writeSyncStep2,
  writeUpdate,
} from 'y-protocols/sync';
import * as Y from 'yjs';

const SYNC = 0;
const AWARENESS = 1;
const QUERY_AWARENESS = 3;

/** Devices that one message may speak of: a provider hands on what it hears of the others, and more than this are never let in. */
const DEVICES_A_MESSAGE = 64;

/** @param {Uint8Array} update throws unless every state in it is null or an object */
function checkAwareness(update) {
  if (decoding.readVarUint(decoding.createDecoder(update)) > DEVICES_A_MESSAGE) throw new Error('too many devices');
  modifyAwarenessUpdate(update, (state) => {
    if (typeof state !== 'object' || Array.isArray(state)) throw new Error('no state of a device');
    return state;
  });
}

/**
 * What a message says; undefined: of no kind that is known here. Throws where it is not whole. Every array is a copy, so that nothing
 * holds on to what came with it.
 *
 * @param {ArrayBuffer} data
 * @returns {{ readonly kind: 'asks', readonly stateVector: Uint8Array }
 *   | { readonly kind: 'update' | 'awareness', readonly update: Uint8Array } | { readonly kind: 'asks who' } | undefined}
 */
export function readMessage(data) {
  const decoder = decoding.createDecoder(new Uint8Array(data));
  /** The array that the message ends with. */
  const rest = () => {
    const bytes = decoding.readVarUint8Array(decoder).slice();
    if (decoder.pos !== data.byteLength) throw new Error('more than one message');
    return bytes;
  };
  const type = decoding.readVarUint(decoder);
  if (type === QUERY_AWARENESS) return { kind: 'asks who' };
  if (type === AWARENESS) {
    const update = rest();
    checkAwareness(update);
    return { kind: 'awareness', update };
  }
  if (type !== SYNC) return undefined;
  const step = decoding.readVarUint(decoder);
  if (step === messageYjsSyncStep1) {
    const stateVector = rest();
    Y.decodeStateVector(stateVector);
    return { kind: 'asks', stateVector };
  }
  if (step !== messageYjsSyncStep2 && step !== messageYjsUpdate) return undefined;
  const update = rest();
  Y.decodeUpdate(update);
  return { kind: 'update', update };
}

/**
 * @param {number} type
 * @param {(encoder: encoding.Encoder) => void} write
 */
function message(type, write) {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
}

/** @param {Y.Doc} doc which asks for what it does not have */
export const asking = (doc) => message(SYNC, (encoder) => writeSyncStep1(encoder, doc));

/**
 * What whoever asks lacks of a document.
 *
 * @param {Y.Doc} doc
 * @param {Uint8Array} stateVector
 */
export const answering = (doc, stateVector) => message(SYNC, (encoder) => writeSyncStep2(encoder, doc, stateVector));

/** @param {Uint8Array} update */
export const telling = (update) => message(SYNC, (encoder) => writeUpdate(encoder, update));

/**
 * What is known of some devices; of those that are gone, that.
 *
 * @param {import('y-protocols/awareness').Awareness} awareness
 * @param {number[]} clients
 */
export const introducing = (awareness, clients) =>
  message(AWARENESS, (encoder) => encoding.writeVarUint8Array(encoder, encodeAwarenessUpdate(awareness, clients)));
