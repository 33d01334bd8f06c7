/** The three coordinates of a vector in one group of fields. */
import type { ReactNode } from 'react';
import { setPlace } from '../../core/edit/nodes.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';

/** Edits one thing of this node's place. */
export interface Editing<P extends Place = Place> {
  readonly node: FrameNode;
  readonly at: P;
  readonly step: string;
}

interface TrioProps {
  readonly node: FrameNode;
  readonly step: string;
  readonly legend: string;
  readonly vector: Vec3;
  readonly put: (vector: Vec3) => Place;
}

/** Lengths, in the job's unit. */
export function Trio({ node, step, legend, vector, put }: TrioProps): ReactNode {
  return (
    <fieldset className="trio">
      <legend>{legend}</legend>
      {CAR_AXES.map(({ header }, axis) => (
        <LengthField
          key={header}
          label={header}
          value={vector[axis] ?? 0}
          {...jobEdit<number>(step, (job, value) =>
            setPlace(job, node.id, put(withAxis(vector, axis as 0 | 1 | 2, value))),
          )}
        />
      ))}
    </fieldset>
  );
}
