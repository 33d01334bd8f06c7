/** The bench under the bay: the selected tube's blank with its marks, and both its ends unrolled. */
import type { ReactNode } from 'react';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument, useEditor, useResults } from '../../store/page.ts';
import { endInWords, referenceInWords } from '../../core/words/ends.ts';
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import { useToBeBent } from '../bending/useToBeBent.ts';
import { BlankDrawing } from './BlankDrawing.tsx';
import { EndDrawing } from './EndDrawing.tsx';
import { useSpace } from '../kit/useSpace.ts';
import '../kit/ui.css';
import './shop.css';

/** From this width on, pixels, the two ends stand side by side and share the height that the blank leaves. */
const SIDE_BY_SIDE = 580;
/** How high, pixels, an end is drawn where the ends stand one under the other. */
const STACKED_HEIGHT = 190;

export default function ShopBench(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const selection = useEditor((state) => state.selection);
  const { frame, width } = useSpace();
  const tube = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;
  const errors = tube === undefined ? [] : errorsOf(findings, tube.id);
  const sideBySide = width > SIDE_BY_SIDE;
  return (
    <div className="shop-bench">
      <div className="shop-space" ref={frame}>
        {tube === undefined ? (
          <p className="empty">Choose a tube, in the list or in the bay, and its blank lies here.</p>
        ) : (
          width > 0 && (
            <>
              <Blank tube={tube} width={width} fault={errors.length === 0 ? null : faultInWords(errors)} />
              <div className={sideBySide ? 'shop-profiles shop-profiles-two' : 'shop-profiles'}>
                <Profile tube={tube} which={0} stacked={!sideBySide} />
                <Profile tube={tube} which={1} stacked={!sideBySide} />
              </div>
            </>
          )
        )}
      </div>
    </div>
  );
}

const Blank = (props: { tube: SolvedTube; width: number; fault: string | null }): ReactNode => (
  <BlankDrawing {...props} tube={useToBeBent(props.tube)} />
);

function Profile({ tube, which, stacked }: { tube: SolvedTube; which: 0 | 1; stacked: boolean }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { frame, width, height } = useSpace();
  const high = stacked ? STACKED_HEIGHT : height;
  return (
    <figure>
      <figcaption>
        <strong>{`End ${which === 0 ? 'A' : 'B'}`}</strong> {endInWords(derived, tube.ends[which])}
        <span className="small"> · 0° is the {referenceInWords(tube, which)}; lengths from the node, − beyond it</span>
      </figcaption>
      <div className="profile-space" ref={frame}>
        {width > 0 && high > 0 && (
          <EndDrawing tube={tube} which={which} width={width} height={high} unit={derived.job.lengthUnit} />
        )}
      </div>
    </figure>
  );
}
