/**
 * The open job on several devices: what is edited here goes to the others, what they do comes here as steps of theirs. It follows the document; what the
 * document refuses of what has come is held back, and said, and the job stays as it is.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { lastNumberOf, numbersOf } from '../../core/job/numbers.ts';
import { serialiseJob } from '../../core/job/serialise.ts';
import { renumbered, withNumbers } from '../../core/edit/numbers.ts';
import { sameData } from '../../core/job/equal.ts';
import { bareId } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { cellAt, nextTime, withEntries, type Entry } from '../../core/sharing/entries.ts';
import { HEAD } from '../../core/sharing/laid-out.ts';
import { putTogether } from '../../core/sharing/put-together.ts';
import {
  begun,
  caughtUp,
  edited,
  heldBack,
  received,
  replicaOf,
  type Edited,
  type Replica,
} from '../../core/sharing/replica.ts';
import { applyWhatFits } from '../../core/session/rebased.ts';
import { diffJobs } from '../../core/job/diff.ts';
import { admitText } from '../document/admit.ts';
import type { History } from '../../core/session/history.ts';
import { knownOf } from '../../core/sharing/written.ts';
import type { DocumentStore } from '../document/createDocument.ts';
import type { KeepingStore } from '../keeping/createKeeping.ts';
import type { Opening } from '../opening.ts';
import type { Engine, EngineOptions } from './engine.ts';
import { addressOf, type Invitation, type Remembered } from './invitation.ts';
import { overriddenIn } from './overridden.ts';
import type { Came, Offer, PairingActions, PairingState } from './types.ts';

/** What it finds around it; in a browser: pairing-page.ts. */
export interface PairingSurroundings {
  /** Where the page came from: http://localhost:4680. */
  readonly server: string;
  now(): number;
  /** Small letters and digits that nothing else is called by. */
  newName(): string;
  askOffer(): Promise<Offer | null>;
  askNewSecret(): Promise<Offer | null>;
  fetchEngine(): Promise<(options: EngineOptions) => Engine>;
  recall(): Remembered | null;
  remember(pairing: Remembered | null): void;
  /** What was written last and may not be kept yet, for a page that is loaded anew. */
  jot(room: string, entries: readonly Entry[]): void;
  jotted(room: string): readonly Entry[];
  rememberName(name: string): void;
  /** What both wrote, and a person on this device has seen and left. */
  see(key: string): void;
  isSeen(key: string): boolean;
}

export interface PairingStore extends StoreApi<PairingState & PairingActions> {
  /** Joins by an invitation, or again what this browser was joined to. */
  join(invitation: Invitation): Promise<void>;
}

const ALONE = {
  standing: 'off',
  devices: [],
  held: [],
  overridden: [],
  came: [],
  invitations: [],
} as const satisfies Partial<PairingState>;

/** Characters of a job's file: the relay takes no message of more than 16 MB. */
const LARGEST = 8e6;

/** Of what others did, so much is listed. */
const MOST_CAME = 30;

export function createPairing(
  document: DocumentStore,
  keeping: KeepingStore,
  opening: Opening,
  around: PairingSurroundings,
  firstName: string,
): PairingStore {
  let engine: Engine | null = null;
  let replica: Replica | null = null;
  let paired: Remembered | null = null;
  /** Came, and not shown yet: while a gesture is under way, or until this device has the job. */
  let waiting: Entry[] = [];
  let unsaid: Came[] = [];
  /** Counts up with each joining and parting: what was waited for may be over. */
  let turn = 0;
  /** The job as it was when joining began, until something has come. */
  let loaded: Job | null = null;
  /** With the relay, be the job here yet or not. */
  let isJoined = false;
  /** The document changes because of what has come. */
  let isAdopting = false;

  const store: StoreApi<PairingState & PairingActions> = createStore((set, get) => ({
    ...ALONE,
    offer: null,
    name: firstName,
    async ask() {
      set({ offer: (await around.askOffer()) ?? 'none' });
      showInvitations();
    },
    async share() {
      const { offer } = get();
      if (offer === null || offer === 'none' || engine !== null || !document.getState().ready) return;
      if (serialiseJob(document.getState().committed.history.job).length > LARGEST) return set({ standing: 'full' });
      const room = `${around.newName()}${around.newName()}`.slice(0, 32);
      document.getState().note(withOwnNumbers);
      if (!(await enter({ secret: offer.secret, room, slot: keeping.getState().slot, idMark: null }))) return;
      loaded = null; // there is nothing to wait for
      write(begun(replica!.device, document.getState().committed.history.job, around.now()), '');
    },
    leave() {
      part(true);
      document.getState().note(withoutMark);
    },
    rename(name) {
      set({ name });
      around.rememberName(name);
      engine?.rename(name);
    },
    async newSecret() {
      const offer = await around.askNewSecret();
      if (offer === null) return;
      set({ offer });
      if (paired === null) return;
      remember({ ...paired, secret: offer.secret });
      engine?.letIn(offer.secret);
      showInvitations();
    },
    take(overridden) {
      const entry = theirEntry(overridden.key);
      if (replica === null || entry === null) return;
      const put = putTogether(withEntries(replica.cells, [entry]), document.getState().job);
      if (!put.ok) set({ held: put.faults });
      else document.getState().edit(`Take what ${overridden.by} wrote`, () => put.shared.job);
    },
    dismiss(overridden) {
      around.see(overridden.key);
      show();
    },
  }));
  const set = (change: Partial<PairingState>): void => store.setState(change);

  /** The value that did not count, written now, in the knowledge of what both have written. */
  function theirEntry(key: string): Entry | null {
    const twice = replica && overriddenIn(replica, nameOf).find((each) => each.shown.key === key)?.twice;
    if (!twice) return null;
    const { device, cells } = replica!;
    const { path } = twice.counts;
    const at = nextTime(cells, around.now());
    return { device, path, at, over: knownOf(cells, path, device), value: twice.other.value };
  }

  const nameOf = (device: string): string => engine?.nameOf(device) ?? device;

  function remember(next: Remembered | null): void {
    paired = next;
    around.remember(next);
  }

  function showInvitations(): void {
    const { offer } = store.getState();
    const servers = offer === null || offer === 'none' ? [around.server] : offer.addresses;
    set({ invitations: paired === null ? [] : servers.map((server) => addressOf(server, paired!)) });
  }

  /** Answers false where it was parted from, or another was entered, before it was there. */
  async function enter(next: Remembered): Promise<boolean> {
    const mine = (turn += 1);
    remember(next);
    const device = around.newName().slice(0, 6);
    replica = replicaOf(device, document.getState().job);
    set({ ...ALONE, standing: 'joining' });
    showInvitations();
    loaded = isHere() ? document.getState().committed.history.job : null;
    const createEngine = await around.fetchEngine();
    if (mine !== turn) return false;
    engine = createEngine({
      url: `${around.server.replace(/^http/u, 'ws')}/together`,
      room: next.room,
      secret: next.secret,
      device,
      name: store.getState().name,
      heard(entries) {
        waiting.push(...entries);
        catchUp();
      },
      came: (done) => void unsaid.push(...done),
      devices: (devices) => set({ devices }),
      named: (name) => set({ name }),
      stands(standing) {
        isJoined = standing === 'joined';
        const isThere = standing === 'out' || standing === 'full' || paired?.slot !== null;
        set({ standing: isThere ? standing : 'joining', ...(!isJoined && { devices: [] }) });
      },
    });
    return true;
  }

  async function join(invitation: Invitation): Promise<void> {
    const known = around.recall();
    const isKnown = known?.room === invitation.room;
    if (paired !== null) part(false);
    const mark = around.newName().slice(0, 4);
    if (!(await enter({ ...invitation, slot: isKnown ? known.slot : null, idMark: isKnown ? known.idMark : mark })))
      return;
    const entered = engine;
    await entered!.kept;
    const jotted = around.jotted(invitation.room);
    if (jotted.length === 0 || engine !== entered) return;
    waiting.push(...jotted);
    entered!.write(jotted, '');
    catchUp();
  }

  /** `isForGood`: nothing of it stays in this browser but the job. */
  function part(isForGood: boolean): void {
    turn += 1;
    engine?.close(isForGood);
    engine = null;
    replica = null;
    loaded = null;
    waiting = [];
    unsaid = [];
    remember(null);
    set(ALONE);
  }

  /** Shows what has come, unless a hand is just moving something: then as soon as it is let go. */
  function catchUp(): void {
    const { ready, gesture } = document.getState();
    if (replica === null || !ready || gesture.state !== 'idle' || waiting.length === 0) return;
    replica = received(replica, waiting);
    waiting = [];
    settle();
    show();
  }

  /** All that has come is put together, and shown if it can be; what had to be put right goes to the others. */
  function settle(): void {
    const before = document.getState().committed.history.job;
    const { replica: next, entries } = caughtUp(replica!, around.now());
    const after = next.held.length > 0 ? next : isHere() ? adopted(next) : taken(next);
    write({ replica: after, entries: after.held.length > 0 ? [] : entries }, '');
    if (isHere()) catchUpOwn(before);
  }

  /** What was edited on this device before anything had come: it is written now, or done again on what came. */
  function catchUpOwn(before: Job): void {
    const from = loaded;
    loaded = null;
    if (from === null || from === before) return;
    if (replica!.held.length > 0) write(edited(replica!, before, around.now()), 'What was done while joining');
    else document.getState().edit('What was done while joining', (job) => applyWhatFits(job, diffJobs(from, before)));
  }

  function adopted(next: Replica): Replica {
    const before = document.getState().job;
    const faults = adopting(() => document.getState().adopt(next.shown.job, summary(unsaid)));
    if (faults.length > 0) return heldBack(replica!, faults);
    const now = document.getState().job;
    const came = [...renumberings(before, now), ...unsaid.toReversed(), ...store.getState().came];
    set({ came: came.slice(0, MOST_CAME) });
    unsaid = [];
    return shownNow(next);
  }

  /** The job comes to a device that has it not: into a place of its own, what was open stays where it is kept. */
  function taken(next: Replica): Replica {
    if (cellAt(next.cells, [HEAD, 'name']) === undefined) return next; // nobody has put a job there yet
    const { idMark } = paired!;
    const text = serialiseJob({ ...next.shown.job, ...(idMark !== null && { idMark }) });
    const admitted = admitText(text);
    if (!admitted.ok) return heldBack(replica!, admitted.faults);
    adopting(() => opening.open('', text));
    unsaid = [];
    remember({ ...paired!, slot: keeping.getState().slot });
    set({ standing: isJoined ? 'joined' : 'away' });
    return shownNow(next);
  }

  const isHere = (): boolean => paired?.slot === keeping.getState().slot;

  /** As the door read it. */
  const shownNow = (next: Replica): Replica => ({
    ...next,
    shown: { ...next.shown, job: document.getState().committed.history.job },
  });

  function adopting<T>(task: () => T): T {
    isAdopting = true;
    try {
      return task();
    } finally {
      isAdopting = false;
    }
  }

  function write({ replica: next, entries }: Edited, label: string): void {
    replica = next;
    if (entries.length === 0 || paired === null) return;
    around.jot(paired.room, entries);
    engine?.write(entries, label);
  }

  function show(): void {
    if (replica === null) return;
    const twice = overriddenIn(replica, nameOf).map(({ shown }) => shown);
    const overridden = twice.filter(({ key }) => !around.isSeen(key));
    // While the job has not come, what is shown is another, of which nothing is held back.
    const held = isHere() ? replica.held : [];
    set({ held, ...(sameData(overridden, store.getState().overridden) ? {} : { overridden }) });
  }

  document.subscribe((next, last) => {
    if (isAdopting || replica === null) return;
    if (next.opened !== last.opened) return part(false);
    const { history } = next.committed;
    if (history.job !== last.committed.history.job && isHere() && replica.cells.size > 0) {
      if (withOwnNumbers(history.job) !== history.job) return void document.getState().note(withOwnNumbers);
      write(edited(replica, history.job, around.now()), labelOf(last.committed.history, history));
      if (replica.held.length > 0) settle(); // what was held back may go together with the rest now
      show();
    }
    catchUp();
  });
  keeping.subscribe((next, last) => {
    if (!isAdopting && next.slot !== last.slot && paired?.slot === last.slot) part(false); // it is kept as a copy, and apart
  });

  return Object.assign(store, { join });
}

function withoutMark(job: Job): Job {
  const { idMark: _mark, ...rest } = job;
  return rest;
}

/** Numbers that are by build order alone would be others on each device as soon as two add a tube. */
function withOwnNumbers(job: Job): Job {
  if (job.numbers !== undefined || job.members.length === 0) return job;
  const numbers = numbersOf(job);
  return withNumbers(job, [...numbers], Math.max(lastNumberOf(job), ...numbers.values()));
}

/** Tubes that go by another number now: two had given one, or somebody has numbered them anew. What is chalked on them is to be changed. */
function renumberings(before: Job, after: Job): readonly Came[] {
  return renumbered(before, after).map(({ tube, from, to }) => {
    const name = after.members.find(({ id }) => id === bareId(tube))?.name ?? tube;
    return { by: 'Numbers', label: `${shownName(name)} is tube ${to} now, it was ${from}` };
  });
}

/** What the others read of it; '' for what is no step. */
function labelOf(before: History, after: History): string {
  const undone = before.past.length > after.past.length || after.future.length > before.future.length;
  if (undone) return `Undone: ${after.future[0]?.label ?? 'an edit'}`;
  return before.past === after.past ? '' : (after.past.at(-1)?.label ?? '');
}

/** Several at once are one step. */
function summary(done: readonly Came[]): { readonly label: string; readonly by: string } {
  const by = [...new Set(done.map((each) => each.by))].join(', ');
  const [first] = done;
  if (first === undefined) return { label: 'Edit on another device', by: 'Another device' };
  return { label: done.length === 1 ? first.label : `${done.length} edits`, by };
}
