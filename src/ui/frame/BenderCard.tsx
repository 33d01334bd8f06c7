/** A die's bender: how the machine is set up, what angles are read with, and what stands round it. */
import { useState, type ReactNode } from 'react';
import { clearBender, setBender } from '../../core/edit/dies.ts';
import type { Bender } from '../../core/job/kinds/bender.ts';
import type { Die } from '../../core/job/kinds/die.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { LengthField, NumberField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Section } from '../kit/Section.tsx';
import { BenderPlan } from './BenderPlan.tsx';
import { BenderRoom } from './BenderRoom.tsx';

export function BenderSetUp({ die }: { die: Die }): ReactNode {
  const { bender } = die;
  // Whoever has just set it up goes on with its fields.
  const [wasAbsent, setWasAbsent] = useState(false);
  if (bender === undefined && !wasAbsent) setWasAbsent(true);
  if (bender === undefined) {
    return (
      <div className="switch">
        <Command step={`Set up the bender of ${die.name}`} run={(job) => setBender(job, die.id, {})}>
          Set up the bender
        </Command>
        <span className="small">
          Which way it turns and what stands round it: then a tube is tried on it before it is bent.
        </span>
      </div>
    );
  }
  return (
    <Section title="Bender set-up" open={wasAbsent}>
      <Machine die={die} bender={bender} />
      <BenderRoom die={die} bender={bender} />
      <Command quiet step={`Take the bender from ${die.name}`} run={(job) => clearBender(job, die.id)}>
        Take this set-up away
      </Command>
    </Section>
  );
}

const STEPS: readonly { key: 'levelStep' | 'wheelStep' | 'pullStep'; label: string }[] = [
  { key: 'levelStep', label: 'Level reads to, °' },
  { key: 'wheelStep', label: 'Wheel reads to, °' },
  { key: 'pullStep', label: 'Machine’s scale reads to, °' },
];

function Machine({ die, bender }: { die: Die; bender: Bender }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const step = `Change the bender of ${die.name}`;
  return (
    <>
      <BenderPlan die={die} bender={bender} unit={unit} />
      <div className="fields fields-two">
        <JobSelect
          label="Seen from above, it bends"
          value={bender.turns}
          choices={TURNS}
          step={step}
          change={(job, turns) => setBender(job, die.id, { turns: turns as Bender['turns'] })}
        />
        <LengthField
          label="Bend plane over the floor"
          value={bender.planeHeight}
          {...jobEdit<number>(step, (job, planeHeight) => setBender(job, die.id, { planeHeight }))}
        />
      </div>
      <JobSelect
        label="The end that the tape is hooked over"
        value={bender.bendLies}
        choices={LIES}
        step={step}
        change={(job, bendLies) => setBender(job, die.id, { bendLies: bendLies as Bender['bendLies'] })}
      />
      <JobSelect
        label="Rotation is read with"
        value={bender.rotationBy}
        choices={READERS}
        step={step}
        change={(job, rotationBy) => setBender(job, die.id, { rotationBy: rotationBy as Bender['rotationBy'] })}
      />
      <div className="trio">
        {STEPS.map(({ key, label }) => (
          <NumberField
            key={key}
            label={label}
            value={bender[key]}
            least={0.01}
            greatest={45}
            step={0.1}
            {...jobEdit<number>(step, (job, value) => setBender(job, die.id, { [key]: value }))}
          />
        ))}
      </div>
    </>
  );
}

const TURNS: readonly { value: Bender['turns']; label: string }[] = [
  { value: 'left', label: 'to the left' },
  { value: 'right', label: 'to the right' },
];

const LIES: readonly { value: Bender['bendLies']; label: string }[] = [
  { value: 'beyond', label: 'in front: bend beyond its mark' },
  { value: 'before', label: 'behind: bend before its mark' },
];

const READERS: readonly { value: Bender['rotationBy']; label: string }[] = [
  { value: 'level', label: 'a digital level on the free end' },
  { value: 'wheel', label: 'a degree wheel on the tube' },
];
