/** What stands round a bender: boxes, and planes for walls, bench tops and ceilings, each folded away under its name. */
import { shownName } from '../../core/job/shown.ts';
import { useState, type ReactNode } from 'react';
import { addObstacle, changeObstacle, removeObstacle } from '../../core/edit/dies.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Bender } from '../../core/job/kinds/bender.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import type { Obstacle } from '../../core/job/kinds/obstacle.ts';
import type { DieId } from '../../core/job/reference.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { Command } from '../kit/Command.tsx';
import { AngleField, LengthField, NumberField, TextField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Length } from '../fields/Readings.tsx';
import { Section } from '../kit/Section.tsx';
import { withAxis } from '../kit/vectors.ts';
import { heights, type BoxObstacle, type PlaneObstacle } from './bender-plan.ts';

export function BenderRoom({ die, bender }: { die: Die; bender: Bender }): ReactNode {
  const { room } = bender;
  const [standing] = useState(room.length);
  const next = (kind: Obstacle['kind']): number => 1 + room.filter((each) => each.kind === kind).length;
  return (
    <>
      <h4>The room round it</h4>
      <p className="small">
        Measured from the floor under the start of bend: along the feed, to the left of it, up. The floor is there
        already.
      </p>
      {room.map((obstacle, index) => (
        <Thing key={index} die={die.id} obstacle={obstacle} index={index} open={index >= standing} />
      ))}
      <div className="row">
        <Command
          step="Add a box to the room"
          run={(job) => addObstacle(job, die.id, newBox(next('box'), job.lengthUnit))}
        >
          Add a box
        </Command>
        <Command
          step="Add a wall to the room"
          run={(job) => addObstacle(job, die.id, newWall(next('plane'), job.lengthUnit))}
        >
          Add a wall
        </Command>
      </div>
    </>
  );
}

/** Of each unit, a length that a tape shows at once: a bench beside the feed and a wall ahead of it are given in these. */
const FOOT: Readonly<Record<LengthUnit, number>> = { in: 304.8, mm: 300 };

/** Starts to edit from. */
const newBox = (number: number, unit: LengthUnit): Obstacle => ({
  name: `Box ${number}`,
  kind: 'box',
  centre: [0, -3 * FOOT[unit], 1.5 * FOOT[unit]],
  size: [5 * FOOT[unit], 2 * FOOT[unit], 3 * FOOT[unit]],
  rotation: [0, 0, 0],
});
const newWall = (number: number, unit: LengthUnit): Obstacle => ({
  name: `Wall ${number}`,
  kind: 'plane',
  point: [8 * FOOT[unit], 0, 0],
  normal: [-1, 0, 0],
});

interface ThingProps<O extends Obstacle> {
  readonly die: DieId;
  readonly obstacle: O;
  readonly index: number;
}

/** `open`: it was put there just now. */
function Thing({ die, obstacle, index, open }: ThingProps<Obstacle> & { open: boolean }): ReactNode {
  const called = shownName(obstacle.name) || `thing ${index + 1}`;
  return (
    <Section title={called} open={open}>
      <TextField
        label={obstacle.kind === 'box' ? 'Box' : 'Wall, bench top or ceiling'}
        value={obstacle.name}
        {...jobEdit<string>('Rename a thing in the room', (job, name) =>
          changeObstacle(job, die, index, { ...obstacle, name }),
        )}
      />
      {obstacle.kind === 'box' ? (
        <BoxFields die={die} obstacle={obstacle} index={index} />
      ) : (
        <PlaneFields die={die} obstacle={obstacle} index={index} />
      )}
      <Command
        quiet
        destroys={`thing ${index}`}
        step={`Delete ${called}`}
        run={(job) => removeObstacle(job, die, index)}
      >
        Delete {called}
      </Command>
    </Section>
  );
}

const PLACE = ['Along', 'Left', 'Up'] as const;
const SIZE = ['Along', 'Across', 'High'] as const;
const TURN = ['About along', 'About left', 'About up'] as const;

function BoxFields({ die, obstacle, index }: ThingProps<BoxObstacle>): ReactNode {
  const [low, high] = heights(obstacle);
  const vector = (key: 'centre' | 'size' | 'rotation', axis: number) => ({
    value: obstacle[key][axis]!,
    ...jobEdit<number>(`Change ${obstacle.name}`, (job, value) =>
      changeObstacle(job, die, index, {
        ...obstacle,
        [key]: withAxis(obstacle[key] as Vec3, axis as 0 | 1 | 2, value),
      }),
    ),
  });
  return (
    <>
      <fieldset className="trio">
        <legend>Centre</legend>
        {PLACE.map((label, axis) => (
          <LengthField key={label} label={label} {...vector('centre', axis)} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Full size</legend>
        {SIZE.map((label, axis) => (
          <LengthField key={label} size label={label} {...vector('size', axis)} />
        ))}
      </fieldset>
      <fieldset className="trio">
        <legend>Turned about along, then left, then up</legend>
        {TURN.map((label, axis) => (
          <AngleField key={label} label={label} {...vector('rotation', axis)} />
        ))}
      </fieldset>
      <p className="small">
        It stands from <Length mm={low} withUnit /> to <Length mm={high} withUnit /> over the floor.
      </p>
    </>
  );
}

const FACES: readonly { value: string; label: string; normal: Vec3 }[] = [
  { value: '-1,0,0', label: 'back along the feed', normal: [-1, 0, 0] },
  { value: '1,0,0', label: 'on along the feed', normal: [1, 0, 0] },
  { value: '0,1,0', label: 'to the left', normal: [0, 1, 0] },
  { value: '0,-1,0', label: 'to the right', normal: [0, -1, 0] },
  { value: '0,0,1', label: 'up, as a bench’s top does', normal: [0, 0, 1] },
  { value: '0,0,-1', label: 'down, as a ceiling does', normal: [0, 0, -1] },
];

function PlaneFields({ die, obstacle, index }: ThingProps<PlaneObstacle>): ReactNode {
  const step = `Change ${obstacle.name}`;
  const { normal } = obstacle;
  const face = FACES.find((one) => one.normal.every((part, axis) => part === normal[axis]));
  return (
    <>
      <fieldset className="trio">
        <legend>A spot on it</legend>
        {PLACE.map((label, axis) => (
          <LengthField
            key={label}
            label={label}
            value={obstacle.point[axis]!}
            {...jobEdit<number>(step, (job, value) =>
              changeObstacle(job, die, index, {
                ...obstacle,
                point: withAxis(obstacle.point, axis as 0 | 1 | 2, value),
              }),
            )}
          />
        ))}
      </fieldset>
      <JobSelect
        label="It faces"
        value={face?.value ?? 'slanted'}
        choices={face === undefined ? [...FACES, { value: 'slanted', label: 'slanted, as below' }] : FACES}
        step={step}
        change={(job, value) => {
          const chosen = FACES.find((one) => one.value === value);
          return chosen === undefined ? job : changeObstacle(job, die, index, { ...obstacle, normal: chosen.normal });
        }}
      />
      <fieldset className="trio">
        <legend>The way it faces, into the room</legend>
        {PLACE.map((label, axis) => (
          <NumberField
            key={label}
            label={label}
            value={normal[axis]!}
            least={-1000}
            greatest={1000}
            step={0.1}
            {...jobEdit<number>(step, (job, value) =>
              changeObstacle(job, die, index, { ...obstacle, normal: withAxis(normal, axis as 0 | 1 | 2, value) }),
            )}
          />
        ))}
      </fieldset>
    </>
  );
}
