/** A lattice as cages are drawn: every node hung on a measured point of its own, and a box for the driver's head. */
import type { Job } from '../../../src/core/job/types.ts';

export function furnished(job: Job): Job {
  const fixed = job.nodes.flatMap((node) => (node.at.kind === 'fixed' ? [{ node, position: node.at.position }] : []));
  return {
    ...job,
    points: fixed.map(({ node, position }) => ({ id: `p-${node.id}`, name: `Point ${node.id}`, position })),
    nodes: fixed.map(({ node }) => ({ ...node, at: { kind: 'point', point: `p-${node.id}`, offset: [0, 0, 0] } })),
    envelopes: [
      {
        id: 'head',
        name: 'Helmet',
        kind: 'box',
        centre: [900, 900, 900],
        size: [330, 280, 330],
        rotation: [0, 0, 0],
        gap: 50,
      },
    ],
  };
}
