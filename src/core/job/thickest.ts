/** How wide the tubes are that run through a node: what a place counts with that is clear of a point by a gap. */
import { remembered } from '../remembered.ts';
import type { Member } from './kinds/member.ts';
import type { Section } from './kinds/section.ts';
import { bareId, type NodeId } from './reference.ts';
import type { Job } from './types.ts';

/** The greatest outer diameter, mm, of the members whose path names the node or its image; 0 where none does. */
export const thickestThrough = ({ members, sections }: Pick<Job, 'members' | 'sections'>, id: NodeId): number =>
  diameters(members)(sections).get(id) ?? 0;

const diameters = remembered((members: readonly Member[]) =>
  remembered((sections: readonly Section[]): ReadonlyMap<NodeId, number> => {
    const across = new Map(sections.map(({ id, outerDiameter }) => [id, outerDiameter]));
    const greatest = new Map<NodeId, number>();
    for (const { path, section } of members) {
      for (const node of path.map(bareId)) {
        greatest.set(node, Math.max(greatest.get(node) ?? 0, across.get(section) ?? 0));
      }
    }
    return greatest;
  }),
);
