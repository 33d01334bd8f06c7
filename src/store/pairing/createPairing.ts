/**
 * The open job on several devices: what is edited here goes to the others, what they do comes here as steps of theirs. It follows the document; what the
 * document refuses of what has come is held back, and said, and the job stays as it is.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { lastNumberOf, numbersOf } from '../../core/job/numbers.ts';
import { serialiseJob } from '../../core/job/serialise.ts';
import { withNumbers } from '../../core/edit/numbers.ts';
import { sameData } from '../../core/job/equal.ts';
import type { Job } from '../../core/job/types.ts';
import { cellAt, latestIn, withEntries, type Entry } from '../../core/sharing/entries.ts';
import { HEAD } from '../../core/sharing/laid-out.ts';
import { putTogether } from '../../core/sharing/put-together.ts';
import { begun, caughtUp, edited, received, replicaOf, type Edited, type Replica } from '../../core/sharing/replica.ts';
import type { History } from '../../core/session/history.ts';
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
      const room = `${around.newName()}${around.newName()}`.slice(0, 32);
      document.getState().edit('Number the tubes', withOwnNumbers);
      await enter({ secret: offer.secret, room, slot: keeping.getState().slot, idMark: null });
      write(begun(replica!.device, document.getState().committed.history.job, around.now()), '');
    },
    leave() {
      part();
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
      const entry = entryFor(overridden.key, 'theirs');
      if (replica === null || entry === null) return;
      const put = putTogether(withEntries(replica.cells, [entry]), document.getState().job);
      if (!put.ok) set({ held: put.faults });
      else document.getState().edit(`Take what ${overridden.by} wrote`, () => put.shared.job);
    },
    dismiss(overridden) {
      const entry = entryFor(overridden.key, 'ours');
      if (replica === null || entry === null) return;
      replica = received(replica, [entry]);
      engine?.write([entry], '');
      show();
    },
  }));
  const set = (change: Partial<PairingState>): void => store.setState(change);

  /** Written now, in the knowledge of what both have written. */
  function entryFor(key: string, whose: 'theirs' | 'ours'): Entry | null {
    const twice = replica && overriddenIn(replica, nameOf).find((each) => each.shown.key === key)?.twice;
    if (!twice) return null;
    const { device, cells } = replica!;
    const { path, at, value } = twice.counts;
    const now = Math.max(around.now(), latestIn(cells) + 1);
    return { device, path, at: now, over: at, value: whose === 'ours' ? value : twice.other.value };
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

  async function enter(next: Remembered): Promise<void> {
    remember(next);
    const device = around.newName().slice(0, 6);
    replica = replicaOf(device, document.getState().job);
    set({ ...ALONE, standing: 'joining' });
    showInvitations();
    const createEngine = await around.fetchEngine();
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
  }

  async function join(invitation: Invitation): Promise<void> {
    const known = around.recall();
    const isKnown = known?.room === invitation.room;
    if (engine !== null) part();
    const mark = around.newName().slice(0, 4);
    await enter({ ...invitation, slot: isKnown ? known.slot : null, idMark: isKnown ? known.idMark : mark });
    await engine!.kept;
    const jotted = around.jotted(invitation.room);
    if (jotted.length === 0) return;
    waiting.push(...jotted);
    engine!.write(jotted, '');
    catchUp();
  }

  function part(): void {
    engine?.close();
    engine = null;
    replica = null;
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
    const next = caughtUp(replica);
    replica = next.held.length > 0 ? next : adopted(next);
    show();
  }

  function adopted(next: Replica): Replica {
    if (!isHere()) return taken(next);
    const done = summary(unsaid);
    const faults = adopting(() => document.getState().adopt(next.shown.job, done));
    if (faults.length > 0) return { ...replica!, held: faults };
    set({ came: [...unsaid.toReversed(), ...store.getState().came].slice(0, MOST_CAME) });
    unsaid = [];
    return shownNow(next);
  }

  /** The job comes to a device that has it not: into a place of its own, what was open stays where it is kept. */
  function taken(next: Replica): Replica {
    if (cellAt(next.cells, [HEAD, 'name']) === undefined) return next; // nobody has put a job there yet
    const { idMark } = paired!;
    const text = serialiseJob({ ...next.shown.job, ...(idMark !== null && { idMark }) });
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
    const overridden = overriddenIn(replica, nameOf).map(({ shown }) => shown);
    set({ held: replica.held, ...(sameData(overridden, store.getState().overridden) ? {} : { overridden }) });
  }

  document.subscribe((next, last) => {
    if (isAdopting || replica === null) return;
    if (next.opened !== last.opened) return part();
    const { history } = next.committed;
    if (history.job !== last.committed.history.job && isHere() && replica.cells.size > 0) {
      write(edited(replica, history.job, around.now()), labelOf(last.committed.history, history));
      if (replica.held.length > 0) replica = again(replica);
      show();
    }
    catchUp();
  });
  keeping.subscribe((next, last) => {
    if (!isAdopting && next.slot !== last.slot && paired?.slot === last.slot) part(); // it is kept as a copy, and apart
  });

  /** After an edit here what was held back may go together with the rest. */
  function again(held: Replica): Replica {
    const next = caughtUp(held);
    return next.held.length > 0 ? next : adopted(next);
  }

  return Object.assign(store, { join });
}

function withoutMark(job: Job): Job {
  const { idMark: _mark, ...rest } = job;
  return rest;
}

/** Numbers that are by build order alone would be others on each device as soon as two add a tube. */
function withOwnNumbers(job: Job): Job {
  return job.numbers === undefined ? withNumbers(job, [...numbersOf(job)], lastNumberOf(job)) : job;
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
