/** What the cage is made of, bent with and stands on: sections of tube, the dies of the bender, feet. */
import { RADIUS_BY } from '../../core/words/shop.ts';
import { shownName } from '../../core/job/shown.ts';
import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { addDie, removeDie, updateDie } from '../../core/edit/dies.ts';
import { addSection, removeSection, setStick, updateSection } from '../../core/edit/sections.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import type { Section as TubeSection } from '../../core/job/kinds/section.ts';
import type { SectionId } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { STEELS } from '../../core/springback/steels.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { AngleField, LengthField, TextField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { dieSize, resizedDie, resizedSection, sectionSize } from '../../core/job/sizes.ts';
import {
  choiceColumn,
  lengthColumn,
  sizeOrNothingColumn,
  textColumn,
  wallColumn,
  type Column,
} from '../table/columns.tsx';
import { EditTable } from '../table/EditTable.tsx';
import { BenderSetUp } from './BenderCard.tsx';
import { keep, OPENS_FRAME_AT, readKept } from '../kit/kept.ts';
import { Delete } from '../fields/Delete.tsx';
import { FeetTable } from './FeetTable.tsx';

export function MaterialTables(): ReactNode {
  const feet = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (readKept(OPENS_FRAME_AT) !== 'feet') return;
    keep(OPENS_FRAME_AT, null);
    feet.current?.scrollIntoView();
    feet.current?.focus();
  }, []);
  return (
    <>
      <h3>Tube</h3>
      <Sections />
      <h3>Dies</h3>
      <Dies />
      <h3 ref={feet} tabIndex={-1}>
        Feet
      </h3>
      <FeetTable />
    </>
  );
}

function Sections(): ReactNode {
  const sections = useDocument((state) => state.job.sections);
  const lengthUnit = useDocument((state) => state.job.lengthUnit);
  const columns = useMemo((): Column<TubeSection>[] => {
    return [
      textColumn<TubeSection>({
        header: 'Section',
        step: 'Rename a section',
        value: (section) => section.name,
        change: (job, { id }, name) => updateSection(job, id, { name }),
      }),
      lengthColumn<TubeSection>(lengthUnit, {
        header: 'OD',
        size: true,
        step: 'Change a section',
        value: (section) => section.outerDiameter,
        change: (job, { id }, outerDiameter) => resized(job, id, { outerDiameter }),
      }),
      wallColumn<TubeSection>(lengthUnit, {
        header: 'Wall',
        step: 'Change a section',
        value: (section) => section.wall,
        change: (job, { id }, wall) => resized(job, id, { wall }),
      }),
      choiceColumn<TubeSection>({
        header: 'Steel',
        step: 'Change the steel',
        value: (section) => section.material,
        choices: () => [
          { value: '', label: 'not given' },
          ...STEELS.map((steel) => ({ value: steel.id, label: steel.name })),
        ],
        change: (job, { id }, material) => updateSection(job, id, { material }),
      }),
      sizeOrNothingColumn<TubeSection>(lengthUnit, {
        header: 'Stick',
        step: 'Change the stick',
        value: (section) => section.stick ?? null,
        change: (job, { id }, stick) => setStick(job, id, stick),
      }),
    ];
  }, [lengthUnit]);
  return (
    <>
      {sections.length === 0 && <p className="empty">No tube yet: add the size that the rule book asks for.</p>}
      {sections.length > 0 && (
        <EditTable
          caption="Sections of tube"
          rows={sections}
          columns={columns}
          firstLine={3}
          rowId={(row) => row.id}
          rowName={(row) => row.name}
        />
      )}
      <Command step="Add a section" run={(job) => addSection(job, (size) => sectionSize(size, job.lengthUnit))}>
        Add a section
      </Command>
      {sections.map((section) => (
        <Delete key={section.id} id={section.id} name={section.name} remove={(job) => removeSection(job, section.id)} />
      ))}
    </>
  );
}

function resized(job: Job, id: SectionId, size: Partial<TubeSection>): Job {
  const section = job.sections.find((one) => one.id === id);
  return section === undefined ? job : updateSection(job, id, resizedSection(section, size, job.lengthUnit));
}

function Dies(): ReactNode {
  const dies = useDocument((state) => state.job.dies);
  return (
    <>
      {dies.length === 0 && <p className="empty">No die yet: a tube that bends needs one.</p>}
      {dies.map((die) => (
        <DieCard key={die.id} die={die} />
      ))}
      <Command step="Add a die" run={(job) => addDie(job, (size) => dieSize(size, job.lengthUnit))}>
        Add a die
      </Command>
    </>
  );
}

const LENGTHS: readonly {
  key: 'outerDiameter' | 'centrelineRadius' | 'clampOffset' | 'leastStraight' | 'leastGrip';
  label: string;
  size: boolean;
}[] = [
  { key: 'outerDiameter', label: 'For tube, OD', size: true },
  { key: 'centrelineRadius', label: 'Centreline radius', size: true },
  { key: 'clampOffset', label: 'Clamp before start of bend', size: false },
  { key: 'leastStraight', label: 'Shortest straight between bends', size: false },
  { key: 'leastGrip', label: 'Shortest tail it can grip', size: false },
];

function DieCard({ die }: { die: Die }): ReactNode {
  const pulled = useDocument((state) => state.job.pulls.some((pull) => pull.die === die.id));
  const step = `Change ${die.name}`;
  return (
    <article className="card" aria-label={`Die ${shownName(die.name)}`}>
      <div className="fields fields-two">
        <TextField
          label="Die"
          value={die.name}
          {...jobEdit<string>('Rename a die', (job, name) => updateDie(job, die.id, { name }))}
        />
        {LENGTHS.map(({ key, label, size }) => (
          <LengthField
            key={key}
            label={label}
            size={size}
            value={die[key]}
            {...jobEdit<number>(step, (job, value) =>
              updateDie(
                job,
                die.id,
                key === 'centrelineRadius' ? resizedDie(die, value, job.lengthUnit) : { [key]: value },
              ),
            )}
          />
        ))}
        <AngleField
          label="Greatest angle"
          value={die.greatestAngle}
          {...jobEdit<number>(step, (job, greatestAngle) => updateDie(job, die.id, { greatestAngle }))}
        />
      </div>
      <JobSelect
        label="Radius that bends are laid out with"
        value={die.radius}
        choices={RADIUS_CHOICES}
        step={step}
        change={(job, radius) => updateDie(job, die.id, { radius: radius as Die['radius'] })}
      />
      <p className="small">{radiusInWords(die, pulled)}</p>
      <BenderSetUp die={die} />
      <Delete id={die.id} name={die.name} remove={(job) => removeDie(job, die.id)} />
    </article>
  );
}

const RADIUS_CHOICES: readonly { value: Die['radius']; label: string }[] = [
  { value: 'nominal', label: RADIUS_BY.nominal },
  { value: 'from-pulls', label: RADIUS_BY['from-pulls'] },
];

/** Why one would choose this radius. */
function radiusInWords({ radius }: Die, pulled: boolean): string {
  if (radius === 'nominal')
    return 'A bend opens when it is let go, so a real one comes out somewhat larger than the die.';
  return `The die’s radius x pulled / finished angle: what a bend opens to when it is let go.${pulled ? '' : ' No pulls of this die are logged yet: the estimate from the steel stands in.'}`;
}
