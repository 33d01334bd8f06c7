/**
 * What is to be padded: of each tube the stretches whose wall is nearer than the figure to a helmet's box, with the room that the head moves in. Whether they are
 * padded nobody can see in the frame, so an article that finds some is not checked; one that finds none has the nearest tube beyond its reach.
 */
import { centrelineWithin, joinedStretches } from '../../gaps/near-box.ts';
import { outsideOf } from '../../gaps/outside.ts';
import { placeAt } from '../../geometry/path.ts';
import type { DriverEnvelope } from '../../job/kinds/envelope.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import { envelopeBox } from '../../solve/envelope-box.ts';
import type { SolvedTube } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';
import type { Outcome, ToPad } from '../types.ts';
import { nearestTube } from './drivers.ts';

/** Of all drivers together: what is near to two heads is padded once. The reach is the article's figure, as its least (bare tube stays that far off) or its most; the greater where it has both. */
export function padding(
  { least, most }: CheckOf<'head-room'>,
  ask: Questions,
  drivers: readonly DriverEnvelope[],
  tubes: readonly SolvedTube[],
): readonly Outcome[] {
  const reach = Math.max(least ?? 0, most ?? 0);
  const points = ask.points();
  const boxes = drivers.map((driver) => envelopeBox(points, driver));
  const stretches = tubes.flatMap((tube): readonly ToPad[] => {
    const { pieces, radius } = outsideOf(tube);
    const near = boxes.flatMap((box) => centrelineWithin(pieces, box, reach + radius));
    return joinedStretches(near).map((each) => ({ tube: tube.id, ...each }));
  });
  if (stretches.length > 0) {
    const concerns = [...new Set(stretches.map(({ tube }) => tube))];
    const [{ tube: first, from, to }] = stretches as [ToPad];
    const { path } = tubes.find(({ id }) => id === first)!;
    return [{ unknown: { id: 'to-pad', reach, stretches }, concerns, at: placeAt(path, (from + to) / 2).point }];
  }
  return drivers.flatMap((driver) =>
    nearestTube(driver, ask, tubes).map((nearest) => ({ ...nearest, least: reach, most: Infinity })),
  );
}
