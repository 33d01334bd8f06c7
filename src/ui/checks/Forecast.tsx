/** How the joints will fit: the worst first, with what feeds each and what would cure it. Worked out beside the page while it is open. */
import { useEffect, type ReactNode } from 'react';
import { setAccuracy } from '../../core/edit/accuracy.ts';
import { setCutOnCar, leaveLong } from '../../core/edit/members.ts';
import type { Cure, JointForecast } from '../../core/forecast/types.ts';
import { FIRST_ACCURACY, GREATEST_DEVIATION, type Accuracy } from '../../core/job/kinds/accuracy.ts';
import { FIRST_SCATTER, GREATEST_SCATTER } from '../../core/job/kinds/scatter.ts';
import {
  cureInWords,
  feedsInWords,
  FORECAST_LEAVES_OUT,
  FORECAST_MEANS,
  jointInWords,
} from '../../core/words/forecast.ts';
import { gapingOf, gapInWords } from '../../core/words/gaping.ts';
import { editor, results, useDocument, useEditor, useResults, useShop } from '../../store/page.ts';
import { DeviationField, NumberField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';

/** Joints that are shown at once; the rest fit better than these. */
const FIRST_SHOWN = 8;

export function Forecast(): ReactNode {
  useEffect(() => results.lookAtForecast(), []);
  const forecast = useResults((state) => state.forecast);
  const why = useResults((state) => state.unforecast);
  const hasTubes = useDocument((state) => state.derived.tubes.length > 0);
  if (!hasTubes) return <p className="empty">No tubes yet.</p>;
  return (
    <>
      <p className="small">{FORECAST_MEANS}</p>
      <Deviations />
      {why !== null && (
        <p className="word-error" role="alert">
          × It could not be worked out: {why}
        </p>
      )}
      {forecast === null && why === null && <Working />}
      {forecast !== null && <Joints joints={forecast.joints} />}
      <p className="small">{FORECAST_LEAVES_OUT}</p>
    </>
  );
}

/** It comes after what the other checks want of the bender, and stops where nobody looks at it. */
function Working(): ReactNode {
  const before = useResults(({ progress }) => Math.max(0, progress.of - progress.done - 1));
  return (
    <p role="status">
      Working out how the joints will fit
      {before > 0 && `, after the rehearsal of ${before === 1 ? '1 tube' : `${before} tubes`} at the bender`}… Fold this
      away to stop.
    </p>
  );
}

function Joints({ joints }: { joints: readonly JointForecast[] }): ReactNode {
  if (joints.length === 0) return <p className="empty">No end is welded to anything yet.</p>;
  const rest = joints.slice(FIRST_SHOWN);
  return (
    <>
      <JointList joints={joints.slice(0, FIRST_SHOWN)} />
      {rest.length > 0 && (
        <Section title="Joints that fit better" count={rest.length} onlyOpen>
          <JointList joints={rest} />
        </Section>
      )}
    </>
  );
}

const JointList = ({ joints }: { joints: readonly JointForecast[] }): ReactNode => (
  <ol className="findings">
    {joints.map((joint) => (
      <Row key={`${joint.tube} ${joint.end}`} joint={joint} />
    ))}
  </ol>
);

function Row({ joint }: { joint: JointForecast }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const unit = useDocument((state) => state.job.lengthUnit);
  const chosen = useEditor(({ selection }) => selection?.kind === 'tube' && selection.id === joint.tube);
  const { member } = derived.byId.get(joint.tube)!;
  const feeds = feedsInWords(derived, joint);
  return (
    <li className={`forecast-joint forecast-${gapingOf(joint.gap)}${chosen ? ' chosen' : ''}`}>
      <button
        type="button"
        className="link"
        onClick={() => editor.getState().goTo(joint.at, { kind: 'tube', id: joint.tube })}
      >
        {jointInWords(derived, joint)}
      </button>
      <strong className="forecast-gap">{gapInWords(joint.gap, unit)}</strong>
      {feeds !== null && <span className="small">{feeds}</span>}
      {joint.onCar && (
        <span className="small">
          Cut on the car.{' '}
          <Command quiet step={`Cut ${member.name} by the drawing`} run={(job) => setCutOnCar(job, member.id, false)}>
            Cut it by the drawing
          </Command>
        </span>
      )}
      {joint.cures.length > 0 && (
        <ul className="forecast-cures">
          {joint.cures.map((cure) => (
            <li key={cure.kind}>
              <span>{cureInWords(derived, joint, cure, unit)}</span>
              <DoIt joint={joint} cure={cure} />
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}

/** A key for the cures that are an edit of the job. */
function DoIt({ joint, cure }: { joint: JointForecast; cure: Cure }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { member } = derived.byId.get(joint.tube)!;
  const label = `${jointInWords(derived, joint)}: `;
  if (cure.kind === 'long' && joint.node !== null) {
    const which = joint.end === 'A' ? 0 : 1;
    return (
      <Command
        quiet
        step={`Leave end ${joint.end} of ${member.name} long`}
        label={`${label}leave it long`}
        run={(job) => leaveLong(job, member.id, which, cure.by)}
      >
        Leave it long
      </Command>
    );
  }
  if (cure.kind !== 'on-car' || cure.first.length > 0) return null;
  return (
    <Command
      quiet
      step={`Cut ${member.name} on the car`}
      label={`${label}cut it on the car`}
      run={(job) => setCutOnCar(job, member.id, true)}
    >
      Cut it on the car
    </Command>
  );
}

/** What it is reckoned with. */
function Deviations(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const accuracy = useDocument((state) => state.job.accuracy ?? FIRST_ACCURACY);
  const shop = useShop((state) => state.shop.scatter ?? FIRST_SCATTER);
  const field = (key: keyof Accuracy) => ({
    value: accuracy[key],
    commit: jobEdit<number>('How far things are off', (job, value) => setAccuracy(job, { [key]: value })).commit,
  });
  const isShops = (['angle', 'rotation', 'mark'] as const).every((key) => accuracy[key] === shop[key]);
  return (
    <>
      <fieldset className="trio">
        <legend>How far things come out off, one standard deviation</legend>
        <DeviationField label={`Point, ${unit}`} greatest={GREATEST_DEVIATION} {...field('point')} />
        <DeviationField label={`Cut end, ${unit}`} greatest={GREATEST_DEVIATION} {...field('cut')} />
        <NumberField label="Bend, °" {...OF_ANGLES} {...field('angle')} />
        <NumberField label="Rotation, °" {...OF_ANGLES} {...field('rotation')} />
        <DeviationField label={`Mark, ${unit}`} greatest={GREATEST_SCATTER} {...field('mark')} />
      </fieldset>
      <p className="small">Where the log has three pulls or more, the angle of a bend is off as these scatter.</p>
      {!isShops && (
        <Command quiet step="Take the scatter of the shop" run={(job) => setAccuracy(job, shop)}>
          Take bends, rotations and marks from the shop record
        </Command>
      )}
    </>
  );
}

const OF_ANGLES = { least: 0, greatest: GREATEST_SCATTER, step: 0.1 };
