/** The feet of the cage: plates and boxes, with their holes and the bend of a plate that lies over a kink of the car. */
import { massInWords } from '../../core/units/mass.ts';
import { useMemo, type ReactNode } from 'react';
import {
  addFoot,
  removeFoot,
  setFootHeight,
  setFootKind,
  setFootSize,
  setFootWall,
  setHoles,
  setKink,
  updateFoot,
} from '../../core/edit/feet.ts';
import { footMass } from '../../core/feet/amount.ts';
import { standsOf } from '../../core/feet/stand.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Foot, Hole } from '../../core/job/kinds/foot.ts';
import type { Kink } from '../../core/job/kinds/kink.ts';
import { bendInWords } from '../../core/words/feet.ts';
import { useDocument } from '../../store/page.ts';
import { AngleField, LengthField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { Drawn } from '../kit/Drawn.tsx';
import { Section } from '../kit/Section.tsx';
import { choiceColumn, lengthColumn, textColumn, type Column } from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { Delete } from '../fields/Delete.tsx';
import { footPicture } from './foot-picture.ts';
import { touchInWords } from './PlaneOfEnd.tsx';

const STEP = 'Change a foot';

export function FeetTable(): ReactNode {
  const feet = useDocument((state) => state.job.feet);
  const lengthUnit = useDocument((state) => state.job.lengthUnit);
  const columns = useMemo((): Column<Foot>[] => {
    const size = (header: string, axis: 0 | 1): Column<Foot> =>
      lengthColumn<Foot>(lengthUnit, {
        header,
        size: true,
        step: STEP,
        value: (foot) => foot.size[axis],
        change: (job, { id }, mm) => setFootSize(job, id, axis, mm),
      });
    return [
      textColumn<Foot>({
        header: 'Foot',
        step: 'Rename a foot',
        value: (foot) => foot.name,
        change: (job, { id }, name) => updateFoot(job, id, { name }),
      }),
      choiceColumn<Foot>({
        header: 'Kind',
        step: STEP,
        value: (foot) => foot.kind,
        choices: () => KINDS,
        change: (job, { id }, kind) => setFootKind(job, id, kind as Foot['kind']),
      }),
      size('Along', 0),
      size('Across', 1),
      lengthColumn<Foot>(lengthUnit, {
        header: 'Thick',
        size: true,
        step: STEP,
        value: (foot) => foot.thickness,
        change: (job, { id }, thickness) => updateFoot(job, id, { thickness }),
      }),
    ];
  }, [lengthUnit]);
  return (
    <>
      {feet.length === 0 && <p className="empty">No foot yet: a plate or a box that legs and stays stand on.</p>}
      {feet.length > 0 && (
        <EditTable
          caption="Feet"
          rows={feet}
          columns={columns}
          firstLine={2}
          rowId={(foot) => foot.id}
          rowName={(foot) => foot.name}
        />
      )}
      <div className="row">
        <Command step="Add a plate" run={(job) => addFoot(job, 'plate')}>
          Add a plate
        </Command>
        <Command step="Add a box" run={(job) => addFoot(job, 'box')}>
          Add a box
        </Command>
      </div>
      {feet.map((foot) => (
        <FootMore key={foot.id} foot={foot} />
      ))}
    </>
  );
}

const KINDS: readonly { value: Foot['kind']; label: string }[] = [
  { value: 'plate', label: 'plate' },
  { value: 'box', label: 'box' },
];

/** What does not go into a row: walls, holes, the kink, what it comes to. */
function FootMore({ foot }: { foot: Foot }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const stands = useDocument((state) => state.derived.tubes)
    .flatMap(standsOf)
    .filter((stand) => stand.foot.id === foot.id);
  const called = shownName(foot.name);
  const bend = bendInWords(foot, unit);
  return (
    <Section title={called} count={stands.length}>
      <Drawn
        {...footPicture(foot, stands[0]?.outline ?? null, 36)}
        scale={4}
        label={`${called} from the tube’s side`}
      />
      <p className="small">
        {stands.length === 0
          ? 'No end stands on it yet.'
          : `Stands under ${stands.map(({ tube, which }) => `${tube.number} ${which === 0 ? 'A' : 'B'}`).join(', ')}.`}{' '}
        {touchInWords(foot, { lengthUnit: unit })} {massInWords(footMass(foot), unit)} each.
      </p>
      {foot.kind === 'box' ? <Walls foot={foot} /> : <KinkFields foot={foot} />}
      {bend !== null && <p className="small">{bend}</p>}
      <Holes foot={foot} />
      <Delete id={foot.id} name={foot.name} remove={(job) => removeFoot(job, foot.id)} />
    </Section>
  );
}

function Walls({ foot }: { foot: Extract<Foot, { kind: 'box' }> }): ReactNode {
  return (
    <div className="fields fields-two">
      <LengthField
        label="Height of its walls"
        size
        value={foot.height}
        {...jobEdit<number>(STEP, (job, height) => setFootHeight(job, foot.id, height))}
      />
      <LengthField
        label="Thickness of its walls"
        size
        value={foot.wall ?? foot.thickness}
        {...jobEdit<number>(STEP, (job, wall) => setFootWall(job, foot.id, wall))}
      />
    </div>
  );
}

function KinkFields({ foot }: { foot: Extract<Foot, { kind: 'plate' }> }): ReactNode {
  const { kink } = foot;
  if (kink === undefined) {
    const runsAcross = foot.size[0] >= foot.size[1];
    const at = foot.size[runsAcross ? 0 : 1] / 4;
    const first: Kink = { runs: runsAcross ? 'across' : 'along', at, angle: 15, radius: foot.thickness };
    return (
      <div className="switch">
        <Command step="Bend a plate" run={(job) => setKink(job, foot.id, first)}>
          Bend it over a kink
        </Command>
        <span className="small">Where floor and sill meet, a plate lies on both.</span>
      </div>
    );
  }
  const field = (key: 'at' | 'angle' | 'radius') => ({
    value: kink[key],
    ...jobEdit<number>('Bend a plate', (job, value) => setKink(job, foot.id, { ...kink, [key]: value })),
  });
  return (
    <>
      <div className="fields fields-two">
        <JobSelect
          label="The kink runs"
          value={kink.runs}
          choices={RUNS}
          step="Bend a plate"
          change={(job, runs) => setKink(job, foot.id, { ...kink, runs: runs as Kink['runs'] })}
        />
        <LengthField label={kink.runs === 'across' ? 'Ahead of the middle' : 'Left of the middle'} {...field('at')} />
        <AngleField label="Falls away by (− rises)" {...field('angle')} />
        <LengthField label="Inside radius" size {...field('radius')} />
      </div>
      <Command quiet step="Make a plate flat" run={(job) => setKink(job, foot.id, null)}>
        Make it flat
      </Command>
    </>
  );
}

const RUNS: readonly { value: Kink['runs']; label: string }[] = [
  { value: 'across', label: 'across' },
  { value: 'along', label: 'along' },
];

/** A clearance hole for an M8, or for a 5/16 in bolt (common practice). */
const BOLT = 8.5;
/** From the edge to the middle of a new hole: two of its diameters. */
const IN = 2 * BOLT;

function Holes({ foot }: { foot: Foot }): ReactNode {
  const holes = foot.holes ?? [];
  const put = (index: number, hole: Hole): Hole[] => holes.map((before, i) => (i === index ? hole : before));
  return (
    <>
      {holes.map((hole, index) => (
        // Holes have no names: the first is 1.
        <fieldset key={index} className="trio">
          <legend>
            Hole {index + 1}, from the middle{' '}
            <Command
              quiet
              destroys={`hole ${index}`}
              label={`Delete hole ${index + 1}`}
              step="Delete a hole"
              run={(job) => setHoles(job, foot.id, holes.toSpliced(index, 1))}
            >
              ×
            </Command>
          </legend>
          {(['Ahead', 'Left'] as const).map((label, axis) => (
            <LengthField
              key={label}
              label={label}
              value={hole.at[axis]!}
              {...jobEdit<number>('Move a hole', (job, mm) =>
                setHoles(job, foot.id, put(index, { ...hole, at: hole.at.with(axis, mm) as unknown as Hole['at'] })),
              )}
            />
          ))}
          <LengthField
            label="Diameter"
            size
            value={hole.diameter}
            {...jobEdit<number>('Change a hole', (job, diameter) =>
              setHoles(job, foot.id, put(index, { ...hole, diameter })),
            )}
          />
        </fieldset>
      ))}
      <Command quiet step="Add a hole" run={(job) => setHoles(job, foot.id, [...holes, nextHole(foot)])}>
        Add a hole
      </Command>
    </>
  );
}

const CORNERS = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;

/** In the corners one after the other, as wide as the last. */
function nextHole({ size, holes = [] }: Foot): Hole {
  const [along, across] = CORNERS[holes.length % CORNERS.length]!;
  const off = (axis: 0 | 1): number => Math.max(0, size[axis] / 2 - IN);
  return { at: [along * off(0), across * off(1)], diameter: holes.at(-1)?.diameter ?? BOLT };
}
