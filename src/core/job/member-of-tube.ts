/** Which member a tube is made of: a whole bar goes by the member's id, a bar in pieces by harness.1, harness.2 ... from end A. */
import type { Member } from './kinds/member.ts';
import { bareId, pieceId, pieceNamed, primed, type TubeRef } from './reference.ts';

/** The member of the tube called so, or of its mirror image; undefined where none is made into a tube of that name. */
export function memberOfTube(members: readonly Member[], tube: TubeRef): Member | undefined {
  const bare = bareId(tube);
  const whole = members.find(({ id }) => id === bare);
  if (whole !== undefined) return whole.cutBy === undefined ? whole : undefined;
  const named = pieceNamed(tube);
  const bar = members.find(({ id }) => id === named?.member);
  return bar?.cutBy !== undefined && named!.piece <= bar.cutBy.length + 1 ? bar : undefined;
}

/** What the tubes are called that the member is made into: from end A, then those of its twin. */
export function tubesOfMember({ id, cutBy, mirror }: Pick<Member, 'id' | 'cutBy' | 'mirror'>): readonly TubeRef[] {
  const own = cutBy === undefined ? [id] : [...Array(cutBy.length + 1).keys()].map((i) => pieceId(id, i + 1));
  return mirror ? [...own, ...own.map(primed)] : own;
}
