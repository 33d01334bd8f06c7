/** The selected tube's head: what to cut, and which other tube is its mirror image. */
import type { ReactNode } from 'react';
import { primed } from '../../core/job/reference.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Length } from '../fields/Readings.tsx';
import { cutLengths } from './ends.ts';

export function TubeHead({ tube }: { tube: SolvedTube }): ReactNode {
  const twin = useWorkspace((state) => state.derived.byId.get(primed(tube.id)));
  const select = useWorkspace((state) => state.select);
  const { tips, throats, axis } = cutLengths(tube);
  const left = tube.ends[0].allowance + tube.ends[1].allowance;
  return (
    <header className="tube-head">
      <h2>
        <span className="number-tag number-tag-large">{tube.number}</span>
        {tube.name}
      </h2>
      {twin && (
        <p className="advice">
          <strong>Make one of each, not two of this.</strong> Its mirror image is{' '}
          <button type="button" className="link" onClick={() => select({ kind: 'tube', id: twin.id })}>
            {twin.number} · {twin.name}
          </button>
        </p>
      )}
      <dl className="headline">
        <dt>Cut the blank to</dt>
        <dd>
          <Length mm={tube.blankLength} parts={32} withUnit />
        </dd>
      </dl>
      <dl className="facts">
        <Fact name="Tip to tip" mm={tips} />
        <Fact name="Throat to throat" mm={throats} />
        <Fact name="Along the axis" mm={axis} />
        <Fact name="Corner to corner" mm={tube.sharpCornerLength} />
        <Fact name="Allowances, both ends" mm={left} />
        <div>
          <dt>Section</dt>
          <dd>{tube.section.name}</dd>
        </div>
        {tube.die && tube.bends.length > 0 && (
          <div>
            <dt>Die</dt>
            <dd>{tube.die.name}</dd>
          </div>
        )}
        <div>
          <dt>Mass</dt>
          <dd className="figure">{tube.mass.toFixed(2)} kg</dd>
        </div>
      </dl>
    </header>
  );
}

const Fact = ({ name, mm }: { name: string; mm: number }): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>
      <Length mm={mm} parts={32} withUnit />
    </dd>
  </div>
);
