/** The bench under the bay: the selected tube as a straight stick with its marks, and both its ends unrolled. */
import type { ReactNode } from 'react';
import { useWorkspace } from '../../store/workspace.ts';
import { endInWords } from './ends.ts';
import { ProfileDrawing } from './ProfileDrawing.tsx';
import { referenceInWords } from './profile.ts';
import { StickDrawing, stickHeight } from './StickDrawing.tsx';
import { useRoom } from './useRoom.ts';
import '../ui.css';
import './shop.css';

/** From this width on, pixels, the two ends stand side by side and share the height that the stick leaves. */
const SIDE_BY_SIDE = 620;
const CAPTION_LINE = 22;
const ONE_LINE = 420;

export default function ShopBench(): ReactNode {
  const unit = useWorkspace((state) => state.job.lengthUnit);
  const derived = useWorkspace((state) => state.derived);
  const selection = useWorkspace((state) => state.selection);
  const { frame, width, height } = useRoom();
  const tube = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;
  const sideBySide = width > SIDE_BY_SIDE;
  const each = sideBySide ? (width - 24) / 2 : width;
  // A straight tube's reference takes more words, and its stick less room; a narrow bench has no room beside.
  const captionLines = tube?.bends.length === 0 || each < ONE_LINE ? 2 : 1;
  const left = tube ? height - stickHeight(tube, width, unit) - captionLines * CAPTION_LINE : 0;
  return (
    <div className="shop-bench" ref={frame}>
      {tube === undefined ? (
        <p className="empty">Choose a tube, in the list or in the bay, and its stick lies here.</p>
      ) : (
        width > 0 && (
          <>
            <StickDrawing tube={tube} width={width} unit={unit} />
            <div className={sideBySide ? 'shop-profiles shop-profiles-two' : 'shop-profiles'}>
              {([0, 1] as const).map((which) => (
                <figure key={which}>
                  <figcaption>
                    <strong>{`End ${which === 0 ? 'A' : 'B'}`}</strong> {endInWords(derived, tube.ends[which])}
                    <span className={captionLines === 2 ? 'small under' : 'small'}>
                      {captionLines === 1 && ' · '}0° is the {referenceInWords(tube, which)}
                    </span>
                  </figcaption>
                  <ProfileDrawing
                    tube={tube}
                    which={which}
                    width={each}
                    height={sideBySide ? Math.max(left, 110) : 190}
                    unit={unit}
                  />
                </figure>
              ))}
            </div>
          </>
        )
      )}
    </div>
  );
}
