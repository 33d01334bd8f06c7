/** Joints with what feeds each and what would cure it, the worst first; once a cure is taken they keep their places, and say what it gave. */
import { useRef, useState, type ReactNode } from 'react';
import { leaveLong, setCutOnCar } from '../../core/edit/members.ts';
import type { Cure, JointForecast } from '../../core/forecast/types.ts';
import {
  byHandInWords,
  cureInWords,
  curesInOrder,
  doneInWords,
  feedsInWords,
  jointInWords,
  onCarInWords,
  shareInWords,
  takenInWords,
} from '../../core/words/forecast.ts';
import { gapingOf, gapInWords } from '../../core/words/gaping.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';

/** Joints that are shown at once; the rest fit better than these. */
const FIRST_SHOWN = 8;

/** A cure that was taken at a joint, in words, and how far that gaped before. */
interface Taken {
  readonly done: string;
  readonly was: number;
}

/** In the name of a step that changes a tube and its mirror image. */
const BOTH = ', both sides';

const keyOf = ({ tube, end }: JointForecast): string => `${tube} ${end}`;

export function ForecastJoints({
  joints,
  isWorking,
}: {
  joints: readonly JointForecast[];
  isWorking: boolean;
}): ReactNode {
  const [taken, note] = useState<ReadonlyMap<string, Taken>>(new Map());
  /** As they stood when the first cure was taken. */
  const [places, hold] = useState<readonly string[] | null>(null);
  if (joints.length === 0) return <p className="empty">No end is welded to anything yet.</p>;
  const placeOf = (joint: JointForecast): number => {
    const place = places?.indexOf(keyOf(joint)) ?? -1;
    return place === -1 ? joints.length : place;
  };
  const ordered = places === null ? joints : joints.toSorted((a, b) => placeOf(a) - placeOf(b));
  const take = (joint: JointForecast, done: string): void => {
    hold((before) => before ?? joints.map(keyOf));
    note((before) => new Map([...before, [keyOf(joint), { done, was: before.get(keyOf(joint))?.was ?? joint.gap }]]));
  };
  const list = (of: readonly JointForecast[]): ReactNode => (
    <ol className="findings" aria-busy={isWorking}>
      {of.map((joint) => (
        <Row
          key={keyOf(joint)}
          joint={joint}
          taken={taken.get(keyOf(joint)) ?? null}
          isWorking={isWorking}
          onTake={(done) => take(joint, done)}
        />
      ))}
    </ol>
  );
  const rest = ordered.slice(FIRST_SHOWN);
  return (
    <>
      {places !== null && !isWorking && (
        <p className="small">
          The joints stand where they stood before.{' '}
          <button
            type="button"
            className="press press-quiet"
            onClick={() => {
              hold(null);
              note(new Map());
            }}
          >
            The worst first again
          </button>
        </p>
      )}
      {list(ordered.slice(0, FIRST_SHOWN))}
      {rest.length > 0 && (
        <Section title="Joints that fit better" count={rest.length} onlyOpen>
          {list(rest)}
        </Section>
      )}
    </>
  );
}

interface RowProps {
  readonly joint: JointForecast;
  readonly taken: Taken | null;
  readonly isWorking: boolean;
  readonly onTake: (done: string) => void;
}

function Row({ joint, taken, isWorking, onTake }: RowProps): ReactNode {
  const card = useRef<HTMLLIElement>(null);
  const derived = useDocument((state) => state.derived);
  const unit = useDocument((state) => state.job.lengthUnit);
  const chosen = useEditor(({ selection }) => selection?.kind === 'tube' && selection.id === joint.tube);
  const { member } = derived.byId.get(joint.tube)!;
  const feeds = feedsInWords(derived, joint);
  const onCar = onCarInWords(member.mirror);
  const { cures, alike } = curesInOrder(joint.cures, unit);
  return (
    <li ref={card} tabIndex={-1} className={`forecast-joint forecast-${gapingOf(joint.gap)}${chosen ? ' chosen' : ''}`}>
      <button
        type="button"
        className="link"
        onClick={() => editor.getState().goTo(joint.at, { kind: 'tube', id: joint.tube })}
      >
        {jointInWords(derived, joint)}
      </button>
      <span>
        <strong className="forecast-gap">{gapInWords(joint.gap, unit)}</strong>{' '}
        <span className="small">{shareInWords(joint.gap)}</span>
      </span>
      {taken !== null && (
        <span role="status">{takenInWords(taken.done, taken.was, isWorking ? null : joint.gap, unit)}</span>
      )}
      {feeds !== null && <span className="small">{feeds}</span>}
      {joint.onCar && (
        <span className="small">
          {onCar.is}{' '}
          <Command
            quiet
            step={`Cut ${member.name}${member.mirror ? BOTH : ''} by the drawing`}
            run={(job) => setCutOnCar(job, member.id, false)}
          >
            {onCar.back}
          </Command>
        </span>
      )}
      {cures.length > 0 && (
        <ul className="forecast-cures">
          {cures.map((cure) => {
            const byHand = byHandInWords(derived, cure);
            return (
              <li key={cure.kind}>
                <span>
                  {cureInWords(derived, joint, cure, unit)}
                  {byHand !== null && ` ${byHand}`}
                </span>
                {byHand === null && !isWorking && (
                  <DoIt
                    joint={joint}
                    cure={cure}
                    onDone={() => {
                      onTake(doneInWords(derived, joint.tube, joint.end, cure, unit));
                      // The key goes with what it did.
                      card.current?.focus();
                    }}
                  />
                )}
              </li>
            );
          })}
        </ul>
      )}
      {alike !== null && <span className="small">{alike}</span>}
    </li>
  );
}

/** A key for the cures that are an edit of the job. */
function DoIt({ joint, cure, onDone }: { joint: JointForecast; cure: Cure; onDone: () => void }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { member } = derived.byId.get(joint.tube)!;
  const label = `${jointInWords(derived, joint)}: `;
  const both = member.mirror ? BOTH : '';
  if (cure.kind === 'long' && joint.node !== null) {
    const which = joint.end === 'A' ? 0 : 1;
    return (
      <Command
        quiet
        step={`Leave end ${joint.end} of ${member.name}${both} long`}
        label={`${label}leave it long`}
        run={(job) => leaveLong(job, member.id, which, cure.by)}
        onDone={onDone}
      >
        Leave it long
      </Command>
    );
  }
  if (cure.kind !== 'on-car') return null;
  return (
    <Command
      quiet
      step={`Cut ${member.name}${both} on the car`}
      label={`${label}cut it on the car`}
      run={(job) => setCutOnCar(job, member.id, true)}
      onDone={onDone}
    >
      {member.mirror ? 'Cut both on the car' : 'Cut it on the car'}
    </Command>
  );
}
