/** What is held of a selection and how it is shown, which are not there at first: fetched in spare time (app/later.ts), or with the first selection. */
import { lazy } from 'react';

export const fetchHeld = () => import('./held.ts');
const gizmo = () => import('./Gizmo.tsx');
const readout = () => import('./Readout.tsx');

export const Gizmo = lazy(gizmo);
export const Readout = lazy(readout);

export const gripParts = (): Promise<unknown> => Promise.all([fetchHeld(), gizmo(), readout()]);
