/** Paper, and what the printer makes of a length: typed off the printed bars, kept on this machine. */
import type { ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { printedBy, TEST_BARS } from '../../exports/shared/paper.ts';
import type { Setting } from '../../exports/products/formats.ts';
import { useDocument } from '../../store/page.ts';
import { WallField } from '../fields/Fields.tsx';
import { useKept } from '../kit/kept.ts';
import { Picks } from '../kit/Picks.tsx';
import type { PrintChoice } from '../kit/print.ts';
import { correctionInWords } from './take-away.ts';

type Surface = Setting['surface'];

export const useSurface = (): readonly [Surface, (next: Surface) => void] =>
  useKept<Surface>('wrap-surface', (kept) => (kept === 'square-wall' ? kept : 'outer'));

const PAPERS = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
] as const;

const SURFACES = [
  { value: 'outer', label: 'Outer surface' },
  { value: 'square-wall', label: 'Square through the wall' },
] as const;

export function PrintPart(props: {
  print: PrintChoice;
  onPrint: (next: PrintChoice) => void;
  surface: Surface;
  onSurface: (next: Surface) => void;
}): ReactNode {
  const { print, onPrint } = props;
  const inches = useDocument((state) => state.job.lengthUnit === 'in');
  const { length: bar, name } = TEST_BARS[inches ? 1 : 0];
  const correction = correctionInWords(print);
  const measured =
    (which: 'across' | 'up') =>
    (value: number): readonly Fault[] => {
      const hundred = (value * 100) / bar;
      if (printedBy(hundred) === null)
        return [{ place: which, message: 'too far off for a printer: measure the bar again' }];
      onPrint({ ...print, [which]: hundred });
      return [];
    };
  return (
    <div className="fields">
      <Picks legend="Paper" value={print.paper} choices={PAPERS} onPick={(paper) => onPrint({ ...print, paper })} />
      <Picks legend="Templates follow" value={props.surface} choices={SURFACES} onPick={props.onSurface} />
      <p className="small">
        Print at 100 %, not “fit to page”. If the bars on the sheet do not measure true, say what they measure on a
        print without correction.
      </p>
      {/* In decimals, as walls are: a sixteenth would be 1.5 % of the bar. */}
      <div className="fields fields-two">
        <WallField label={`${name} bar, across`} value={(print.across * bar) / 100} commit={measured('across')} />
        <WallField label={`${name} bar, up`} value={(print.up * bar) / 100} commit={measured('up')} />
      </div>
      {correction !== null && (
        <p className="row take-correction" role="status">
          <strong>{correction}</strong>
          <button
            type="button"
            className="press press-quiet press-small"
            onClick={() => onPrint({ ...print, across: 100, up: 100 })}
          >
            Drop the correction
          </button>
        </p>
      )}
    </div>
  );
}
