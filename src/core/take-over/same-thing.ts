/**
 * Whether two records that go by one id in two states of a job are one thing. Ids count up by themselves: two people who each draw a bar in
 * a copy of one job both call it m19. So an id alone says nothing of what is new; what is said of a record beside it does.
 *
 * A reading is what was measured: of the same kind, between the same points, along the same axis. Any other record is one thing with its
 * namesake as long as anything that tells it from others is alike: its name, or where it stands, or what it is made of. One that was
 * renamed and moved at once counts as another: it is then there twice, and nothing is lost.
 */
import type { Vec3 } from '../geometry/vector.ts';
import { sameData } from '../job/equal.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { FrameNode } from '../job/kinds/node.ts';
import { pointsOf } from '../job/kinds/measurement.ts';
import { bareId } from '../job/reference.ts';
import { referencesOf } from '../job/references.ts';
import type { Collection, Job } from '../job/types.ts';

type Tests = { readonly [C in Collection]: (ours: Job[C][number], theirs: Job[C][number]) => boolean };

/** Whether two records of one list and one id are the same thing, changed or not. References of `theirs` have to lead where those of `ours` do. */
export const isSameThing = (
  list: Collection,
  ours: Job[Collection][number],
  theirs: Job[Collection][number],
): boolean => ours === theirs || (TESTS[list] as (ours: object, theirs: object) => boolean)(ours, theirs);

/** An id that the program gave: a name which is no more than that tells nothing. */
const GIVEN = /^[a-z]+\d+(?:-[a-z\d]+)?$/u;

type Called = { readonly id: string; readonly name: string };

const isCalledAlike = (a: Called, b: Called): boolean => a.name === b.name && !(a.name === a.id && GIVEN.test(a.id));

/** Whether all these fields are alike. */
const alike = <R extends object>(a: R, b: R, fields: readonly string[]): boolean =>
  fields.every((field) => sameData((a as Fields)[field], (b as Fields)[field]));

const isZero = (place: Vec3): boolean => place.every((coordinate) => coordinate === 0);

type Fields = Readonly<Record<string, unknown>>;

const TESTS: Tests = {
  // The first guess of a measured point is nought where nothing else is known.
  points: (a, b) => isCalledAlike(a, b) || (alike(a, b, ['position']) && !(a.by === 'survey' && isZero(a.position))),
  measurements: (a, b) => alike(a, b, ['kind', 'axis']) && sameData(pointsOf(a), pointsOf(b)),
  bodyLines: (a, b) => isCalledAlike(a, b) || alike(a, b, ['points']),
  sections: (a, b) => isCalledAlike(a, b) || alike(a, b, ['outerDiameter', 'wall']),
  dies: (a, b) => isCalledAlike(a, b) || alike(a, b, ['outerDiameter', 'centrelineRadius']),
  nodes: (a, b) => isCalledAlike(a, b) || standAlike(a, b),
  members: (a, b) => isCalledAlike(a, b) || a.path.some((node) => b.path.includes(node)),
  feet: (a, b) => isCalledAlike(a, b) || alike(a, b, ['kind', 'size', 'thickness', 'height']),
  // The program calls them by number; a corner is told by its bars.
  gussets: (a, b) => bareId(a.node) === bareId(b.node) && sameData(barsOf(a), barsOf(b)),
  envelopes: (a, b) => isCalledAlike(a, b) || (a.kind === b.kind && alike(a, b, ['centre', 'helmetTop'])),
  stickSorts: (a, b) => alike(a, b, ['section', 'length']),
  sawn: (a, b) => alike(a, b, ['section', 'length', 'cuts', 'on']),
  scans: (a, b) => alike(a, b, ['data']),
  photos: (a, b) => alike(a, b, ['sum']),
  variants: (a, b) => isCalledAlike(a, b) || alike(a, b, ['text']),
};

const barsOf = ({ between }: Gusset): readonly string[] =>
  between.map(({ member, towards }) => `${member} ${towards}`).toSorted((a, b) => (a < b ? -1 : 1));

/** Whether two places are given the same way, from something that both name; or, given by nothing, are one place. */
function standAlike(a: FrameNode, b: FrameNode): boolean {
  if (a.at.kind !== b.at.kind) return false;
  const named = new Set(referencesOf('nodes', a).map(({ to }) => to));
  return named.size === 0 ? sameData(a.at, b.at) : referencesOf('nodes', b).some(({ to }) => named.has(to));
}
