/**
 * The parts of the station that are not there at first, so that the members are shown soon: nodes, what tubes are made of, and the card of a chosen one. They are
 * fetched in spare time (app/later.ts) or by whoever asks for them first.
 */
import { lazy } from 'react';

const nodeTables = () => import('./NodeTables.tsx');
const nodeCard = () => import('./NodeCard.tsx');
const bendsEditor = () => import('./BendsEditor.tsx');
const materialTables = () => import('./MaterialTables.tsx');
const memberCard = () => import('./MemberCard.tsx');

export const NodeTables = lazy(async () => ({ default: (await nodeTables()).NodeTables }));
export const NodeCard = lazy(async () => ({ default: (await nodeCard()).NodeCard }));
export const BendsEditor = lazy(async () => ({ default: (await bendsEditor()).BendsEditor }));
export const MaterialTables = lazy(async () => ({ default: (await materialTables()).MaterialTables }));
export const MemberCard = lazy(async () => ({ default: (await memberCard()).MemberCard }));

/** Fetches them all. */
export const frameParts = (): Promise<unknown> =>
  Promise.all([nodeTables(), nodeCard(), bendsEditor(), materialTables(), memberCard()]);
