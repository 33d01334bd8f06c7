/**
 * The parts of the page that are not there at first, so that the frame is shown soon: every station but the Frame, and what belongs to them; of the Frame all but the list of members; what a selection is held by in the bay; dialogs, and what a shop record asks. They are fetched
 * once the job is shown and the page has nothing else to do; whoever is quicker waits a moment. Without a network they come from the
 * browser's own store.
 */
import { lazy } from 'react';
import { frameParts } from '../ui/frame/later.ts';
import { shopQuestion } from '../ui/shop-record/ShopAsks.tsx';
import { gripParts } from '../view/gizmo/later.ts';

const surveyStation = () => import('../ui/survey/SurveyStation.tsx');
const checksStation = () => import('../ui/checks/ChecksStation.tsx');
const shopStation = () => import('../ui/shop/ShopStation.tsx');
const stockStation = () => import('../ui/stock/StockStation.tsx');
const shopBench = () => import('../ui/shop/ShopBench.tsx');
const toMake = () => import('../ui/run/ToMake.tsx');
const bendRun = () => import('../ui/run/BendRun.tsx');
const rehearsal = () => import('../ui/rehearsal/Rehearsal.tsx');
const drawing = () => import('../view/draw/Draw.tsx');
const arriving = () => import('./arriving.ts');
const ofSheet = () => import('./OfSheet.tsx');
const openDialog = () => import('./dialogs.tsx');
const takeOver = () => import('./TakeOver.tsx');
const pairing = () => import('../ui/pairing/Pairing.tsx');
const pairingMark = () => import('../ui/pairing/PairingMark.tsx');
const heldStrip = () => import('../ui/pairing/HeldStrip.tsx');
const shopRecord = () => import('../ui/shop-record/ShopRecord.tsx');

export const SurveyStation = lazy(surveyStation);
export const ChecksStation = lazy(checksStation);
export const ShopStation = lazy(shopStation);
export const StockStation = lazy(stockStation);
export const ShopBench = lazy(shopBench);
export const ToMake = lazy(toMake);
export const BendRun = lazy(bendRun);
export const Rehearsal = lazy(rehearsal);
export const Pairing = lazy(pairing);
/** Of these two only a page that is paired, or was about to be, knows. */
export const PairingMark = lazy(pairingMark);
export const HeldStrip = lazy(heldStrip);
export const ShopRecord = lazy(shopRecord);
export const OfSheet = lazy(ofSheet);
export const TakeOver = lazy(takeOver);
export const OpenDialog = lazy(async () => ({ default: (await openDialog()).OpenDialog }));

/** Fetches them all, and what takes the files that the platform hands over. One that does not come is asked for again by whoever needs it, and said there. */
export function fetchLater(): void {
  const all = [
    frameParts,
    gripParts,
    surveyStation,
    checksStation,
    shopStation,
    stockStation,
    shopBench,
    toMake,
    bendRun,
    rehearsal,
    pairing,
    pairingMark,
    heldStrip,
    shopRecord,
    ofSheet,
    openDialog,
    takeOver,
    drawing,
    shopQuestion,
  ];
  for (const fetched of all.map((fetch) => fetch())) fetched.catch(() => {});
  arriving()
    .then(({ takeArrivals }) => takeArrivals())
    .catch(() => {}); // what came lies where it lay: the next load looks again
}
