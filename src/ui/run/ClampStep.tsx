/** Where the tube is clamped for a bend, which end is in front, and how it is turned before. */
import { useId, type ReactNode } from 'react';
import type { RotationReading } from '../../core/shop/rotation-reading.ts';
import type { RunStep } from '../../core/shop/run.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useWorkspace } from '../../store/workspace.ts';
import { Leans, MarkPlace, type TapeChoice } from '../shop/TapeParts.tsx';
import { MARK_MEETS, markMovedInWords, plain, readerInWords, turnInWords, zeroInWords } from './run-words.ts';
import { Tick } from './Tick.tsx';

type Clamp = Extract<RunStep, { kind: 'clamp' }>;

export function ClampStep(props: {
  tube: SolvedTube;
  step: Clamp;
  tape: TapeChoice;
  /** How far its marks moved along the tube since they were drawn, mm; 0 where they did not. */
  moved: number;
  onTicked: () => void;
}): ReactNode {
  const { step, tape, moved } = props;
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const { front } = step.step;
  return (
    <>
      {step.flip && (
        <p className="run-flip">
          <span aria-hidden="true">⇄ </span>Turn the tube end for end
        </p>
      )}
      <p>
        End <strong>{front}</strong> in front, through the clamp; end {front === 'A' ? 'B' : 'A'} stays behind.
      </p>
      {step.step.marks.map((mark) => (
        <div key={mark.kind} className="run-at">
          <MarkPlace mark={mark} step={step.step} view={tape.view} withUnit />
          <p className="small">{MARK_MEETS[mark.kind]}</p>
        </div>
      ))}
      <Leans steps={[step.step]} view={tape.view} />
      {moved !== 0 && !step.done && (
        <p className="notice-warning" role="status">
          <span aria-hidden="true">▲ </span>
          {markMovedInWords(moved, unit)}
        </p>
      )}
      {step.rotation === null ? <p>First bend: the tube may lie any way round.</p> : <Turn rotation={step.rotation} />}
      <Tick tube={props.tube.id} step={step} onTicked={props.onTicked}>
        {step.rotation === null || step.rotation.turn === 0 ? 'It is clamped' : 'Clamped and turned'}
      </Tick>
    </>
  );
}

function Turn({ rotation }: { rotation: RotationReading }): ReactNode {
  const sign = rotation.sense === null ? '' : rotation.sense === 'clockwise' ? ' ↻' : ' ↺';
  return (
    <section className="run-turn" aria-label="Rotation">
      <Dial rotation={rotation} />
      <div>
        <p className="run-figure run-figure-second">
          {plain(rotation.turn)}°<span aria-hidden="true">{sign}</span>
        </p>
        <p>{turnInWords(rotation)}</p>
      </div>
      <p>
        {zeroInWords(rotation)} {readerInWords(rotation)}
      </p>
    </section>
  );
}

const SIZE = 132;
const RADIUS = 44;
const LEG = 60;

/** The tube's end as seen from behind, looking along the feed at the machine: the earlier leg at zero, and turned. */
function Dial({ rotation }: { rotation: RotationReading }): ReactNode {
  const tip = useId();
  const { turn, sense, legTo } = rotation;
  const side = legTo === 'left' ? 180 : 0;
  const turned = side + turn * (sense === 'anticlockwise' ? -1 : 1);
  const at = (degrees: number, out: number): string => {
    const angle = (degrees * Math.PI) / 180;
    return `${(out * Math.cos(angle)).toFixed(2)} ${(out * Math.sin(angle)).toFixed(2)}`;
  };
  return (
    <svg
      className="run-dial"
      width={SIZE}
      height={SIZE}
      viewBox={`${-SIZE / 2} ${-SIZE / 2} ${SIZE} ${SIZE}`}
      role="img"
      aria-label={`Looking along the feed at the machine: the leg of bend ${rotation.zeroOn} from level on the ${legTo}, ${turn === 0 ? 'not turned' : `turned ${plain(turn)} degrees${sense === null ? '' : ` ${sense}`}`}`}
    >
      <defs>
        <marker
          id={tip}
          viewBox="0 0 8 8"
          refX="6"
          refY="4"
          markerUnits="userSpaceOnUse"
          markerWidth="13"
          markerHeight="13"
          orient="auto"
        >
          <path d="M 0 0 L 8 4 L 0 8 Z" className="dial-tip" />
        </marker>
      </defs>
      <circle r={RADIUS} className="dial-face" />
      {Array.from({ length: 24 }, (_, i) => (
        <path
          key={i}
          className="dial-tick"
          d={`M ${at(i * 15, RADIUS)} L ${at(i * 15, i % 6 === 0 ? RADIUS - 9 : RADIUS - 5)}`}
        />
      ))}
      <path className="dial-zero" d={`M 0 0 L ${at(side, LEG)}`} />
      {turn > 0 && (
        <path
          className="dial-turn"
          markerEnd={`url(#${tip})`}
          d={`M ${at(side, RADIUS - 14)} A ${RADIUS - 14} ${RADIUS - 14} 0 0 ${sense === 'anticlockwise' ? 0 : 1} ${at(turned, RADIUS - 14)}`}
        />
      )}
      <path className="dial-leg" d={`M 0 0 L ${at(turned, LEG)}`} />
      <circle r="9" className="dial-tube" />
    </svg>
  );
}
