/** A layout on the usual car as lines along its tubes, for a small picture of it. */
import type { Vec3 } from '../../geometry/vector.ts';
import { emptyJob } from '../../job/empty-job.ts';
import { isPrimed, primed, type TubeRef } from '../../job/reference.ts';
import { layOut } from '../../solve/lay-out.ts';
import { sequenceOf } from '../../solve/sequence.ts';
import { FIRST_BARS, firstFigures } from './asked.ts';
import { type LayoutName } from '../../survey/spots.ts';
import { startCage } from './start-cage.ts';
import { withTube } from './with-tube.ts';

export interface LayoutLine {
  readonly id: TubeRef;
  /** A hoop, a leg, a stay, or a tube along the roof's edge; else a bar between. */
  readonly isMain: boolean;
  /** Its nodes, in mm, car axes; bends as sharp corners. */
  readonly line: readonly Vec3[];
}

const MAIN = /hoop|leg|ring|stay|rail|header/u;

/** Of every bar one, its twin another. */
export function layoutLines(layout: LayoutName): readonly LayoutLine[] {
  const { job, tube } = withTube(emptyJob('mm'));
  const asked = {
    layout,
    figures: firstFigures('mm'),
    points: {},
    driver: 'left',
    bars: FIRST_BARS,
    feet: 'plates',
    ...tube,
  } as const;
  const cage = startCage(job, asked);
  const sequence = sequenceOf(cage);
  const laid = sequence.ok ? layOut(cage, sequence.value) : sequence;
  if (!laid.ok) return [];
  const { nodes } = laid.value;
  return cage.members.flatMap((member) =>
    (member.mirror ? [member.id, primed(member.id)] : [member.id]).map((id) => ({
      id,
      isMain: MAIN.test(member.role),
      line: member.path.map((ref) => nodes.get(isPrimed(id) ? primed(ref) : ref)!),
    })),
  );
}
