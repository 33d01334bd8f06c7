/** The numbers that give a node's place, for each kind of place. */
import type { ReactNode } from 'react';
import { setPlace } from '../../core/edit/nodes.ts';
import type { Axis, Vec3 } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField, NumberField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { withImages } from '../kit/names.ts';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';
import { originChoices, originOf, tubeChoices } from './choices.ts';
import { withOrigin } from './places.ts';

/** Edits one thing of this node's place. */
type Editing<P extends Place> = { node: FrameNode; at: P; step: string };

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
      return <OnTube node={node} at={at} step={step} />;
    case 'between':
      return <Between node={node} at={at} step={step} />;
    case 'ray':
      return <AlongRay node={node} at={at} step={step} />;
  }
}

function Trio(props: {
  node: FrameNode;
  step: string;
  legend: string;
  vector: Vec3;
  put: (vector: Vec3) => Place;
}): ReactNode {
  return (
    <fieldset className="trio">
      <legend>{props.legend}</legend>
      {CAR_AXES.map(({ header }, axis) => (
        <LengthField
          key={header}
          label={header}
          value={props.vector[axis] ?? 0}
          {...jobEdit<number>(props.step, (job, value) =>
            setPlace(job, props.node.id, props.put(withAxis(props.vector, axis as 0 | 1 | 2, value))),
          )}
        />
      ))}
    </fieldset>
  );
}

function OnPoint({ node, at, step }: Editing<Extract<Place, { kind: 'point' }>>): ReactNode {
  const points = useDocument((state) => state.job.points);
  return (
    <>
      <JobSelect
        label="Measured point"
        value={at.point}
        choices={withImages(points)}
        step={step}
        change={(job, point) => setPlace(job, node.id, { ...at, point })}
      />
      <Trio
        node={node}
        step={step}
        legend="Away from the point"
        vector={at.offset}
        put={(offset) => ({ ...at, offset })}
      />
    </>
  );
}

function OnTube({ node, at, step }: Editing<Extract<Place, { kind: 'on' }>>): ReactNode {
  const derived = useDocument((state) => state.derived);
  const bends = derived.bars.get(at.member)?.bends.length ?? 0;
  return (
    <>
      <div className="fields fields-two">
        <JobSelect
          label="Tube"
          value={at.member}
          choices={tubeChoices(derived.job)}
          step={step}
          change={(job, member) => setPlace(job, node.id, { ...at, member })}
        />
        <JobSelect
          label="Measured from"
          value={originOf(at)}
          choices={originChoices(bends)}
          step={step}
          change={(job, origin) => setPlace(job, node.id, withOrigin(at, origin))}
        />
        <LengthField
          label={at.from === undefined ? 'Along the tube, + towards B' : 'Along the tube'}
          value={at.distance}
          {...jobEdit<number>(step, (job, distance) => setPlace(job, node.id, { ...at, distance }))}
        />
      </div>
      <Trio
        node={node}
        step={step}
        legend="Off the tube’s centreline"
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

const PLANES: readonly { value: Axis; label: string }[] = [
  { value: 'x', label: 'along is' },
  { value: 'y', label: 'offset is' },
  { value: 'z', label: 'height is' },
];

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
      <fieldset className="trio">
        <legend>In the direction</legend>
        {CAR_AXES.map(({ header, means }, axis) => (
          <NumberField
            key={header}
            label={`${header}, ${means}`}
            least={-100000}
            greatest={100000}
            step={0.01}
            value={at.direction[axis] ?? 0}
            {...jobEdit<number>(step, (job, value) =>
              setPlace(job, node.id, { ...at, direction: withAxis(at.direction, axis as 0 | 1 | 2, value) }),
            )}
          />
        ))}
      </fieldset>
      <div className="fields fields-two">
        <JobSelect
          label="until"
          value={at.until.axis}
          choices={PLANES}
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
