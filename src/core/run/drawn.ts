/**
 * What a run keeps of its tube as it was drawn when it began, and what is drawn otherwise now.
 */
import { toDegrees, toRadians, wrapHalfTurn } from '../geometry/angle.ts';
import { distance } from '../geometry/vector.ts';
import type { BentTube, DrawnTube } from '../job/kinds/bent.ts';
import type { Die } from '../job/kinds/die.ts';
import type { Section } from '../job/kinds/section.ts';
import { isOrderOf } from '../solve/bend-order.ts';
import type { SolvedTube } from '../solve/types.ts';
import { NOTABLE_ANGLE, NOTABLE_LENGTH } from '../marks/tape.ts';

/** What is drawn otherwise than when the run began: lengths mm, angles degrees. */
export type DrawnChange =
  | { readonly what: 'bends'; readonly was: number; readonly now: number }
  /** `index`: leg 1 runs from end A to the first corner; an angle or rotation is that of bend 1, 2 ... */
  | {
      readonly what: 'leg' | 'angle' | 'rotation';
      readonly index: number;
      readonly was: number;
      readonly now: number;
    }
  | { readonly what: 'die'; readonly was: DrawnDie; readonly now: DrawnDie }
  | { readonly what: 'section'; readonly was: DrawnSection; readonly now: DrawnSection };

export type DrawnDie = NonNullable<DrawnTube['die']>;
export type DrawnSection = NonNullable<DrawnTube['section']>;

/** What is kept of the tube when its run begins. */
export const drawnTube = ({ corners, bends, die, section }: SolvedTube): DrawnTube => ({
  legs: corners.slice(1).map((corner, i) => distance(corner, corners[i]!)),
  angles: bends.map(({ angle }) => toDegrees(angle)),
  rotations: bends.map(({ rotation }) => toDegrees(rotation)),
  starts: bends.map(({ start }) => start),
  ...(die && { die: dieOf(die) }),
  section: sectionOf(section),
});

const dieOf = ({ id, name, centrelineRadius, clampOffset }: Die): DrawnDie => ({
  id,
  name,
  centrelineRadius,
  clampOffset,
});
const sectionOf = ({ id, name, outerDiameter, wall }: Section): DrawnSection => ({ id, name, outerDiameter, wall });

/** What the tape does not show is no change. */
export function changesSince({ drawn, order }: BentTube, tube: SolvedTube): readonly DrawnChange[] {
  const now = drawnTube(tube);
  const was = drawn?.angles.length ?? order.length;
  if (!isOrderOf(order, now.angles.length) || was !== now.angles.length)
    return [{ what: 'bends', was, now: now.angles.length }];
  if (drawn === undefined) return [];
  const differing = (what: 'leg' | 'angle' | 'rotation', before: readonly number[], after: readonly number[]) =>
    after.flatMap((value, i): readonly DrawnChange[] => {
      const old = before[i] ?? value;
      const changed =
        what === 'leg'
          ? Math.abs(value - old) > NOTABLE_LENGTH
          : Math.abs(wrapHalfTurn(toRadians(value - old))) > NOTABLE_ANGLE;
      return changed ? [{ what, index: i + 1, was: old, now: value }] : [];
    });
  return [
    ...differing('leg', drawn.legs, now.legs),
    ...differing('angle', drawn.angles, now.angles),
    ...differing('rotation', drawn.rotations, now.rotations),
    ...remade(drawn, now),
  ];
}

/** Another die or section, or one of another size; under another name it is the same. */
function remade(was: DrawnTube, now: DrawnTube): readonly DrawnChange[] {
  const differs = <T extends object>(old: T | undefined, next: T | undefined, keys: readonly (keyof T)[]): boolean =>
    old !== undefined && next !== undefined && keys.some((key) => old[key] !== next[key]);
  const changes: DrawnChange[] = [];
  if (differs(was.die, now.die, ['id', 'centrelineRadius', 'clampOffset']))
    changes.push({ what: 'die', was: was.die!, now: now.die! });
  if (differs(was.section, now.section, ['id', 'outerDiameter', 'wall']))
    changes.push({ what: 'section', was: was.section!, now: now.section! });
  return changes;
}
