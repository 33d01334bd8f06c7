/** What is selected, in a short sentence for those who do not see the bay. */
import type { Derived } from '../../core/derive.ts';
import { formatLength } from '../../core/units/length.ts';
import { exactText } from '../../core/units/step.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Job } from '../../core/job/types.ts';
import type { Selection } from '../../store/types.ts';
import { bareId, isPrimed } from '../../core/job/reference.ts';
import { pointPlace } from '../canvas/shown.ts';

const length = (mm: number, job: Job): string => `${formatLength(mm, job.lengthUnit).text} ${job.lengthUnit}`;

/** As the shop's sheet writes what is cut to. */
const cutLength = (mm: number, { lengthUnit }: Job): string => `${formatLength(mm, lengthUnit).text} ${lengthUnit}`;

/**
 * "along 34 1/2 in forward, offset 25 in right, height 0 in up" of the datum: the tables' words, the signs
 * spoken. What is `stored`, as a person entered it, says where it is rounded.
 */
export function tellPlace([x, y, z]: Vec3, job: Job, stored = false): string {
  const one = (name: string, mm: number, ahead: string, behind: string): string => {
    const rounded = stored && !formatLength(mm, job.lengthUnit).exact;
    return `${name} ${rounded ? '≈ ' : ''}${length(Math.abs(mm), job)} ${mm < 0 ? behind : ahead}`;
  };
  return [one('along', x, 'forward', 'back'), one('offset', y, 'left', 'right'), one('height', z, 'up', 'down')].join(
    ', ',
  );
}

/** Empty when nothing is selected. */
export function describeSelection(derived: Derived, selection: Selection | null): string {
  const { job } = derived;
  switch (selection?.kind) {
    case undefined:
      return '';
    case 'tube': {
      const tube = derived.byId.get(selection.id);
      if (tube === undefined) return '';
      const bends = tube.bends.length === 1 ? '1 bend' : `${tube.bends.length || 'no'} bends`;
      return `Tube ${tube.number}, ${tube.name}: ${bends}, developed length ${cutLength(tube.developedLength, job)}.`;
    }
    case 'node': {
      const place = derived.nodes.get(selection.id);
      const name = job.nodes.find((node) => node.id === bareId(selection.id))?.name || bareId(selection.id);
      return place === undefined
        ? ''
        : `Node ${name}${isPrimed(selection.id) ? ', mirror image' : ''}: ${tellPlace(place, job)}.`;
    }
    case 'point': {
      const place = pointPlace(job, selection.id);
      const name = job.points.find((point) => point.id === bareId(selection.id))?.name || bareId(selection.id);
      return place === undefined
        ? ''
        : `Point ${name}${isPrimed(selection.id) ? ', mirror image' : ''}: ${tellPlace(place, job, true)}.`;
    }
    case 'envelope': {
      const envelope = job.envelopes.find((candidate) => candidate.id === selection.id);
      return envelope === undefined
        ? ''
        : `${envelope.name}: ${exactText(envelope.gap, job.lengthUnit)} ${job.lengthUnit} gap asked for.`;
    }
  }
}
