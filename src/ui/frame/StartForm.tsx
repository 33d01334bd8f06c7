/**
 * What is asked for a cage that is being begun: tape figures with a sketch of where each is taken, measured points in their place, bars, tube.
 * The cage stands in the bay meanwhile, as the draft of a gesture: built it is one step, given up it never was.
 */
import { useEffect, useMemo, useState, type ReactNode } from 'react';
import {
  FIGURES,
  figuresAsked,
  spotsOf,
  type Asked,
  type Bars,
  type FigureName,
  type Spot,
} from '../../core/shape/starters/asked.ts';
import { lacksDoors, startCage } from '../../core/shape/starters/start-cage.ts';
import { startTroubles } from '../../core/shape/starters/trouble.ts';
import { withTube } from '../../core/shape/starters/with-tube.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { FIGURE_WORDS, LAYOUT_WORDS, SPOT_WORDS, START_TROUBLE_WORDS } from '../../core/words/starters.ts';
import { editor, jobDocument, useDocument } from '../../store/page.ts';
import { LengthField, SelectField } from '../fields/Fields.tsx';
import { Picks } from '../kit/Picks.tsx';
import { CarSketch } from './CarSketch.tsx';
import { sectionChoices } from './section-choices.ts';
import './start.css';

const LETTERS = 'ABCDEFGHJKLMNPQRSTU';

export default function StartForm({ asked }: { readonly asked: Asked }): ReactNode {
  const gesture = useDocument((state) => state.gesture);
  const derived = useDocument((state) => state.derived);
  const [pointed, point] = useState<FigureName | null>(null);
  const change = (fields: Partial<Asked>): void => editor.getState().start({ ...asked, ...fields });
  const name = LAYOUT_WORDS[asked.layout].name.toLowerCase();
  const start = gesture.state === 'idle' ? null : gesture.startJob;
  const troubles = useMemo(() => (start === null ? [] : startTroubles(start, asked)), [start, asked]);
  const figures = figuresAsked(asked);
  const letters = useMemo(() => new Map(figuresAsked(asked).map((figure, i) => [figure, LETTERS[i]!])), [asked]);
  const guessed = figures.filter((figure) => asked.figures[figure].guessed).length;

  // The gesture goes on while another station is looked at; whoever ends it, ends the form.
  useEffect(() => {
    const { gesture: under, begin } = jobDocument.getState();
    const label = `New ${name}`;
    if (under.state === 'idle' || under.label !== label) begin(label, () => editor.getState().start(null));
  }, [name]);
  const isOff = troubles.length > 0;
  useEffect(() => {
    if (isOff) return;
    jobDocument.getState().preview((job) => startCage(withTube(job).job, asked));
  }, [asked, isOff]);

  const errors = derived.findings.filter(({ severity }) => severity === 'error').length;
  const set = (figure: FigureName, value: number): readonly [] => {
    change({ figures: { ...asked.figures, [figure]: { value, guessed: false } } });
    return [];
  };
  return (
    <form
      className="station start"
      aria-label={`New ${name}`}
      onSubmit={(event) => {
        event.preventDefault();
      }}
    >
      <header className="card-head">
        <h2>New {name}</h2>
        <p className="small">{LAYOUT_WORDS[asked.layout].is}</p>
      </header>
      <CarSketch asked={asked} letters={letters} pointed={pointed} />
      <ul className="start-figures">
        {figures.map((figure) => (
          <li
            key={figure}
            className={asked.figures[figure].guessed ? 'start-guess' : undefined}
            onFocus={() => point(figure)}
            onBlur={() => point(null)}
          >
            <span className="start-letter" aria-hidden="true">
              {letters.get(figure)}
            </span>
            <LengthField
              size={FIGURES[figure].taken !== 'height'}
              label={FIGURE_WORDS[figure]}
              value={asked.figures[figure].value}
              commit={(value) => set(figure, value)}
            />
            {asked.figures[figure].guessed && (
              <button
                type="button"
                className="press press-quiet"
                aria-label={`${FIGURE_WORDS[figure]}: confirm the guess`}
                onClick={() => set(figure, asked.figures[figure].value)}
              >
                Confirm
              </button>
            )}
          </li>
        ))}
      </ul>
      <p className="small">
        {guessed === 0
          ? 'Every figure is yours.'
          : `${guessed} of ${figures.length} figures are guesses, in dashed boxes: type over one, or confirm it. What stays a guess is marked so in Survey.`}
      </p>
      <Measured asked={asked} points={start?.points ?? []} change={change} />
      <BarChoices asked={asked} change={change} />
      <TubeChoices asked={asked} job={derived.job} change={change} />
      {isOff && (
        <div className="refusals" role="alert">
          <p>
            <strong>The cage shown is the last that could be begun.</strong>
          </p>
          {troubles.map((trouble) => (
            <p key={trouble}>{START_TROUBLE_WORDS[trouble]}</p>
          ))}
        </div>
      )}
      {!isOff && lacksDoors(asked, derived.job) && (
        <p className="small">No door bars: between the feet and the dash there is no room for them.</p>
      )}
      <p className="small" role="status">
        {derived.tubes.length} tubes
        {errors === 0 ? '' : `, with ${errors} of the errors that Checks lists`}. All of it can be changed afterwards,
        as if you had drawn it. What the rule book allows, the rule book says.
      </p>
      <div className="row start-keys">
        <button
          type="button"
          className="press press-live"
          disabled={isOff || derived.job.members.length === 0}
          onClick={() => jobDocument.getState().commit()}
        >
          Build it
        </button>
        <button type="button" className="press" onClick={() => jobDocument.getState().cancel()}>
          Leave it
        </button>
      </div>
    </form>
  );
}

type Change = (fields: Partial<Asked>) => void;

/** Each place by its tape figures or by a point that is measured already. */
function Measured(props: { asked: Asked; points: Job['points']; change: Change }): ReactNode {
  const { asked, points, change } = props;
  if (points.length === 0) return null;
  const choices = [
    { value: '', label: 'by the tape figures' },
    ...points.map(({ id, name }) => ({ value: id, label: shownName(name) })),
  ];
  const choose = (spot: Spot, id: string): void => {
    const { [spot]: _, ...others } = asked.points;
    change({ points: id === '' ? others : { ...others, [spot]: id } });
  };
  return (
    <fieldset className="start-set">
      <legend>Measured already</legend>
      <div className="fields">
        {spotsOf(asked.layout).map((spot) => (
          <SelectField
            key={spot}
            label={SPOT_WORDS[spot]}
            value={asked.points[spot] ?? ''}
            choices={choices}
            onChoose={(id) => choose(spot, id)}
          />
        ))}
      </div>
    </fieldset>
  );
}

const YES_NO = [
  { value: true, label: 'yes' },
  { value: false, label: 'no' },
] as const;

/** Bars by choice. */
function BarChoices({ asked, change }: { asked: Asked; change: Change }): ReactNode {
  const { bars, layout, driver, feet } = asked;
  const set = (fields: Partial<Bars>): void => change({ bars: { ...bars, ...fields } });
  const yes = (
    legend: string,
    bar: 'diagonal' | 'harness' | 'towerBar' | 'sills' | 'dash' | 'pillarBraces',
  ): ReactNode => (
    <Picks legend={legend} value={bars[bar]} choices={YES_NO} onPick={(value) => set({ [bar]: value })} />
  );
  const hasFront = layout !== 'roll-bar';
  return (
    <fieldset className="start-set">
      <legend>Bars</legend>
      <Picks
        legend="Driver’s side"
        value={driver}
        choices={[
          { value: 'left', label: 'left' },
          { value: 'right', label: 'right' },
        ]}
        onPick={(value) => change({ driver: value })}
      />
      {yes('Main diagonal', 'diagonal')}
      {yes('Harness bar', 'harness')}
      <Picks
        legend="Between the stays"
        value={bars.rear}
        choices={[
          { value: 'none', label: 'nothing' },
          { value: 'one', label: 'a diagonal' },
          { value: 'cross', label: 'an X' },
        ]}
        onPick={(rear) => set({ rear })}
      />
      {yes('Tower bar', 'towerBar')}
      {hasFront && (
        <>
          <Picks
            legend="Doors"
            value={bars.doors}
            choices={[
              { value: 'none', label: 'nothing' },
              { value: 'one', label: 'one bar' },
              { value: 'two', label: 'two bars' },
              { value: 'cross', label: 'an X' },
            ]}
            onPick={(doors) => set({ doors })}
          />
          {yes('Sill bars', 'sills')}
          {yes('Dash bar', 'dash')}
          {yes('Pillar braces', 'pillarBraces')}
          <Picks
            legend="Roof"
            value={bars.roof}
            choices={[
              { value: 'none', label: 'nothing' },
              { value: 'one', label: 'a diagonal' },
              { value: 'cross', label: 'an X' },
              { value: 'vee', label: 'a V' },
            ]}
            onPick={(roof) => set({ roof })}
          />
        </>
      )}
      <Picks
        legend="On the floor"
        value={feet}
        choices={[
          { value: 'plates', label: 'plates' },
          { value: 'boxes', label: 'boxes' },
        ]}
        onPick={(value) => change({ feet: value })}
      />
    </fieldset>
  );
}

/** The tube and the die, where there is a choice; a die goes with its tube. */
function TubeChoices({ asked, job, change }: { asked: Asked; job: Job; change: Change }): ReactNode {
  const bendable = job.sections.filter(({ outerDiameter }) =>
    job.dies.some((die) => die.outerDiameter === outerDiameter),
  );
  const { outerDiameter } = job.sections.find(({ id }) => id === asked.main) ?? { outerDiameter: 0 };
  const fitting = job.dies.filter((die) => die.outerDiameter === outerDiameter);
  const dieFor = (main: string): string => {
    const size = job.sections.find(({ id }) => id === main)!.outerDiameter;
    return job.dies.find((die) => die.outerDiameter === size)!.id;
  };
  return (
    <fieldset className="start-set">
      <legend>Tube</legend>
      <div className="fields">
        <SelectField
          label="Hoops, legs and stays"
          value={asked.main}
          choices={sectionChoices({ sections: bendable, lengthUnit: job.lengthUnit })}
          onChoose={(main) => change({ main, die: dieFor(main) })}
        />
        <SelectField
          label="Bars between them"
          value={asked.light}
          choices={sectionChoices(job)}
          onChoose={(light) => change({ light })}
        />
        <SelectField
          label="Die"
          value={asked.die}
          choices={fitting.map(({ id, name }) => ({ value: id, label: shownName(name) }))}
          onChoose={(die) => change({ die })}
        />
      </div>
    </fieldset>
  );
}
