/** Two pages on one job, with a network between them that a test can take away; what the engine and the relay do stands in tests/relay and in the browser's tests. */
import { beforeEach, describe, expect, it } from 'vitest';
import { numberByBuildOrder } from '../../../src/core/edit/numbers.ts';
import { renamePoint } from '../../../src/core/edit/points.ts';
import { addPull } from '../../../src/core/edit/pulls.ts';
import { undoLabel } from '../../../src/core/session/history.ts';
import type { Entry } from '../../../src/core/sharing/entries.ts';
import { createPairing, type PairingStore } from '../../../src/store/pairing/createPairing.ts';
import type { Engine, EngineOptions } from '../../../src/store/pairing/engine.ts';
import { invitationIn, type Remembered } from '../../../src/store/pairing/invitation.ts';
import type { Came } from '../../../src/store/pairing/types.ts';
import { openBrowser, type Tab } from '../memory.ts';

interface Line {
  readonly options: EngineOptions;
  readonly sent: { readonly entries: readonly Entry[]; readonly done: Came | null }[];
  isOpen: boolean;
}

/** What a room holds, and who listens. */
function createNetwork() {
  const rooms = new Map<string, { readonly entries: Entry[]; readonly lines: Line[] }>();
  const roomOf = (name: string) => rooms.get(name) ?? rooms.set(name, { entries: [], lines: [] }).get(name)!;
  const network = {
    isUp: true,
    /** Who joins hears nothing yet. */
    hold: false,
    held: [] as (() => void)[],
    sayHeld: (): void => network.held.splice(0).forEach((say) => say()),
    /** What was written while it was away goes over. */
    comeBack(): void {
      network.isUp = true;
      for (const { lines } of rooms.values())
        for (const line of lines) for (const each of line.sent.splice(0)) deliver(line, each);
    },
    createEngine(options: EngineOptions): Engine {
      const { entries, lines } = roomOf(options.room);
      const line: Line = { options, sent: [], isOpen: true };
      lines.push(line);
      options.stands('joined');
      if (network.hold) network.held.push(() => options.heard([...entries]));
      else options.heard(entries);
      return {
        kept: Promise.resolve(),
        write(written, label) {
          const each = { entries: written, done: label === '' ? null : { by: options.name, label } };
          if (network.isUp) deliver(line, each);
          else line.sent.push(each);
        },
        rename: () => undefined,
        letIn: () => undefined,
        nameOf: (device) => lines.find((other) => other.options.device === device)?.options.name ?? device,
        close: () => void (line.isOpen = false),
      };
    },
  };
  function deliver(from: Line, { entries, done }: Line['sent'][number]): void {
    const room = roomOf(from.options.room);
    room.entries.push(...entries);
    for (const line of room.lines) {
      if (line === from || !line.isOpen) continue;
      if (done !== null) line.options.came([done]);
      line.options.heard(entries);
    }
  }
  return network;
}

let network = createNetwork();
let names = 0;
const OFFER = { secret: 'A'.repeat(22), addresses: ['http://192.168.1.20:4680'] };

interface Page extends Tab {
  readonly pairing: PairingStore;
  readonly remembered: () => Remembered | null;
}

async function openPage(name: string): Promise<Page> {
  const tab = await openBrowser().openTab();
  let remembered: Remembered | null = null;
  const seen = new Set<string>();
  let time = 1_700_000_000_000;
  const pairing = createPairing(
    tab.document,
    tab.keeping,
    tab.opening,
    {
      server: 'http://localhost:4680',
      now: () => (time += 1000),
      newName: () => `${(names += 1)}`.padStart(4, '0').padEnd(20, 'abcdefghijklmnop'),
      askOffer: async () => OFFER,
      askNewSecret: async () => ({ ...OFFER, secret: 'B'.repeat(22) }),
      fetchEngine: async () => network.createEngine,
      recall: () => remembered,
      remember: (next) => void (remembered = next),
      jot: () => undefined,
      jotted: () => [],
      rememberName: () => undefined,
      see: (key) => void seen.add(key),
      isSeen: (key) => seen.has(key),
    },
    name,
  );
  return { ...tab, pairing, remembered: () => remembered };
}

/** The desk shares its job, the phone joins by what the desk shows. */
async function paired(): Promise<readonly [desk: Page, phone: Page]> {
  const [desk, phone] = [await openPage('Desk'), await openPage('Phone')];
  await desk.pairing.getState().ask();
  await desk.pairing.getState().share();
  const [invitation] = desk.pairing.getState().invitations;
  await phone.pairing.join(invitationIn(new URL(invitation!).hash)!);
  return [desk, phone];
}

const jobOf = ({ document }: Page) => document.getState().job;
const pull = (net: number) => ({
  die: jobOf(desk).dies[0]!.id,
  section: jobOf(desk).sections[0]!.id,
  pulled: 92,
  net,
  on: '',
});
const log = (page: Page, net: number): void =>
  void page.document.getState().edit(`Log ${net}`, (job) => addPull(job, pull(net)));
const name = (page: Page, words: string): void =>
  void page.document.getState().edit(`Name ${words}`, (job) => renamePoint(job, job.points[0]!.id, words));

let [desk, phone] = [] as unknown as [Page, Page];

beforeEach(async () => {
  network = createNetwork();
  [desk, phone] = (await paired()) as [Page, Page];
});

describe('a job on two devices', () => {
  it('comes whole to who joins, into a place of its own', () => {
    const { idMark, ...job } = jobOf(phone);
    expect(job).toEqual(jobOf(desk));
    expect(idMark).toMatch(/^[a-z0-9]{4}$/u);
    expect(phone.pairing.getState().standing).toBe('joined');
    expect(phone.remembered()!.slot).toBe(phone.keeping.getState().slot);
  });

  it('shows on one what is done on the other, as a step of the other', () => {
    log(phone, 77.25);
    expect(jobOf(desk).pulls.at(-1)!.net).toBe(77.25);
    expect(desk.document.getState().committed.history.past.at(-1)).toMatchObject({ label: 'Log 77.25', by: 'Phone' });
    expect(desk.pairing.getState().came).toEqual([{ by: 'Phone', label: 'Log 77.25' }]);
    expect(undoLabel(desk.document.getState().committed.history)).not.toBe('Log 77.25');
  });

  it('takes back on each what was done on it, on both', () => {
    log(phone, 77.25);
    log(desk, 91);
    phone.document.getState().undo();
    expect(jobOf(desk).pulls.map(({ net }) => net)).toEqual(jobOf(phone).pulls.map(({ net }) => net));
    expect(jobOf(desk).pulls.at(-1)!.net).toBe(91);
    expect(jobOf(desk).pulls.some(({ net }) => net === 77.25)).toBe(false);
  });

  it('brings an hour of work over once the network is back, both ways', () => {
    network.isUp = false;
    for (let net = 60.125; net < 85; net += 1) {
      log(phone, net);
      log(desk, net + 0.5);
    }
    network.comeBack();
    const { idMark: _mark, ...job } = jobOf(phone);
    expect(job).toEqual(jobOf(desk));
    const nets = new Set(job.pulls.map(({ net }) => net));
    const logged = Array.from({ length: 25 }, (_, i) => [60.125 + i, 60.625 + i]).flat();
    expect(logged.filter((net) => !nets.has(net))).toEqual([]);
  });

  it('lists what both wrote, and takes the other when asked', () => {
    network.isUp = false;
    name(desk, 'Desk');
    name(phone, 'Phone');
    network.comeBack();
    const [shown] = [desk, phone].map(({ pairing }) => pairing.getState().overridden);
    const counts = jobOf(desk).points[0]!.name;
    expect(shown).toHaveLength(1);
    expect(new Set([shown![0]!.counts, shown![0]!.theirs])).toEqual(new Set(['Desk', 'Phone']));
    desk.pairing.getState().take(shown![0]!);
    expect(jobOf(desk).points[0]!.name).not.toBe(counts);
    expect(jobOf(phone).points[0]!.name).toBe(jobOf(desk).points[0]!.name);
    expect([desk, phone].map(({ pairing }) => pairing.getState().overridden)).toEqual([[], []]);
  });

  it('lists it no more on the device on which it was seen', () => {
    network.isUp = false;
    name(desk, 'Desk');
    name(phone, 'Phone');
    network.comeBack();
    const before = jobOf(phone).points[0]!.name;
    phone.pairing.getState().dismiss(phone.pairing.getState().overridden[0]!);
    expect(phone.pairing.getState().overridden).toEqual([]);
    expect(desk.pairing.getState().overridden).toHaveLength(1);
    expect(jobOf(desk).points[0]!.name).toBe(before);
  });

  it('waits with what comes until the hand lets go', () => {
    desk.document.getState().begin('Move');
    desk.document.getState().preview((job) => renamePoint(job, job.points[1]!.id, 'Held'));
    log(phone, 77.25);
    expect(jobOf(desk).pulls.at(-1)?.net).not.toBe(77.25);
    desk.document.getState().commit();
    expect(jobOf(desk).pulls.at(-1)!.net).toBe(77.25);
    expect(jobOf(phone).points[1]!.name).toBe('Held');
  });

  it('goes on alone, and another document ends it', () => {
    phone.pairing.getState().leave();
    expect(phone.pairing.getState().standing).toBe('off');
    expect(jobOf(phone).idMark).toBeUndefined();
    log(desk, 91);
    expect(jobOf(phone).pulls.some(({ net }) => net === 91)).toBe(false);
    desk.opening.newJob();
    expect(desk.pairing.getState().standing).toBe('off');
    expect(desk.remembered()).toBeNull();
  });

  it('gives every tube its number before it is shared, and keeps it so when all are numbered anew', () => {
    const numbers = (page: Page) => jobOf(page).numbers;
    expect(Object.keys(numbers(desk)!).length).toBeGreaterThan(0);
    desk.document.getState().edit('Number all by build order', numberByBuildOrder);
    expect(Object.keys(numbers(desk)!).length).toBeGreaterThan(0);
    expect(numbers(phone)).toEqual(numbers(desk));
  });

  it('loses nothing that is edited between the loading of a page and the first word of the others', async () => {
    const { slot, room, secret } = desk.remembered()!;
    expect(slot).toBe(desk.keeping.getState().slot);
    network.hold = true;
    const joining = desk.pairing.join({ room, secret });
    await Promise.resolve();
    log(desk, 66.625);
    log(phone, 67.625);
    network.hold = false;
    network.sayHeld();
    await joining;
    for (const page of [desk, phone]) {
      const nets = jobOf(page).pulls.map(({ net }) => net);
      expect(nets).toContain(66.625);
      expect(nets).toContain(67.625);
    }
  });

  it('does nothing twice that the first device did before the second said anything', () => {
    log(desk, 66.625);
    log(desk, 67.625);
    log(phone, 68.625);
    for (const page of [desk, phone]) {
      expect(
        jobOf(page)
          .pulls.slice(-3)
          .map(({ net }) => net),
      ).toEqual([66.625, 67.625, 68.625]);
      expect(jobOf(page).pulls.filter(({ net }) => net === 66.625).length).toBe(1);
    }
  });

  it('is not joined by who has left again while it was fetched', async () => {
    const { room, secret } = desk.remembered()!;
    const joining = phone.pairing.join({ room, secret });
    phone.pairing.getState().leave();
    await joining;
    expect(phone.pairing.getState().standing).toBe('off');
    log(desk, 91);
    expect(jobOf(phone).pulls.some(({ net }) => net === 91)).toBe(false);
  });

  it('has addresses with a secret that can be made anew', async () => {
    expect(desk.pairing.getState().invitations).toEqual([
      expect.stringMatching(/^http:\/\/192\.168\.1\.20:4680\/#pair=A{22}\.[0-9a-z]{32}$/u),
    ]);
    await desk.pairing.getState().newSecret();
    expect(desk.pairing.getState().invitations[0]).toContain('#pair=BBB');
    expect(desk.remembered()!.secret).toBe('B'.repeat(22));
  });
});
