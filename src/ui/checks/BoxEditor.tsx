/** A box's name and gap, where its middle is, its size and its turn. */
import type { ReactNode } from 'react';
import { updateBox } from '../../core/edit/envelopes.ts';
import type { BoxEnvelope } from '../../core/job/kinds/envelope.ts';
import { AngleField, LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { withAxis } from '../kit/vectors.ts';
import { NameAndGap } from './NameAndGap.tsx';

const AXES = [
  ['Along (x)', 'Length'],
  ['Left (y)', 'Width'],
  ['Height (z)', 'Height'],
] as const;

export function BoxEditor({ envelope }: { envelope: BoxEnvelope }): ReactNode {
  const { id, name } = envelope;
  const set = (what: string) => `${what} of ${name}`;
  const vector = (key: 'centre' | 'size' | 'rotation', axis: 0 | 1 | 2, what: string) => ({
    value: envelope[key][axis],
    ...jobEdit<number>(set(what), (job, value) => updateBox(job, id, { [key]: withAxis(envelope[key], axis, value) })),
  });
  return (
    <div className="fields">
      <NameAndGap envelope={envelope} />
      <fieldset className="trio">
        <legend>Centre</legend>
        {AXES.map(([label], axis) => (
          <LengthField key={label} label={label} {...vector('centre', axis as 0 | 1 | 2, 'Centre')} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Full size</legend>
        {AXES.map(([, label], axis) => (
          <LengthField key={label} size label={label} {...vector('size', axis as 0 | 1 | 2, 'Size')} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Turned about x, then y, then z</legend>
        {['About x', 'About y', 'About z'].map((label, axis) => (
          <AngleField key={label} label={label} {...vector('rotation', axis as 0 | 1 | 2, 'Turn')} />
        ))}
      </fieldset>
    </div>
  );
}
