/**
 * How near an end of a bar comes to what it should begin at, mm in a straight line between places on centrelines: `foot` the foot of such a bar, `joint` the
 * nearest end of such a bar, `corner` the nearest sharp corner of one. `below-top` is the height from the top of such a bar's surface down to the end's
 * centreline; `opening` the end's height in the door's opening, 0 at the sill and 1 at the rail.
 */
import { farthestAlong } from '../../geometry/path-reach.ts';
import { addScaled, distance, Z_AXIS, type Vec3 } from '../../geometry/vector.ts';
import { doorHeights } from '../../fitting/door.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import type { Bar } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Judge, Outcome } from '../types.ts';
import { endsOf } from './tilt.ts';

export const reach: Judge<'reach'> = (check, ask) => {
  const bars = ask.bars(check.roles, check.only);
  return bars.flatMap((bar): readonly Outcome[] => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const [upper, lower] = endsOf(bar);
    const places = check.end === undefined ? [upper, lower] : [check.end === 'upper' ? upper : lower];
    return places.map(({ position }): Outcome => {
      if (check.of === 'opening') return inOpening(position, ask, concerns);
      const to = nearest(check, ask, bar, position);
      if ('id' in to) return { unknown: to, concerns, at: position };
      return { value: to.value, concerns, at: position, to: to.place };
    });
  });
};

type Concerns = Outcome['concerns'];

interface Near {
  readonly value: number;
  readonly place: Vec3;
}

function nearest(
  { of, onto = [] }: CheckOf<'reach'>,
  ask: Questions,
  bar: Bar,
  place: Vec3,
): Near | Extract<Outcome, { unknown: object }>['unknown'] {
  const hosts = ask.bars(onto).filter(({ id }) => id !== bar.id);
  if (hosts.length === 0) return { id: 'nothing-there', roles: onto };
  if (of === 'below-top') {
    const tops = hosts.map((host) =>
      addScaled(farthestAlong(host.path, Z_AXIS).point, Z_AXIS, host.section.outerDiameter / 2),
    );
    // A dimension of height stands upright over the place.
    return tops.map(([, , top]): Near => ({ value: top - place[2], place: [place[0], place[1], top] })).reduce(higher);
  }
  const places = hosts.flatMap(PLACES[of as keyof typeof PLACES]);
  if (places.length === 0) return { id: of === 'foot' ? 'no-foot' : 'nothing-there', roles: onto };
  return places.map((each): Near => ({ value: distance(each, place), place: each })).reduce(nearer);
}

const nearer = (one: Near, other: Near): Near => (other.value < one.value ? other : one);
const higher = (one: Near, other: Near): Near => (other.value > one.value ? other : one);

const PLACES = {
  foot: ({ ends }: Bar): readonly Vec3[] =>
    ends.flatMap(({ fit, position }) => (fit === 'foot' || fit === 'plate' ? [position] : [])),
  joint: ({ ends }: Bar): readonly Vec3[] => ends.map(({ position }) => position),
  corner: ({ bends }: Bar): readonly Vec3[] => bends.map(({ corner }) => corner),
};

function inOpening(place: Vec3, ask: Questions, concerns: Concerns): Outcome {
  const heights = doorHeights(ask.points(), place[1] < 0 ? -1 : 1);
  if (heights === null) return { unknown: { id: 'no-opening' }, concerns, at: place };
  return { value: (place[2] - heights.sill) / (heights.rail - heights.sill), concerns, at: place };
}
