/**
 * The folder of what devices share: the secret that lets them in, and of each room its document, `<room>.yjs`: a Yjs update with its
 * SHA-256 behind it, which Yjs itself reads past. Every file is written beside its place, brought to the disk and then put there, so
 * that it is the old one or the new one whatever happens.
 */
import { createHash, randomBytes } from 'node:crypto';
import {
  accessSync,
  closeSync,
  constants,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

const CHECKSUM_BYTES = 32;
const SECRET_BYTES = 16;
const SECRET = /^[\w-]{22}$/;
const ROOM_FILE = /^([0-9a-z]{16,40})\.yjs$/;

/**
 * Rooms that are kept. A job is shared for as long as it is worked on, then nobody says that it is over; without a bound the folder
 * would grow for ever. Each device keeps its own copy, so what goes here comes back when one of them joins again.
 */
export const MOST_ROOMS = 50;

/** Where it is unless somebody says otherwise. */
export const usualFolder = () => process.env.CAGEWRIGHT_SHARED || join(homedir(), '.cagewright', 'shared');

/** @param {Uint8Array} bytes */
const checksum = (bytes) => createHash('sha256').update(bytes).digest();

/** @param {unknown} error */
const isMissing = (error) => /** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT';

/**
 * What `read` gives; undefined where there is no such file.
 *
 * @template T
 * @param {() => T} read
 */
function ifThere(read) {
  try {
    return read();
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

/**
 * Opens the folder, made if it is not there; throws the system's error where that cannot be done.
 *
 * @param {string} path
 * @param {(sentence: string) => void} say what somebody should hear of
 */
export function openFolder(path, say = console.error) {
  mkdirSync(path, { recursive: true, mode: 0o700 });
  accessSync(path, constants.R_OK | constants.W_OK | constants.X_OK);
  for (const name of readdirSync(path)) if (name.endsWith('.tmp')) rmSync(join(path, name)); // of one that was ended while it wrote

  /**
   * @param {string} name
   * @param {string | Uint8Array} content
   */
  function write(name, content) {
    const beside = join(path, `${name}.${process.pid}.tmp`);
    const file = openSync(beside, 'w', 0o600);
    try {
      writeFileSync(file, content);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, join(path, name));
    if (process.platform === 'win32') return; // there a folder cannot be opened
    const folder = openSync(path, 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  }

  /** @param {string} name */
  function setAside(name) {
    renameSync(join(path, name), join(path, `${name}.damaged`));
    say(
      `${join(path, name)} is damaged. It was set aside as ${name}.damaged; devices that have the job bring it again.`,
    );
  }

  /** Which file lies there: another after every write, whoever wrote. @param {string} name */
  function stampOf(name) {
    const found = ifThere(() => statSync(join(path, name)));
    return found && `${found.ino} ${found.size} ${found.mtimeMs}`;
  }

  function newSecret() {
    const secret = randomBytes(SECRET_BYTES).toString('base64url');
    write('secret', `${secret}\n`);
    return secret;
  }

  function readSecret() {
    const secret = ifThere(() => readFileSync(join(path, 'secret'), 'utf8').trim());
    if (secret !== undefined && SECRET.test(secret)) return secret;
    if (secret !== undefined)
      say(`${join(path, 'secret')} holds no secret, so a new one was made: devices join again.`);
    return newSecret();
  }

  let secret = readSecret();

  return {
    path,
    /** What lets a device in: 128 bits, base64url. */
    secret: () => secret,
    /** Makes another secret, and only then forgets the old one. */
    renewSecret: () => (secret = newSecret()),

    /**
     * The disk of one room.
     *
     * @param {string} room
     */
    ofRoom(room) {
      const name = `${room}.yjs`;
      /** @type {string | undefined} */
      let seen;

      /** What lies there; undefined: nothing, or nothing whole, which is then set aside. */
      function read() {
        const bytes = ifThere(() => readFileSync(join(path, name)));
        if (bytes === undefined) return undefined;
        const state = bytes.subarray(0, -CHECKSUM_BYTES);
        if (!checksum(state).equals(bytes.subarray(-CHECKSUM_BYTES))) {
          setAside(name);
          return undefined;
        }
        const now = new Date();
        utimesSync(join(path, name), now, now); // it is used, though nothing may be changed
        seen = stampOf(name);
        return new Uint8Array(state);
      }

      return {
        read,
        changed: () => (stampOf(name) === seen ? undefined : read()),
        /** @param {Uint8Array} state */
        write(state) {
          write(name, Buffer.concat([state, checksum(state)]));
          seen = stampOf(name);
        },
      };
    },

    /**
     * Takes the longest unused rooms away until no more than MOST_ROOMS are left.
     *
     * @param {(room: string) => boolean} isOpen such a room stays
     */
    thin(isOpen) {
      const rooms = readdirSync(path).flatMap((name) => {
        const [, room] = ROOM_FILE.exec(name) ?? [];
        return room ? [{ room, used: statSync(join(path, name)).mtimeMs }] : [];
      });
      const unused = rooms.filter(({ room }) => !isOpen(room)).toSorted((a, b) => a.used - b.used);
      for (const { room } of unused.slice(0, Math.max(0, rooms.length - MOST_ROOMS))) rmSync(join(path, `${room}.yjs`));
    },
  };
}
