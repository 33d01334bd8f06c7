/** One end unrolled flat, with what the drawing says in words for whoever cannot see it. */
import { useMemo, type ReactNode } from 'react';
import type { SolvedTube } from '../../core/solve/types.ts';
import { referenceInWords } from '../../core/words/ends.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { unrolledEnd } from '../../drawing/unrolled-end.ts';
import { Drawn } from '../kit/Drawn.tsx';
import { screenLetters } from '../kit/letters.ts';
import { scaleOn } from '../kit/scale.ts';

interface EndDrawingProps {
  readonly tube: SolvedTube;
  readonly which: 0 | 1;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  readonly unit: LengthUnit;
}

export function EndDrawing({ tube, which, width, height, unit }: EndDrawingProps): ReactNode {
  const { throat, tip } = tube.ends[which];
  const levels = [
    ...(throat === null ? [] : [`throat ${formatLength(throat, unit).text} ${unit}`]),
    ...(tip === null ? [] : [`tip ${formatLength(tip, unit).text} ${unit}`]),
  ];
  const scale = scaleOn(width);
  const picture = useMemo(
    () => unrolledEnd(screenLetters, tube, which, unit, { width: width / scale, height: height / scale }),
    [tube, which, unit, width, height, scale],
  );
  const name = which === 0 ? 'A' : 'B';
  const said = levels.length === 0 ? 'nothing reaches it' : `${levels.join(', ')} from the node`;
  return (
    <Drawn
      {...picture}
      scale={scale}
      label={`End ${name} unrolled: ${said}; 0° is the ${referenceInWords(tube, which)}`}
    />
  );
}
