/** How a tube is turned before a bend: seen from behind, and in the words that paper has too. */
import type { ReactNode } from 'react';
import type { RotationReading } from '../../core/run/rotation-reading.ts';
import { onScale, turnSentence, turnSentences } from '../../core/words/turns.ts';
import { TURN_PICTURE, turnPicture } from '../../drawing/end-on/turn.ts';
import { useDocument } from '../../store/page.ts';
import { Drawn } from '../kit/Drawn.tsx';
import './turn.css';

/** Pixels a millimetre of the picture: in a table, and where it is what the page is about. */
const SCALE = { small: 4.4, large: 5.2 };

/** `figure`: what stands large beside the picture. */
export function TurnWords({ turn, figure }: { turn: RotationReading; figure?: ReactNode }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const [first, ...others] = turnSentences(turn, unit);
  // It comes off the last bend as the next one wants it: there is nothing to lay it by.
  if (turn.turn === 0 && turn.asItLies) {
    return (
      <>
        {figure}
        <p>
          <strong>{first}</strong>
        </p>
      </>
    );
  }
  return (
    <div className="turn-words">
      <Drawn
        marks={turnPicture(turn)}
        {...TURN_PICTURE}
        scale={figure === undefined ? SCALE.small : SCALE.large}
        label={`As seen from behind: ${turnSentence(turn)}`}
      />
      <div>
        {figure}
        <p>
          <strong>{first}</strong>
        </p>
      </div>
      {others.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </div>
  );
}

/** "21.4° ↺": how far, and the way round as seen from behind. */
export function TurnFigure({ turn }: { turn: RotationReading }): ReactNode {
  const sign = turn.sense === null ? '' : turn.sense === 'clockwise' ? ' ↻' : ' ↺';
  return (
    <>
      {onScale(turn.turn)}°
      {sign !== '' && (
        <>
          <span aria-hidden="true">{sign}</span>
          <span className="spoken-only"> {turn.sense}</span>
        </>
      )}
    </>
  );
}
