/** The stations, as the steps of the job: where one stands, and what the checks and the rule book found, in sign and number. */
import type { ReactNode } from 'react';
import { editor, useEditor } from '../store/page.ts';
import { useOpenCount } from '../ui/kit/useOpenCount.ts';
import { amissInWords, useNotMet } from './not-met.ts';
import { STATIONS } from './commands.ts';
import './stations.css';

export function Stations(): ReactNode {
  const current = useEditor((state) => state.station);
  return (
    <nav className="stations" aria-label="Stations">
      <ol>
        {STATIONS.map(({ station, name }, index) => (
          <li key={station}>
            <button
              type="button"
              aria-current={station === current ? 'step' : undefined}
              onClick={() => editor.getState().setStation(station)}
            >
              <span className="station-number" aria-hidden="true">
                {index + 1}
              </span>
              <span className="station-name">{name}</span>
              {station === 'checks' && <Tally />}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Tally(): ReactNode {
  const count = useOpenCount();
  const errors = count('error').things;
  const warnings = count('warning').things;
  const notMet = useNotMet();
  return (
    <span className="tally">
      {errors + notMet > 0 && (
        <Count className="tally-error" sign="×" number={errors + notMet} words={amissInWords(errors, notMet)} />
      )}
      {warnings > 0 && (
        <Count
          className="tally-warning"
          sign="!"
          number={warnings}
          words={`${warnings} ${warnings === 1 ? 'warning' : 'warnings'}`}
        />
      )}
    </span>
  );
}

interface CountProps {
  readonly className: string;
  readonly sign: string;
  readonly number: number;
  readonly words: string;
}

function Count({ className, sign, number, words }: CountProps): ReactNode {
  return (
    <span className={className}>
      <span aria-hidden="true">
        {sign}
        {number}
      </span>
      <span className="spoken-only">{words}</span>
    </span>
  );
}
