/** What would mend a finding, as the words on a key. */
import type { LiftWhy, Mend } from '../mend/mends.ts';
import { nodeName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { comparedLength } from './lengths.ts';
import { listed } from './lists.ts';
import { figureInWords } from './rule-figures.ts';
import { orderInWords } from './rehearsal.ts';

const LIFT_WHY: Readonly<Record<LiftWhy, string>> = {
  advised: 'as the sheet advises',
  middle: 'the middle of what the sheet allows',
  level: 'level',
  least: 'the least move that meets it',
};

/** More bars than these are counted. */
const MOST_NAMED = 3;

/** "Move Dash end 12.4 mm along Front leg (left), towards B". */
export function mendInWords(mend: Mend, frame: Frame): string {
  const { job, byId } = frame;
  const show = (mm: number): string => comparedLength(mm, job.lengthUnit);
  const named = (of: readonly { readonly id: string; readonly name: string }[], id: string) =>
    of.find((each) => each.id === id)?.name ?? id;
  const membersName = (ids: readonly string[]) =>
    ids.length > MOST_NAMED ? `${ids.length} bars` : listed(ids.map((id) => named(job.members, id)));
  const memberName = (id: string) => job.members.find((member) => member.id === id)?.name ?? id;
  switch (mend.kind) {
    case 'move-along':
      return `Move ${nodeName(job, mend.node)} ${comparedLength(Math.abs(mend.by), job.lengthUnit)} along ${tubeName(frame, mend.bar)}, towards ${mend.by > 0 ? 'B' : 'A'}`;
    case 'build-after':
      return `Build it after ${memberName(mend.after)}`;
    case 'mitre':
      return `Mitre end ${mend.which === 0 ? 'A' : 'B'} of ${memberName(mend.member)}`;
    case 'cope-to':
      return `Cope end ${mend.which === 0 ? 'A' : 'B'} of ${memberName(mend.member)} to ${tubeName(frame, mend.against.at(-1)!)} too`;
    case 'cut':
      return `Cut ${memberName(mend.member)} where ${tubeName(frame, mend.by)} runs through`;
    case 'no-mirror':
      return 'Turn its mirror off';
    case 'split-onto':
      return `Split ${memberName(mend.member)} there, both parts onto the axis of ${tubeName(frame, mend.by)}`;
    case 'run-through':
      return `Let it run through, cut ${tubeName(frame, mend.by)}`;
    case 'one-bar':
      return `Draw ${memberName(mend.keep.member)} and ${memberName(mend.drop.member)} as one bar, cut where ${tubeName(frame, mend.through)} runs through`;
    case 'turn-foot':
      return 'Turn the foot round';
    case 'keep-order':
      return `Take ${orderInWords(mend.order)}`;
    case 'other-section':
      return `Make ${membersName(mend.members)} of ${named(job.sections, mend.section)}`;
    case 'other-die':
      return `Bend ${membersName(mend.members)} on ${named(job.dies, mend.die)}`;
    case 'lift-bar': {
      const { by, to, quantity, bar, why } = mend;
      const way = by < 0 ? 'down' : 'up';
      return `Move ${tubeName(frame, bar)} ${show(Math.abs(by))} ${way}, to about ${figureInWords(to, { quantity }, job.lengthUnit)}, ${LIFT_WHY[why]}`;
    }
    case 'foot-size':
      return `Make ${named(job.feet, mend.foot)} ${show(mend.size[0])} x ${show(mend.size[1])}`;
    case 'foot-thickness':
      return `Make ${named(job.feet, mend.foot)} ${show(mend.thickness)} thick`;
    case 'radius-from-pulls':
      return `Take the radius of ${[...byId.values()].find(({ die }) => die?.id === mend.die)?.die?.name ?? mend.die} from the pulls`;
  }
}
