/** A frame of exactly so many tubes: the bays of a cubic grid, every end coped to what it meets that came before. */
import { parseJob } from '../../src/core/job/parse.ts';
import type { Job } from '../../src/core/job/types.ts';

const BAY = 600;

export function latticeOf(tubes: number): Job {
  // A grid of side n has 3 n^2 (n - 1) bays.
  let side = 2;
  while (3 * side * side * (side - 1) < tubes) side += 1;
  const nodes: object[] = [];
  const members: object[] = [];
  for (let x = 0; x < side; x++) {
    for (let y = 0; y < side; y++) {
      for (let z = 0; z < side; z++) {
        const id = `n${x}-${y}-${z}`;
        // Off the square by a little, differently at each node, so that no cope is like another.
        const lean = (k: number): number => 20 * Math.sin(k * (1 + x + 3 * y + 7 * z));
        const position = [x * BAY + lean(1), y * BAY + lean(2), z * BAY + lean(3)];
        nodes.push({ id, at: { kind: 'fixed', position } });
        const back = [x > 0 && `n${x - 1}-${y}-${z}`, y > 0 && `n${x}-${y - 1}-${z}`, z > 0 && `n${x}-${y}-${z - 1}`];
        for (const from of back) {
          if (from && members.length < tubes)
            members.push({ id: `t${members.length}`, path: [from, id], section: 's' });
        }
      }
    }
  }
  return jobFrom({ name: `${tubes} tubes`, sections: [{ id: 's', outerDiameter: 38, wall: 2.5 }], nodes, members });
}

export function jobFrom(records: object): Job {
  const parsed = parseJob(JSON.stringify({ format: 'cagewright/job', version: 1, ...records }));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
}
