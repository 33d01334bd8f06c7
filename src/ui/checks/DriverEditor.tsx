/** A driver's measured points, helmet, and how far the head goes. */
import { useState, type ReactNode } from 'react';
import { setEye, setShoulders, updateDriver } from '../../core/edit/envelopes.ts';
import type { DriverEnvelope, HeadMotion } from '../../core/job/kinds/envelope.ts';
import { bareId } from '../../core/job/reference.ts';
import { beltsOfDriver } from '../../core/rules/belts-of-driver.ts';
import { askedInWords, beltInWords } from '../../core/words/rules.ts';
import { peopleInWords } from '../../core/words/people.ts';
import { useDocument } from '../../store/page.ts';
import { LengthField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { measuredPlaces } from '../kit/names.ts';
import { withAxis } from '../kit/vectors.ts';
import { DriverPicture } from './DriverPicture.tsx';
import { NameAndGap } from './NameAndGap.tsx';

const NOT_MEASURED = { value: '', label: 'not measured' };

export function DriverEditor({ driver }: { driver: DriverEnvelope }): ReactNode {
  const { id, name, helmetTop, eye } = driver;
  const job = useDocument((state) => state.job);
  const of = (what: string) => `${what} of ${name}`;
  const top = job.points.find((point) => point.id === bareId(helmetTop));
  const isLoose = top?.guessed === true || top?.standIn === true;
  return (
    <div className="fields">
      <NameAndGap envelope={driver} />
      <DriverPicture />
      <JobSelect
        label="1 Top of the helmet"
        value={helmetTop}
        choices={measuredPlaces(job, helmetTop)}
        step={of('Top of the helmet')}
        change={(before, value) => updateDriver(before, id, { helmetTop: value })}
      />
      {isLoose && (
        <p className="small">
          {top.guessed ? 'That point is a guess' : 'That point was measured on a stand-in seat'}: measure the driver
          belted in on the real seat, helmet on.
        </p>
      )}
      <JobSelect
        label="2 Eye"
        value={eye ?? ''}
        choices={[NOT_MEASURED, ...measuredPlaces(job, eye)]}
        step={of('Eye')}
        change={(before, value) => setEye(before, id, value || null)}
      />
      <Shoulders driver={driver} />
      <Belts driver={driver} />
      {(isLoose || driver.shoulders === undefined) && <p className="small">{peopleInWords(job.lengthUnit)}</p>}
      <fieldset className="trio">
        <legend>Helmet</legend>
        {(['Length', 'Width', 'Height'] as const).map((label, axis) => (
          <LengthField
            key={label}
            size
            label={label}
            value={driver.helmet[axis]!}
            {...jobEdit<number>(of(`Helmet ${label.toLowerCase()}`), (before, value) =>
              updateDriver(before, id, { helmet: withAxis(driver.helmet, axis as 0 | 1 | 2, value) }),
            )}
          />
        ))}
      </fieldset>
      <p className="small">A full-face helmet’s shell to begin with, from memory. Measure the one that is worn.</p>
      <fieldset className="trio driver-motion">
        <legend>How far the head goes from where it was measured</legend>
        {WAYS.map(([way, label]) => (
          <LengthField
            key={way}
            label={label}
            value={driver.motion[way]}
            {...jobEdit<number>(of(label), (before, value) =>
              updateDriver(before, id, { motion: { ...driver.motion, [way]: value } }),
            )}
          />
        ))}
      </fieldset>
    </div>
  );
}

const WAYS: readonly (readonly [keyof HeadMotion, string])[] = [
  ['forward', 'Forward, when the belts stretch'],
  ['back', 'Back, into the headrest'],
  ['side', 'To either side'],
  ['up', 'Up, off the seat'],
];

/** Where the straps go as the bar is now, met or not; and what the sheets ask of them. */
function Belts({ driver }: { driver: DriverEnvelope }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { lengthUnit, rules } = derived.job;
  const asked = rules.flatMap(({ checks }) => checks.filter(({ kind }) => kind === 'harness'));
  const belts = beltsOfDriver(derived, driver);
  return (
    belts.length > 0 && (
      <ul className="small">
        {belts.map((belt, i) => (
          <li key={i}>{beltInWords(i === 0 ? 'Left' : 'Right', belt, lengthUnit)}</li>
        ))}
        {asked.map((check, i) => (
          <li key={`asked ${i}`}>Asked: {askedInWords(check, lengthUnit)}</li>
        ))}
      </ul>
    )
  );
}

/** Both or neither are kept: one alone waits here for the other. */
function Shoulders({ driver }: { driver: DriverEnvelope }): ReactNode {
  const { id, name, shoulders } = driver;
  const job = useDocument((state) => state.job);
  const [waiting, setWaiting] = useState<readonly [string, string]>(['', '']);
  const shown = shoulders ?? waiting;
  return (['Left', 'Right'] as const).map((side, i) => (
    <JobSelect
      key={side}
      label={`3 ${side} shoulder, where the belt leaves it`}
      value={shown[i]!}
      choices={[NOT_MEASURED, ...measuredPlaces(job, shown[i] || undefined)]}
      step={`Shoulders of ${name}`}
      change={(before, value) => {
        const both = i === 0 ? ([value, shown[1]] as const) : ([shown[0], value] as const);
        const isWhole = both[0] !== '' && both[1] !== '';
        setWaiting(isWhole ? ['', ''] : both);
        return setShoulders(before, id, isWhole ? both : null);
      }}
    />
  ));
}
