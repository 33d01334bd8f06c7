/** The numbers that give a node's place, for each kind of place. */
import type { ReactNode } from 'react';
import { setPlace } from '../../core/edit/nodes.ts';
import type { Axis } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField, NumberField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { withImages } from '../kit/names.ts';
import { COMES_TO } from './choices.ts';
import { LinedUp } from './CoordinateFields.tsx';
import { DirectionFields } from './DirectionFields.tsx';
import { Trio, type Editing } from './Trio.tsx';
import { Crossing, OnTube, UntilHeight } from './TubePlaceFields.tsx';

export function PlaceFields({ node }: { node: FrameNode }): ReactNode {
  const { at } = node;
  const step = `Move ${node.name}`;
  switch (at.kind) {
    case 'fixed':
      return (
        <Trio node={node} step={step} legend="Place" vector={at.position} put={(position) => ({ ...at, position })} />
      );
    case 'point':
      return <OnPoint node={node} at={at} step={step} />;
    case 'on':
      return at.until === undefined ? (
        <OnTube node={node} at={at} step={step} />
      ) : (
        <UntilHeight node={node} at={at} step={step} />
      );
    case 'between':
      return <Between node={node} at={at} step={step} />;
    case 'ray':
      return <AlongRay node={node} at={at} step={step} />;
    case 'lined-up':
      return <LinedUp node={node} at={at} step={step} />;
    case 'crossing':
      return <Crossing node={node} at={at} step={step} />;
  }
}

function OnPoint({ node, at, step }: Editing<Extract<Place, { kind: 'point' }>>): ReactNode {
  const points = useDocument((state) => state.job.points);
  const { clear } = at;
  return (
    <>
      <JobSelect
        label="Measured point"
        value={at.point}
        choices={withImages(points)}
        step={step}
        change={(job, point) => setPlace(job, node.id, { ...at, point })}
      />
      {clear !== undefined && (
        <>
          <LengthField
            label="Gap to the tube’s outside"
            value={clear.gap}
            {...jobEdit<number>(step, (job, gap) => setPlace(job, node.id, { ...at, clear: { ...clear, gap } }))}
          />
          <DirectionFields
            legend="Away from the trim in the direction"
            direction={clear.direction}
            step={step}
            put={(job, direction) => setPlace(job, node.id, { ...at, clear: { ...clear, direction } })}
          />
        </>
      )}
      <Trio
        node={node}
        step={step}
        legend={clear === undefined ? 'Away from the point' : 'From the point to the trim'}
        vector={at.offset}
        put={(offset) => ({ ...at, offset })}
      />
    </>
  );
}

function Between({ node, at, step }: Editing<Extract<Place, { kind: 'between' }>>): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  const choices = withImages(nodes.filter((other) => other.id !== node.id));
  const [first, second] = at.nodes;
  return (
    <div className="fields fields-two">
      <JobSelect
        label="From node"
        value={first}
        choices={choices}
        step={step}
        change={(job, reference) => setPlace(job, node.id, { ...at, nodes: [reference, second] })}
      />
      <JobSelect
        label="to node"
        value={second}
        choices={choices}
        step={step}
        change={(job, reference) => setPlace(job, node.id, { ...at, nodes: [first, reference] })}
      />
      <NumberField
        label="Part of the way, 0 to 1"
        least={-10}
        greatest={10}
        step={0.01}
        value={at.fraction}
        {...jobEdit<number>(step, (job, fraction) => setPlace(job, node.id, { ...at, fraction }))}
      />
    </div>
  );
}

function AlongRay({ node, at, step }: Editing<Extract<Place, { kind: 'ray' }>>): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  return (
    <>
      <JobSelect
        label="From node"
        value={at.from}
        choices={withImages(nodes.filter((other) => other.id !== node.id))}
        step={step}
        change={(job, from) => setPlace(job, node.id, { ...at, from })}
      />
      <DirectionFields
        legend="In the direction"
        direction={at.direction}
        step={step}
        put={(job, direction) => setPlace(job, node.id, { ...at, direction })}
      />
      <div className="fields fields-two">
        <JobSelect
          label="until"
          value={at.until.axis}
          choices={COMES_TO.map(({ value, label }) => ({ value, label: `${label} is` }))}
          step={step}
          change={(job, axis) => setPlace(job, node.id, { ...at, until: { ...at.until, axis: axis as Axis } })}
        />
        <LengthField
          label="this much"
          value={at.until.value}
          {...jobEdit<number>(step, (job, value) => setPlace(job, node.id, { ...at, until: { ...at.until, value } }))}
        />
      </div>
    </>
  );
}
