/**
 * Where the car's axes are. Usual: the lines on the floor are the car's own. A car that stands askew to them says by its points what is level, where
 * its centre line runs and where zero is; all that was drawn stays where it is on the car.
 */
import { useMemo, useState, type ReactNode } from 'react';
import { setDatum, withoutDatum } from '../../core/edit/datum.ts';
import {
  datumOf,
  datumTrouble,
  heldOtherwise,
  tooFewHeld,
  type Centre,
  type Datum as Laid,
} from '../../core/survey/datum.ts';
import { shownName } from '../../core/job/shown.ts';
import { adjust, type Standing } from '../../core/survey/adjust.ts';
import { uncapital } from '../../core/words/lists.ts';
import { heightOf, namedPairs, suggestedDatum } from '../../core/survey/datum-choice.ts';
import { motionBetween, movedWithCar } from '../../core/shape/move-with-car.ts';
import type { Job } from '../../core/job/types.ts';
import {
  letGoInWords,
  notLaidInWords,
  NO_DATUM_WORDS,
  SQUARE_TO_LINES,
  standsInWords,
} from '../../core/words/datum.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { LengthField, SelectField, type Choice } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';

export default function Datum(): ReactNode {
  const job = useDocument((state) => state.job);
  const derived = useDocument((state) => state.derived);
  const points = derived.job.points;
  const measured = useMemo(() => points.filter(({ by }) => by === 'survey'), [points]);
  const present = datumOf(job);
  const [asked, ask] = useState<Laid | null>(null);
  const suggested = useMemo(() => suggestedDatum(measured), [measured]);
  const laid = asked ?? present ?? suggested;
  const then = useMemo(() => (datumTrouble(job, laid) === null ? adjust(setDatum(job, laid)) : null), [job, laid]);
  if (measured.length < FEWEST) {
    return (
      <>
        <Lies job={job} standing={derived.survey?.stands} />
        <p className="small">
          With five measured points or more a car that does not stand square to the lines on the floor can be put right
          here.
        </p>
        {job.survey?.askew === true && (
          <>
            <LetsGo job={job} />
            <TakeLines onDone={() => ask(null)} />
          </>
        )}
      </>
    );
  }
  const trouble = datumTrouble(job, laid);
  const choices = measured.map(({ id, name }): Choice => ({ value: id, label: shownName(name) }));
  const centres = [...centreChoices(measured), ...choices];
  const change = (fields: Partial<Laid>): void => ask({ ...laid, ...fields });
  const isSame = JSON.stringify(laid) === JSON.stringify(present);
  return (
    <>
      <Lies job={job} standing={derived.survey?.stands} />
      <p className="small">
        Where the car does not stand square to the lines, or the floor is not level, say which points of it are level,
        where its centre line runs and where zero is. What was drawn stays where it is on the car; what is mirrored goes
        by the new centre plane.
      </p>
      <div className="fields">
        {laid.level.map((id, i) => (
          <SelectField
            key={i}
            label={`Level: point ${i + 1}`}
            value={id}
            choices={choices}
            onChoose={(to) => {
              const level = laid.level.map((each, k) => (k === i ? to : each)) as unknown as Laid['level'];
              change({ level, height: heightOf(measured, level) });
            }}
          />
        ))}
        <LengthField
          label="These three stand at height"
          value={laid.height}
          commit={(height) => {
            change({ height });
            return [];
          }}
        />
        {laid.centre.map((centre, i) => (
          <SelectField
            key={i}
            label={i === 0 ? 'The centre line runs through' : 'and through'}
            value={centre.join(BETWEEN)}
            choices={centres}
            onChoose={(to) => {
              const parts = to.split(BETWEEN);
              const next = (parts.length === 2 ? parts : [to]) as unknown as Centre;
              change({ centre: laid.centre.map((each, k) => (k === i ? next : each)) as unknown as Laid['centre'] });
            }}
          />
        ))}
        <SelectField
          label="Zero along the car is counted from"
          value={laid.zero}
          choices={choices}
          onChoose={(zero) =>
            change({ zero, station: measured.find(({ id }) => id === zero)?.position[0] ?? laid.station })
          }
        />
        <LengthField
          label="which stands at station"
          value={laid.station}
          commit={(station) => {
            change({ station });
            return [];
          }}
        />
      </div>
      {trouble !== null && <p role="status">{NO_DATUM_WORDS[trouble]}</p>}
      {!isSame && then?.stands !== undefined && (
        <p role="status">
          Laid so: {uncapital(standsInWords(then.stands))}{' '}
          {isMuch(then.stands) && <strong>That is much: are these three level, and in one height?</strong>}
        </p>
      )}
      <LetsGo job={job} />
      <div className="row">
        <Command
          step="Lay the car’s axes by its points"
          disabled={trouble !== null || isSame}
          run={(before) => kept(before, setDatum(before, laid))}
          onDone={() => ask(null)}
        >
          Lay the axes so
        </Command>
        {job.survey?.askew === true && <TakeLines onDone={() => ask(null)} />}
      </div>
    </>
  );
}

/** Where the axes are now. */
function Lies({ job, standing }: { job: Job; standing: Standing | undefined }): ReactNode {
  const held = tooFewHeld(job);
  if (held !== null) return <p role="status">{notLaidInWords(held)}</p>;
  if (job.survey?.askew !== true) return <p>{SQUARE_TO_LINES}</p>;
  return standing !== undefined && <p>{standsInWords(standing)}</p>;
}

function LetsGo({ job }: { job: Job }): ReactNode {
  const held = heldOtherwise(job);
  return held.length > 0 && <p className="small">{letGoInWords(job, held)}</p>;
}

const TakeLines = ({ onDone }: { onDone: () => void }): ReactNode => (
  <Command
    quiet
    step="Take the floor’s lines as the car’s"
    run={(before) => kept(before, withoutDatum(before))}
    onDone={onDone}
  >
    Take the lines on the floor
  </Command>
);

/** All that was drawn, kept where it is on the car. */
function kept(before: Job, after: Job): Job {
  const { derived } = jobDocument.getState();
  const motion = motionBetween(before, after);
  return motion === null ? after : movedWithCar(after, derived, motion);
}

/** No id holds a line break. */
const BETWEEN = '\n';

/** Points that a car is laid by: fewer leave it open. */
const FEWEST = 5;

/** Degrees of nose and side: more is a floor that nobody builds on. */
const MUCH = 2;

const isMuch = ({ turns: [, pitch, roll] }: Standing): boolean => Math.max(Math.abs(pitch), Math.abs(roll)) > MUCH;

const centreChoices = (points: Job['points']): readonly Choice[] =>
  namedPairs(points).map(([left, right]) => ({
    value: [left.id, right.id].join(BETWEEN),
    label: `midway between ${shownName(left.name)} and ${shownName(right.name)}`,
  }));
