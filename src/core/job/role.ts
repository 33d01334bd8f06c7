/** What bars are called by in a cage: the roles that a rule book names, in the trade's words (layouts.md). A shop may give others of its own. */
import { remembered } from '../remembered.ts';
import type { Member } from './kinds/member.ts';

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

/** Every article of every sheet asks it of every bar. */
const plainOf = remembered(({ role }: Pick<Member, 'role'>) => plainRole(role));

/** Whether the member was given that role. */
export const isRole = (member: Pick<Member, 'role'>, asked: string): boolean => plainOf(member) === plainRole(asked);

/** Whether a bar of this role is a hoop or a roll bar, of one piece and dear to spoil. */
export const isHoopRole = (role: string): boolean => /hoop|roll-?bar/iu.test(role);
