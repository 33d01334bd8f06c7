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
import type { Standing } from '../../core/survey/adjust.ts';
import { pairsOfPoints } from '../../core/survey/point-pairs.ts';
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
  const [asked, ask] = useState<Laid | null>(present);
  const laid = asked ?? firstDatum(measured);
  if (measured.length < 5 || laid === null) {
    return (
      <>
        <Lies job={job} standing={derived.survey?.stands} />
        <p className="small">
          With five measured points or more, two pairs left and right among them, a car that does not stand square to
          the lines on the floor can be put right here.
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
  const centres = [...centreChoices(points), ...choices];
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
            onChoose={(to) =>
              change({ level: laid.level.map((each, k) => (k === i ? to : each)) as unknown as Laid['level'] })
            }
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
          onChoose={(zero) => change({ zero })}
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
      <LetsGo job={job} />
      <div className="row">
        <Command
          step="Lay the car’s axes by its points"
          disabled={trouble !== null || isSame}
          run={(before) => kept(before, setDatum(before, laid))}
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

const centreChoices = (points: Job['points']): readonly Choice[] =>
  pairsOfPoints(points).pairs.map(({ left, right }) => ({
    value: [left.id, right.id].join(BETWEEN),
    label: `midway between ${shownName(left.name)} and ${shownName(right.name)}`,
  }));

/** What one would take: of the lowest points the three that span most, the two pairs farthest apart, the rearmost point. */
function firstDatum(points: Job['points']): Laid | null {
  const low = points.toSorted((a, b) => a.position[2] - b.position[2]).slice(0, LOWEST);
  const spans = low.flatMap((a, i) =>
    low
      .slice(i + 1)
      .flatMap((b, k) => low.slice(i + k + 2).map((c) => ({ trio: [a, b, c] as const, area: areaOf(a, b, c) }))),
  );
  const best = spans.reduce((most, one) => (one.area > most.area ? one : most), spans[0]!);
  const [a, b, c] = best.trio;
  const pairs = pairsOfPoints(points).pairs.toSorted((one, other) => one.left.position[0] - other.left.position[0]);
  const [rear, front] = [pairs[0], pairs.at(-1)];
  if (!rear || !front || rear === front) return null;
  return {
    level: [a.id, b.id, c.id],
    height: (a.position[2] + b.position[2] + c.position[2]) / 3,
    centre: [
      [rear.left.id, rear.right.id],
      [front.left.id, front.right.id],
    ],
    zero: rear.left.id,
    station: rear.left.position[0],
  };
}

/** Of these the level plane is chosen. */
const LOWEST = 6;

type Point = Job['points'][number];

/** Seen from above, twice the area. */
const areaOf = (a: Point, b: Point, c: Point): number =>
  Math.abs(
    (b.position[0] - a.position[0]) * (c.position[1] - a.position[1]) -
      (c.position[0] - a.position[0]) * (b.position[1] - a.position[1]),
  );
