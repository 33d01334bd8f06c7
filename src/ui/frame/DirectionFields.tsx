/** A direction as a level or an angle finder shows it: nowhere an arrow to type. Two small views show what is set. */
import { useState, type ReactNode } from 'react';
import { leaning, offLevel, offPlumb, sloping, type OffPlumb } from '../../core/geometry/lean.ts';
import { normalize, type Vec3 } from '../../core/geometry/vector.ts';
import type { Job } from '../../core/job/types.ts';
import { NumberField, SelectField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import '../kit/draw.css';

type Way = 'plumb' | 'level';

/** Steeper than this, as a share of its length, it is first shown off plumb. */
const STEEP = 0.5;
/** Short of level: a lean has no 90 degrees. */
const MOST_LEAN = 89.9;
const PLUMB: OffPlumb = { down: true, forward: 0, left: 0 };

export function DirectionFields(props: {
  legend: string;
  direction: Vec3;
  step: string;
  /** The job with another direction. */
  put: (job: Job, direction: Vec3) => Job;
}): ReactNode {
  const { legend, direction, step, put } = props;
  const unit = normalize(direction);
  const [way, setWay] = useState<Way>(Math.abs(unit[2]) >= STEEP ? 'plumb' : 'level');
  const plumb = offPlumb(direction);
  const level = offLevel(direction);
  /** A field of one angle. */
  const field = (label: string, value: number, most: number, to: (value: number) => Vec3): ReactNode => (
    <NumberField
      label={label}
      least={-most}
      greatest={most}
      step={0.5}
      value={value}
      {...jobEdit<number>(step, (job, typed) => put(job, to(typed)))}
    />
  );
  const leans = plumb ?? PLUMB;
  return (
    <fieldset className="direction">
      <legend>{legend}</legend>
      <SelectField
        label="Angles"
        value={plumb === null ? 'level' : way}
        choices={[
          ...(plumb === null ? [] : [{ value: 'plumb', label: 'off plumb, from side and front' }]),
          { value: 'level', label: 'off level, and where it heads' },
        ]}
        onChoose={(chosen) => setWay(chosen as Way)}
      />
      <div className="fields fields-two">
        {way === 'plumb' && plumb !== null ? (
          <>
            <SelectField
              label="It goes"
              value={leans.down ? 'down' : 'up'}
              choices={[
                { value: 'down', label: 'down' },
                { value: 'up', label: 'up' },
              ]}
              onChoose={(sense) =>
                void jobEdit<boolean>(step, (job, down) => put(job, leaning({ ...leans, down }))).commit(
                  sense === 'down',
                )
              }
            />
            {field('From the side, ° off plumb, + to the front', leans.forward, MOST_LEAN, (forward) =>
              leaning({ ...leans, forward }),
            )}
            {field('From the front, ° off plumb, + to the left', leans.left, MOST_LEAN, (left) =>
              leaning({ ...leans, left }),
            )}
          </>
        ) : (
          <>
            {field('Slope, ° above level', level.slope, 90, (slope) => sloping({ ...level, slope }))}
            {field('Heads, from above, ° left of straight ahead', level.heading, 180, (heading) =>
              sloping({ ...level, heading }),
            )}
          </>
        )}
      </div>
      <div className="direction-views" aria-hidden="true">
        <View name="from the side" across={-unit[0]} up={unit[2]} />
        <View name="from the front" across={unit[1]} up={unit[2]} />
        <View name="from above" across={-unit[1]} up={unit[0]} />
      </div>
    </fieldset>
  );
}

/** px of the arrow at full length. */
const REACH = 24;

/**
 * The direction as one sees it, against plumb and level; from above straight ahead is up. From the side one looks at the left side, the front to the left;
 * from the front the car's left is to the right.
 */
function View({ name, across, up }: { name: string; across: number; up: number }): ReactNode {
  return (
    <figure>
      <svg className="drawing" viewBox="-32 -32 64 64" width="64" height="64">
        <path className="draw-axis" fill="none" d="M-28 0H28M0 -28V28" />
        <path className="draw-cross" d={`M0 0L${(REACH * across).toFixed(2)} ${(-REACH * up).toFixed(2)}`} />
        <circle className="draw-node" cx="0" cy="0" r="3" />
      </svg>
      <figcaption className="small">{name}</figcaption>
    </figure>
  );
}
