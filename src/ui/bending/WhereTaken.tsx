/** The tube as it was bent, drawn as it lies to be checked, with the letters that its check dimensions have in the list. */
import { useMemo, type ReactNode } from 'react';
import type { SawnTube } from '../../core/run/sawn-tube.ts';
import { bentViews, type Lettered } from '../../drawing/bent/bent-views.ts';
import { checkInWords } from '../../core/words/run.ts';
import { Drawn } from '../kit/Drawn.tsx';
import { screenLetters } from '../kit/letters.ts';
import { useNarrow } from '../kit/useNarrow.ts';

/** Pixels a millimetre, and what of a telephone's width and of a tablet's height it takes, mm. */
const SCALE = 4;
const ROOM = { telephone: { width: 88, height: 66 }, tablet: { width: 120, height: 48 } };

/** Folded on a telephone, where the figures would go out of sight under it. */
export function WhereTaken({ form, lettered }: { form: SawnTube; lettered: readonly Lettered[] }): ReactNode {
  const narrow = useNarrow();
  const room = narrow ? ROOM.telephone : ROOM.tablet;
  const picture = useMemo(() => bentViews(screenLetters, form, room), [form, room]);
  const shown = lettered.flatMap(({ check, letter }) => (letter === null ? [] : [`${letter}, ${checkInWords(check)}`]));
  return (
    <details className="fold-more" open={!narrow}>
      <summary>Where the tape is laid</summary>
      <Drawn {...picture} scale={SCALE} label={`The bent tube, its dimensions lettered: ${shown.join('; ')}`} />
    </details>
  );
}
