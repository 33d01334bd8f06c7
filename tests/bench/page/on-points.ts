/** The same frame with every fixed node hung on a measured point of its own, as cages are drawn. */
import type { Job } from '../../../src/core/job/types.ts';

export function onPoints(job: Job): Job {
  const fixed = job.nodes.flatMap((node) => (node.at.kind === 'fixed' ? [{ node, position: node.at.position }] : []));
  return {
    ...job,
    points: fixed.map(({ node, position }) => ({ id: `p-${node.id}`, name: `Point ${node.id}`, position })),
    nodes: fixed.map(({ node }) => ({ ...node, at: { kind: 'point', point: `p-${node.id}`, offset: [0, 0, 0] } })),
  };
}
