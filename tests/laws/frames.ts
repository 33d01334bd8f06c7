/**
 * Random frames for the laws of geometry: tubes bent and straight, fixed, standing on one another, between one another.
 * All are valid; some have bends that overlap or copes that miss, for those derive too.
 */
import fc from 'fast-check';
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube } from '../../src/core/solve/types.ts';

export type Triple = readonly [number, number, number];

/** Every law is tried on the same cases each time. */
export const fixed = (numRuns: number): fc.Parameters<unknown> => ({ seed: 20260301, numRuns });

/** Tenths of a millimetre, and at times exactly on an axis, where signs and zeros are easily lost. */
const coordinate = (least: number, greatest: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 5, arbitrary: fc.integer({ min: 10 * least, max: 10 * greatest }).map((tenths) => tenths / 10) },
    { weight: 1, arbitrary: fc.constant(Math.max(0, least)) },
  );

export const place: fc.Arbitrary<Triple> = fc.tuple(
  coordinate(-1000, 1000),
  coordinate(-800, 800),
  coordinate(0, 1400),
);

/** Off the centre plane, so that a member and its twin are two. */
const leftPlace: fc.Arbitrary<Triple> = fc.tuple(coordinate(-1000, 1000), coordinate(100, 800), coordinate(0, 1400));

/** Corners that a tube can pass: legs of 30 mm and more, and no turn of more than 165 degrees. */
export function corners(where: fc.Arbitrary<Triple>, minLength: number, maxLength: number): fc.Arbitrary<Triple[]> {
  return fc.array(where, { minLength, maxLength }).filter((path) => {
    const legs = path.slice(1).map((p, i): Triple => [p[0] - path[i]![0], p[1] - path[i]![1], p[2] - path[i]![2]]);
    const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    const turns = legs.slice(1).map((leg, i) => dot(leg, legs[i]!) / Math.hypot(...leg) / Math.hypot(...legs[i]!));
    return legs.every((leg) => Math.hypot(...leg) >= 30) && turns.every((cosine) => cosine > -0.966);
  });
}

const SECTIONS = [
  { id: 'main', outerDiameter: 44.45, wall: 3.048 },
  { id: 'light', outerDiameter: 38, wall: 2.5 },
  { id: 'small', outerDiameter: 25.4, wall: 1.6 },
];
const DIES = [{ id: 'd', outerDiameter: 44.45, centrelineRadius: 135 }];

/** Where an end stands: at a place of its own, on an earlier tube, or at the node where an earlier tube begins. */
type Standing =
  | { readonly kind: 'free' }
  | { readonly kind: 'on'; readonly host: number; readonly distance: number; readonly offset: Triple }
  | { readonly kind: 'shared'; readonly host: number };

interface Draft {
  readonly path: readonly Triple[];
  readonly standing: readonly [Standing, Standing];
  readonly fits: readonly [Fit, Fit];
  readonly section: string;
}

const shift = coordinate(-15, 15);

const standing: fc.Arbitrary<Standing> = fc.oneof(
  { weight: 2, arbitrary: fc.constant<Standing>({ kind: 'free' }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('shared' as const), host: fc.nat(9) }) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('on' as const),
      host: fc.nat(9),
      distance: fc.integer({ min: 0, max: 6000 }).map((tenths) => tenths / 10),
      offset: fc.oneof(fc.constant<Triple>([0, 0, 0]), fc.tuple(shift, shift, shift)),
    }),
  },
);

type Fit = 'auto' | 'square' | 'plate' | 'cope';
/** A plate stands at a slant; an explicit cope is against the member before. */
const SLANT: Triple = [0.48, 0.36, 0.8];
const anyFit: fc.Arbitrary<Fit> = fc.constantFrom('auto', 'auto', 'auto', 'square', 'plate', 'cope');
/** Without plates, whose normals a test that turns the job would have to turn too. */
const turnable: fc.Arbitrary<Fit> = fc.constantFrom('auto', 'auto', 'auto', 'square', 'cope');

const draft = (where: fc.Arbitrary<Triple>, fit: fc.Arbitrary<Fit>): fc.Arbitrary<Draft> =>
  fc.record({
    path: corners(where, 2, 5),
    standing: fc.tuple(standing, standing),
    fits: fc.tuple(fit, fit),
    section: fc.constantFrom(...SECTIONS.map((section) => section.id)),
  });

function endOf(fit: Fit, at: number): object {
  if (fit === 'plate') return { fit, normal: SLANT };
  if (fit !== 'cope') return { fit };
  return at === 0 ? { fit: 'auto' } : { fit, against: [`m${at - 1}`] };
}

/** End B never stands on the tube that end A stands on: the two might lie in one another, and two like surfaces have no crossing. */
function standingOfEnd({ standing: [a, b] }: Draft, at: number): Standing {
  const same = a.kind !== 'free' && b.kind !== 'free' && a.host % at === b.host % at;
  return same ? { kind: 'free' } : b;
}

/** The records of tubes m<from>, m<from + 1> and so on; those before `from` are there already. */
function recordsOf(drafts: readonly Draft[], mirror: boolean, from: number): { nodes: object[]; members: object[] } {
  const nodes: object[] = [];
  const starts = Array.from({ length: from }, (_, i) => `m${i}n0`);
  const members = drafts.map((tube, k) => {
    const i = from + k;
    const path = tube.path.map((position, c) => {
      const id = `m${i}n${c}`;
      const end =
        c === 0 ? tube.standing[0] : c === tube.path.length - 1 ? standingOfEnd(tube, i) : { kind: 'free' as const };
      if (end.kind === 'free' || i === 0) nodes.push({ id, at: { kind: 'fixed', position } });
      else if (end.kind === 'shared') return starts[end.host % i]!;
      else {
        const { distance, offset } = end;
        nodes.push({ id, at: { kind: 'on', member: `m${end.host % i}`, from: 'start', distance, offset } });
      }
      return id;
    });
    starts.push(path[0]!);
    return {
      id: `m${i}`,
      path,
      section: tube.section,
      die: 'd',
      mirror,
      ends: tube.fits.map((fit) => endOf(fit, i)),
    };
  });
  return { nodes, members };
}

/** The job in these records, with the program's own defaults. */
export function jobOf(records: { nodes: object[]; members: object[] }): Job {
  const head = { format: 'cagewright/job', version: 1, name: 'Law' };
  const parsed = parseJob(JSON.stringify({ ...head, sections: SECTIONS, dies: DIES, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}

/** Tubes anywhere, none mirrored. */
export const plainFrame: fc.Arbitrary<Job> = fc
  .array(draft(place, turnable), { minLength: 1, maxLength: 6 })
  .map((drafts) => jobOf(recordsOf(drafts, false, 0)));

/** One or two hoops across the car, each its own mirror image, and mirrored tubes on the left that stand on them. */
export const mirroredFrame: fc.Arbitrary<Job> = fc
  .tuple(
    fc.array(corners(leftPlace, 2, 3), { minLength: 1, maxLength: 2 }),
    fc.array(draft(leftPlace, anyFit), { minLength: 1, maxLength: 4 }),
  )
  .map(([hoops, drafts]) => {
    const { nodes, members } = recordsOf(drafts, true, hoops.length);
    const hoopMembers = hoops.map((half, i) => {
      const ids = half.map((position, c) => {
        nodes.push({ id: `m${i}n${c}`, at: { kind: 'fixed', position } });
        return `m${i}n${c}`;
      });
      const path = [...ids, ...ids.toReversed().map((id) => `${id}'`)];
      return { id: `m${i}`, path, section: 'main', die: 'd' };
    });
    return jobOf({ nodes, members: [...hoopMembers, ...members] });
  });

/** What is derived; a draw that cannot be (a path that doubles back, a node beyond its tube's end) is drawn again. */
export function derivedOrSkipped(job: Job): Derived {
  const result = derive(job);
  fc.pre(result.ok);
  return (result as { value: Derived }).value;
}

/** Straights that are not negative: what is said of a tube's shape needs a tube that has one. */
export const isSound = (tube: SolvedTube): boolean => tube.straights.every((straight) => straight >= 0);
