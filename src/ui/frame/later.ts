/**
 * The parts of the station that are not there at first, so that the members are shown soon: the chosen member, nodes, what tubes are made of, and what is done with several. They are
 * fetched in spare time (app/later.ts) or by whoever asks for them first.
 */
import { lazy } from 'react';

const nodeTables = () => import('./NodeTables.tsx');
const nodeCard = () => import('./NodeCard.tsx');
const memberCard = () => import('./MemberCard.tsx');
const severalMembers = () => import('./SeveralMembers.tsx');
const severalNodes = () => import('./SeveralNodes.tsx');
const newMember = () => import('./NewMember.tsx');
const numbers = () => import('./Numbers.tsx');
const buildOrder = () => import('./BuildOrder.tsx');
const fitting = () => import('./Fitting.tsx');
const askDelete = () => import('./AskDelete.tsx');
const startChoice = () => import('./StartChoice.tsx');
const startForm = () => import('./StartForm.tsx');
const materialTables = () => import('./MaterialTables.tsx');

export const NodeTables = lazy(async () => ({ default: (await nodeTables()).NodeTables }));
export const NodeCard = lazy(async () => ({ default: (await nodeCard()).NodeCard }));
export const MemberCard = lazy(async () => ({ default: (await memberCard()).MemberCard }));
export const SeveralMembers = lazy(severalMembers);
export const SeveralNodes = lazy(severalNodes);
export const NewMember = lazy(newMember);
export const Numbers = lazy(numbers);
export const BuildOrder = lazy(buildOrder);
export const Fitting = lazy(fitting);
export const AskDelete = lazy(askDelete);
export const StartChoice = lazy(startChoice);
export const StartForm = lazy(startForm);
export const MaterialTables = lazy(async () => ({ default: (await materialTables()).MaterialTables }));

/** Fetches them all. */
export const frameParts = (): Promise<unknown> =>
  Promise.all(
    [
      nodeTables,
      nodeCard,
      memberCard,
      severalMembers,
      severalNodes,
      newMember,
      numbers,
      buildOrder,
      fitting,
      askDelete,
      materialTables,
      startChoice,
      startForm,
    ].map((fetch) => fetch()),
  );
