/** The numbers and choices of a place on a tube: so far along, where it comes to a height, where a line crosses it. */
import type { ReactNode } from 'react';
import { setPlace } from '../../core/edit/nodes.ts';
import { placesInPlane } from '../../core/geometry/plane-places.ts';
import { AXIS_INDEX, type Axis } from '../../core/geometry/vector.ts';
import type { CrossingPlace } from '../../core/job/places/crossing.ts';
import { comesTo } from '../../core/shape/ways.ts';

import { useDocument } from '../../store/page.ts';
import { LengthField, type Choice } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { withImages } from '../kit/names.ts';
import { CAR_AXES } from '../kit/vectors.ts';
import { COMES_TO, originChoices, originOf, tubeChoices, type AlongTube, type UntilOnTube } from './choices.ts';
import { CoordinateFields } from './CoordinateFields.tsx';
import { byOtherAxis, withOrigin } from './places.ts';
import { Trio, type Editing } from './Trio.tsx';

const OFF_THE_TUBE = 'Off the tube’s centreline';

export function OnTube({ node, at, step }: Editing<AlongTube>): ReactNode {
  const derived = useDocument((state) => state.derived);
  const bends = derived.bars.get(at.member)?.bends.length ?? 0;
  return (
    <>
      <div className="fields fields-two">
        <TubeChoice node={node} at={at} step={step} />
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
      <Trio node={node} step={step} legend={OFF_THE_TUBE} vector={at.offset} put={(offset) => ({ ...at, offset })} />
    </>
  );
}

function TubeChoice({ node, at, step }: Editing<AlongTube | UntilOnTube | CrossingPlace>): ReactNode {
  const job = useDocument((state) => state.job);
  return (
    <JobSelect
      label="Tube"
      value={at.member}
      choices={tubeChoices(job)}
      step={step}
      change={(before, member) => setPlace(before, node.id, { ...at, member })}
    />
  );
}

export function UntilHeight({ node, at, step }: Editing<UntilOnTube>): ReactNode {
  const frame = useDocument((state) => state.derived);
  const path = frame.bars.get(at.member)?.path;
  if (path === undefined) return null;
  const axis = AXIS_INDEX[at.until.axis];
  const value = comesTo(frame, at.until, at.until.axis);
  const times = Math.max(at.nth, placesInPlane(path, axis, value).length);
  return (
    <>
      <div className="fields fields-two">
        <TubeChoice node={node} at={at} step={step} />
        <JobSelect
          label="Where its"
          value={at.until.axis}
          choices={COMES_TO}
          step={step}
          change={(job, other) => setPlace(job, node.id, byOtherAxis(frame, at, other as Axis))}
        />
        <CoordinateFields
          node={node}
          step={step}
          label={CAR_AXES[axis].header}
          given={at.until}
          now={value}
          put={(until) => ({ ...at, until })}
        />
        <JobSelect
          label="Time, from end A"
          value={String(at.nth)}
          choices={timeChoices(times)}
          step={step}
          change={(job, nth) => setPlace(job, node.id, { ...at, nth: Number(nth) })}
        />
      </div>
      <Trio node={node} step={step} legend={OFF_THE_TUBE} vector={at.offset} put={(offset) => ({ ...at, offset })} />
    </>
  );
}

const FIRST_TIMES = ['the first time', 'the second time', 'the third time'];

const timeChoices = (times: number): readonly Choice[] =>
  Array.from({ length: times }, (_, i) => ({ value: String(i + 1), label: FIRST_TIMES[i] ?? `the ${i + 1}th time` }));

export function Crossing({ node, at, step }: Editing<CrossingPlace>): ReactNode {
  const nodes = useDocument((state) => state.job.nodes);
  const choices = withImages(nodes.filter((other) => other.id !== node.id));
  const [first, second] = at.line;
  return (
    <div className="fields fields-two">
      <TubeChoice node={node} at={at} step={step} />
      <JobSelect
        label="Line from node"
        value={first}
        choices={choices}
        step={step}
        change={(job, reference) => setPlace(job, node.id, { ...at, line: [reference, second] })}
      />
      <JobSelect
        label="through node"
        value={second}
        choices={choices}
        step={step}
        change={(job, reference) => setPlace(job, node.id, { ...at, line: [first, reference] })}
      />
    </div>
  );
}
