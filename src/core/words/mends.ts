/** What would mend a finding, as the words on a key. */
import type { Mend } from '../mend/mends.ts';
import { nodeName, tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import { comparedLength } from './lengths.ts';
import { orderInWords } from './rehearsal.ts';

/** "Move Dash end 12.4 mm along Front leg (left), towards B". */
export function mendInWords(mend: Mend, frame: Frame): string {
  const { job, byId } = frame;
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
    case 'radius-from-pulls':
      return `Take the radius of ${[...byId.values()].find(({ die }) => die?.id === mend.die)?.die?.name ?? mend.die} from the pulls`;
  }
}
