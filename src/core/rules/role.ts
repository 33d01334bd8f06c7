/** What bars are called by in a cage: the roles that a rule book names, in the trade's words (layouts.md). A shop may give others of its own. */
import type { Member } from '../job/kinds/member.ts';

/** The roles that starters give and shipped sheets name, in the order of the work. */
export const ROLES = [
  'main-hoop',
  'front-hoop',
  'side-hoop',
  'front-leg',
  'roof-ring',
  'roof-rail',
  'rear-stay',
  'main-diagonal',
  'harness-bar',
  'rear-diagonal',
  'rear-cross-bar',
  'rear-roof-bar',
  'windscreen-header',
  'dash-bar',
  'pillar-brace',
  'door-bar',
  'sill-bar',
  'roof-diagonal',
  'tower-strut',
  'tunnel-brace',
] as const;

/** As roles are compared: case, spaces and dashes do not count. */
export const plainRole = (role: string): string =>
  role
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/gu, '-');

/** Whether the member was given that role. */
export const isRole = ({ role }: Pick<Member, 'role'>, asked: string): boolean => plainRole(role) === plainRole(asked);
