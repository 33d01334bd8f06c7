/** A coordinate that is a number of its own or follows a node or a point; and a place made of three of them. */
import type { ReactNode } from 'react';
import { setPlace } from '../../core/edit/nodes.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Coordinate } from '../../core/job/places/coordinate.ts';
import type { LinedUpPlace } from '../../core/job/places/lined-up.ts';
import { comesTo } from '../../core/shape/ways.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { CAR_AXES } from '../kit/vectors.ts';
import { sourceChoices } from './choices.ts';
import { amountOf, sourceOf, withAmount, withSource } from './places.ts';
import type { Editing } from './Trio.tsx';

/** `now` is what it comes to, mm. */
export function CoordinateFields<C extends Coordinate>(props: {
  readonly node: FrameNode;
  readonly step: string;
  /** "Height": begins the labels of both fields. */
  readonly label: string;
  readonly given: C;
  readonly now: number;
  readonly put: (given: C) => Place;
}): ReactNode {
  const { node, step, label, given, now, put } = props;
  const job = useDocument((state) => state.job);
  return (
    <>
      <JobSelect
        label={`${label} as`}
        value={sourceOf(given)}
        choices={sourceChoices(job, node.id)}
        step={step}
        change={(before, source) => setPlace(before, node.id, put(withSource(given, source, now)))}
      />
      <LengthField
        label={given.value === undefined ? `${label} plus` : `${label} is`}
        value={amountOf(given)}
        {...jobEdit<number>(step, (before, mm) => setPlace(before, node.id, put(withAmount(given, mm))))}
      />
    </>
  );
}

export function LinedUp({ node, at, step }: Editing<LinedUpPlace>): ReactNode {
  const frame = useDocument((state) => state.derived);
  return (
    <div className="fields fields-two">
      {(['x', 'y', 'z'] as const).map((axis, index) => (
        <CoordinateFields
          key={axis}
          node={node}
          step={step}
          label={CAR_AXES[index]!.header}
          given={at[axis]}
          now={comesTo(frame, at[axis], axis)}
          put={(given) => ({ ...at, [axis]: given })}
        />
      ))}
    </div>
  );
}
