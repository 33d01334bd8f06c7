/**
 * What bars stand on: the area of a foot on the car, mm2, its thickness, how many holes for bolts, and the least of these across. A plate's area is that of its
 * face less its holes. A box stands on its walls: what it covers and what it touches are two areas, and which is the plate's the book has to say.
 */
import { contactArea, coveredArea } from '../../feet/amount.ts';
import type { CheckOf } from '../../job/kinds/rule-check.ts';
import type { Foot } from '../../job/kinds/foot.ts';
import type { Judge, Outcome } from '../types.ts';

export const plate: Judge<'plate'> = (check, ask) =>
  ask.bars(check.roles, check.only).flatMap((bar): readonly Outcome[] => {
    const concerns = ask.tubes([bar]).map(({ id }) => id);
    const stands = bar.ends.filter(({ fit }) => fit === 'foot' || fit === 'plate');
    if (stands.length === 0) return [{ unknown: { id: 'no-foot' }, concerns, at: bar.ends[0].position }];
    return stands.map(({ foot, position: at }): Outcome => {
      if (foot === null) return { unknown: { id: 'foot-without-size' }, concerns, at };
      const value = check.of === 'area' ? areaOf(foot, check) : FIGURES[check.of](foot);
      if (value !== null) return { value, concerns, at };
      return { unknown: { id: 'box', covers: coveredArea(foot), touches: contactArea(foot) }, concerns, at };
    });
  });

/** Of a box what the article says counts; where it says nothing, that of the two areas which settles it for both; null where they fall on either side of a limit. */
function areaOf(foot: Foot, { box, least = -Infinity, most = Infinity }: CheckOf<'plate'>): number | null {
  const [touches, covers] = [contactArea(foot), coveredArea(foot)];
  if (foot.kind !== 'box' || box === 'touches') return touches;
  if (box === 'covers' || covers < least) return covers;
  if (touches > most) return touches;
  if (touches >= least && covers <= most) return most === Infinity ? touches : covers;
  return null;
}

const FIGURES: Readonly<Record<Exclude<CheckOf<'plate'>['of'], 'area'>, (foot: Foot) => number>> = {
  thickness: ({ thickness }) => thickness,
  bolts: ({ holes = [] }) => holes.length,
  hole: ({ holes = [] }) => (holes.length === 0 ? 0 : Math.min(...holes.map(({ diameter }) => diameter))),
};
