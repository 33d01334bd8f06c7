/**
 * What is asked for a cage that is being begun: tape figures with a sketch of where each is taken, measured points in their place, bars, tube.
 * The cage stands in the bay meanwhile, as the draft of a gesture: built it is one step, given up it never was.
 */
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import {
  bendable,
  figuresAsked,
  lightEnough,
  ofMain,
  type Asked,
  type Bars,
  type FigureName,
} from '../../core/shape/starters/asked.ts';
import { spotsOf, type Spot } from '../../core/survey/spots.ts';
import { dieTrouble } from '../../core/shape/starters/die-room.ts';
import { lacksBraces, lacksDoors } from '../../core/shape/starters/start-cage.ts';
import { withTube } from '../../core/shape/starters/with-tube.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import {
  dieTroubleInWords,
  FIGURE_WORDS,
  LAYOUT_WORDS,
  LEFT_OUT,
  SPOT_WORDS,
  START_TROUBLE_WORDS,
} from '../../core/words/starters.ts';
import type { Starting } from '../../store/types.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { LengthField, SelectField } from '../fields/Fields.tsx';
import { Picks } from '../kit/Picks.tsx';
import { useOnward } from '../kit/useOnward.ts';
import { askCage, startName } from './ask-cage.ts';
import { CarSketch } from './CarSketch.tsx';
import { sectionChoices } from './section-choices.ts';
import './start.css';

const LETTERS = 'ABCDEFGHJKLMNPQRSTU';

export default function StartForm({ asked, troubles }: Starting): ReactNode {
  const gesture = useDocument((state) => state.gesture);
  const derived = useDocument((state) => state.derived);
  const [pointed, point] = useState<FigureName | null>(null);
  const change = (fields: Partial<Asked>): void => askCage({ ...asked, ...fields });
  const name = startName(asked);
  const onward = useOnward();
  const form = useRef<HTMLFormElement>(null);
  // It begins at its own top, and leaves the lists at theirs.
  useEffect(() => {
    const panel = form.current?.closest('.panel');
    panel?.scrollTo(0, 0);
    return () => panel?.scrollTo(0, 0);
  }, []);
  const start = gesture.state === 'idle' ? derived.job : gesture.startJob;
  const withTubes = useMemo(() => withTube(start).job, [start]);
  const figures = figuresAsked(asked);
  const letters = useMemo(() => new Map(figuresAsked(asked).map((figure, i) => [figure, LETTERS[i]!])), [asked]);

  const isOff = troubles.length > 0;
  const die = isOff ? null : dieTrouble(derived.tubes);
  const errors = derived.findings.filter(({ severity }) => severity === 'error').length;
  const set = (figure: FigureName, value: number): readonly [] => {
    change({ figures: { ...asked.figures, [figure]: { value, guessed: false } } });
    return [];
  };
  return (
    <form
      ref={form}
      className="station start"
      aria-label={name}
      onSubmit={(event) => {
        event.preventDefault();
      }}
    >
      <header className="card-head">
        <h2>{name}</h2>
        <p className="small">{LAYOUT_WORDS[asked.layout].is}</p>
      </header>
      <div className="start-measures">
        <CarSketch asked={asked} letters={letters} pointed={pointed} />
        <ul className="start-figures" {...onward}>
          {figures.map((figure) => (
            <li
              key={figure}
              className={asked.figures[figure].guessed ? 'start-guess' : undefined}
              onFocus={({ target }) => {
                point(figure);
                // Pressed near the upper edge it would lie under the view that stays in sight.
                target.scrollIntoView({ block: 'nearest' });
              }}
              onBlur={() => point(null)}
            >
              <span className="start-letter" aria-hidden="true">
                {letters.get(figure)}
              </span>
              <LengthField
                // A front foot may stand lower than the hoop's.
                size={figure !== 'frontFootHeight'}
                unsaid={asked.figures[figure].guessed}
                label={FIGURE_WORDS[figure]}
                value={asked.figures[figure].value}
                commit={(value) => set(figure, value)}
              />
              {asked.figures[figure].guessed && (
                <button
                  type="button"
                  className="press press-quiet"
                  // Tab leads from figure to figure; in the field Enter confirms.
                  tabIndex={-1}
                  aria-label={`${FIGURE_WORDS[figure]}: confirm the guess`}
                  onClick={() => set(figure, asked.figures[figure].value)}
                >
                  Confirm
                </button>
              )}
            </li>
          ))}
        </ul>
      </div>
      <p className="small">
        {guessesInWords(
          figures.filter((name) => asked.figures[name].guessed),
          figures.length,
        )}
      </p>
      {asked.layout !== 'roll-bar' && (
        <p className="small">
          The gap is kept to belt line, roof rail and windscreen. The front feet may come to stand farther in than
          typed, so that the bends come to whole degrees.
        </p>
      )}
      <Measured asked={asked} points={start.points} change={change} />
      <BarChoices asked={asked} change={change} />
      <TubeChoices asked={asked} job={withTubes} change={change} />
      {!isOff && lacksDoors(asked, derived.job) && <p className="small">{LEFT_OUT.doors}</p>}
      {!isOff && lacksBraces(asked, derived.job) && <p className="small">{LEFT_OUT.braces}</p>}
      <p className="small" role="status">
        {derived.tubes.length} tubes
        {errors === 0 ? '' : `; Checks lists ${errors === 1 ? 'one error' : `${errors} errors`} in them`}. All of it can
        be changed afterwards, as if you had drawn it. What the rule book allows, the rule book says.
      </p>
      <div className="start-foot">
        {isOff && (
          <div className="refusals" role="alert">
            {derived.job.members.length > 0 && (
              <p>
                <strong>The cage shown is the last that could be begun.</strong>
              </p>
            )}
            {troubles.map((trouble) => (
              <p key={trouble}>{START_TROUBLE_WORDS[trouble]}</p>
            ))}
          </div>
        )}
        {die !== null && (
          <div className="refusals" role="alert">
            <p>{dieTroubleInWords(die, start.lengthUnit)}</p>
          </div>
        )}
        <div className="row">
          <button
            type="button"
            className="press press-live"
            disabled={isOff || die !== null || derived.job.members.length === 0}
            onClick={() => jobDocument.getState().commit()}
          >
            Build it
          </button>
          <button type="button" className="press" onClick={() => jobDocument.getState().cancel()}>
            Leave it
          </button>
        </div>
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
      {asked.points['floor-b'] === undefined && Object.keys(asked.points).length > 0 && (
        <p className="small">
          The floor at the hoop is not measured: it is taken at the datum, height 0, and heights over the floor count
          from there.
        </p>
      )}
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
  const main = job.sections.find(({ id }) => id === asked.main)!;
  const fitting = job.dies.filter((die) => die.outerDiameter === main.outerDiameter);
  return (
    <fieldset className="start-set">
      <legend>Tube</legend>
      <div className="fields">
        <SelectField
          label="Hoops, legs and stays"
          value={asked.main}
          choices={sectionChoices({ ...job, sections: bendable(job) })}
          onChoose={(id) =>
            change(
              ofMain(
                job,
                job.sections.find((section) => section.id === id)!,
                asked.light,
              ),
            )
          }
        />
        <SelectField
          label="Bars between them"
          value={asked.light}
          choices={sectionChoices({ ...job, sections: lightEnough(job, main) })}
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

/** How many figures are guesses, and where they are seen again. */
function guessesInWords(guessed: readonly FigureName[], asked: number): string {
  if (guessed.length === 0) return 'Every figure is yours.';
  const count = `${guessed.length} of ${asked} figures are guesses, in dashed boxes: type over one, or confirm it (Enter).`;
  return `${count} What goes by one that stays a guess is marked so in Survey.`;
}
