/**
 * The layout: the band on top, the bay that stays, the stations' panel beside it and, in the Shop, the bench under it.
 * On a narrow screen the same parts stand in one column, the stations at the bottom.
 */
import { lazy, Suspense, useEffect, useState } from 'react';
import type { ComponentType, ReactNode } from 'react';
import type { Drawing, Station } from '../store/types.ts';
import { useDocument, useEditor, useKeeping } from '../store/page.ts';
import { isInvited, isPairedHere } from '../store/pairing/paired-here.ts';
import { whenIdle } from '../store/whenIdle.ts';
import FrameStation from '../ui/frame/FrameStation.tsx';
import { tubeOfRun, useOpenRun } from '../ui/bending/open-run.ts';
import { openToMake, useToMake } from '../ui/bending/to-make.ts';
import { isNarrow, useNarrow } from '../ui/kit/useNarrow.ts';
import { Band } from './Band.tsx';
import { Boundary } from './Boundary.tsx';
import { answerKey } from './commands.ts';
import type { DialogName } from './commands.ts';
import { DropZone } from './DropZone.tsx';
import { Hints } from './Hints.tsx';
import {
  BendRun,
  ChecksStation,
  fetchLater,
  OpenDialog,
  Rehearsal,
  ShopBench,
  ShopStation,
  StockStation,
  SurveyStation,
  TakeOver,
  ToMake,
} from './later.ts';
import { Notices } from './Notices.tsx';
import { WAITING } from './waiting.ts';
import { Stations } from './Stations.tsx';

/** Asked for at once, so that it comes while the kept work is read; the tables do not wait for it. */
const bay = import('../view/bay/Bay.tsx');
const Bay = lazy(() => bay);

/** Read before pairing takes it out of the address. */
const wasInvited = isInvited();

const PANELS: Record<Station, ComponentType> = {
  survey: SurveyStation,
  frame: FrameStation,
  checks: ChecksStation,
  shop: ShopStation,
  stock: StockStation,
};

export function App(): ReactNode {
  const station = useEditor((state) => state.station);
  const ready = useDocument((state) => state.ready);
  const rehearsing = useEditor((state) => state.rehearsing !== null);
  const drawing = useEditor(isDrawingSeen);
  // On a telephone the Shop sets the bench under Ends, below what is cut first.
  const narrow = useNarrow();
  const otherState = useEditor((state) => state.otherState);
  const [dialog, showDialog] = useState<DialogName | null>(null);
  const [mayBePaired, setMayBePaired] = useState(isPairedHere);
  if (dialog === 'pairing' && !mayBePaired) setMayBePaired(true);
  // A bend run lies over the Shop, and the bay keeps its view under it.
  const open = useOpenRun();
  const slot = useKeeping((state) => state.slot);
  const running = useDocument((state) => tubeOfRun(open, slot, state.derived));
  const bent = station === 'shop' ? running : null;
  const isListed = useToMake() === 'open' && narrow && ready && station === 'shop';
  const isCovered = bent !== null || isListed;

  useEffect(() => {
    const answer = (event: KeyboardEvent): void => answerKey(event, showDialog);
    // Into a tab in which the page is open already.
    const invited = (): void => setMayBePaired((is) => is || isInvited());
    window.addEventListener('keydown', answer);
    window.addEventListener('hashchange', invited);
    return () => {
      window.removeEventListener('keydown', answer);
      window.removeEventListener('hashchange', invited);
    };
  }, []);

  useEffect(() => (ready ? whenIdle(fetchLater) : undefined), [ready]);

  // A telephone that was let in stands beside the machine.
  useEffect(() => {
    if (ready && wasInvited && isNarrow()) openToMake();
  }, [ready]);

  const Panel = PANELS[station];
  return (
    <div
      className="shell"
      data-station={station}
      data-rehearsing={rehearsing ? '' : undefined}
      data-drawing={drawing ? '' : undefined}
    >
      <Band showDialog={showDialog} mayBePaired={mayBePaired} />
      <Notices mayBePaired={mayBePaired} />
      <BaySlot ready={ready} covered={isCovered} />
      {isCovered && (
        <div className="run-page">
          <Boundary part="The bend run">
            <Suspense fallback={<Waiting />}>{bent === null ? <ToMake /> : <BendRun tube={bent} />}</Suspense>
          </Boundary>
        </div>
      )}
      {!isCovered && <Stations />}
      {!isCovered && (
        <div className="work" key={station}>
          {ready && station === 'shop' && !narrow && !rehearsing && (
            <div className="bench">
              <Boundary part="The bench">
                <Suspense fallback={<Waiting />}>
                  <ShopBench />
                </Suspense>
              </Boundary>
            </div>
          )}
          <main className="panel" tabIndex={-1}>
            {ready ? (
              <Boundary part="This station">
                <Suspense fallback={<Waiting />}>
                  <Panel />
                </Suspense>
              </Boundary>
            ) : (
              <Waiting />
            )}
          </main>
        </div>
      )}
      {dialog !== null && (
        <Boundary part="The dialog">
          <Suspense fallback={null}>
            <OpenDialog name={dialog} closed={() => showDialog(null)} />
          </Suspense>
        </Boundary>
      )}
      {otherState !== null && (
        <Boundary part="What differs">
          <Suspense fallback={null}>
            <TakeOver otherState={otherState} />
          </Suspense>
        </Boundary>
      )}
      <DropZone />
    </div>
  );
}

const Waiting = (): ReactNode => (
  <p className="waiting" role="status">
    {WAITING}
  </p>
);

/** A half-drawn tube waits at the other stations. */
const isDrawingSeen = ({
  drawing,
  station,
}: {
  readonly drawing: Drawing | null;
  readonly station: Station;
}): boolean => drawing !== null && station === 'frame';

/**
 * The bay stays mounted, and keeps its view, whatever the stations show; while a tube is rehearsed the bender stands over
 * it. On a narrow screen it can be folded away.
 */
function BaySlot({ ready, covered }: { readonly ready: boolean; readonly covered: boolean }): ReactNode {
  const [folded, fold] = useState(false);
  const rehearsing = useEditor((state) => state.rehearsing);
  const isDrawing = useEditor(isDrawingSeen);
  const isFolded = folded && rehearsing === null && !isDrawing; // whoever asks for what is shown there sees it
  return (
    <div className="bay-slot" inert={covered} data-folded={isFolded ? '' : undefined}>
      {ready && rehearsing === null && <Hints />}
      <div className="bay-ground">
        <div className="bay-frame" inert={rehearsing !== null}>
          <Boundary part="The bay">
            <Suspense fallback={<Waiting />}>{ready && <Bay />}</Suspense>
          </Boundary>
        </div>
        {rehearsing !== null && (
          <div className="bay-bender">
            <Boundary part="The rehearsal">
              <Suspense fallback={<Waiting />}>
                <Rehearsal key={rehearsing} id={rehearsing} />
              </Suspense>
            </Boundary>
          </div>
        )}
      </div>
      <button type="button" className="fold" aria-expanded={!isFolded} onClick={() => fold(!isFolded)}>
        {isFolded ? 'Show the bay' : 'Fold the bay away'}
      </button>
    </div>
  );
}
