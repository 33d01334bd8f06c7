/** The bench under the bay: the selected tube as a straight stick with its marks, and both its ends unrolled. */
import type { ReactNode } from 'react';
import { useWorkspace } from '../../store/workspace.ts';
import { endInWords } from './ends.ts';
import { ProfileDrawing } from './ProfileDrawing.tsx';
import { StickDrawing } from './StickDrawing.tsx';
import { useWidth } from './useWidth.ts';
import '../ui.css';
import './shop.css';

export default function ShopBench(): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const derived = useWorkspace((state) => state.derived);
  const selection = useWorkspace((state) => state.selection);
  const { frame, width } = useWidth();
  const tube = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;
  const each = width > 620 ? (width - 24) / 2 : width;
  return (
    <div className="shop-bench" ref={frame}>
      {tube === undefined ? (
        <p className="empty">Choose a tube, in the list or in the bay, and its stick lies here.</p>
      ) : (
        width > 0 && (
          <>
            <StickDrawing tube={tube} width={width} unit={unit} />
            <div className="shop-profiles">
              {([0, 1] as const).map((which) => (
                <figure key={which}>
                  <figcaption>
                    <strong>{`End ${which === 0 ? 'A' : 'B'}`}</strong> {endInWords(derived, tube.ends[which])}
                  </figcaption>
                  <ProfileDrawing tube={tube} which={which} width={each} height={170} unit={unit} />
                </figure>
              ))}
            </div>
          </>
        )
      )}
    </div>
  );
}
