/** Which bars a bar crosses: an X by both, not what it ends on, nor what passes beside it. */
import { expect, it } from 'vitest';
import { crossedBy } from '../../../src/core/shape/crossed.ts';
import { derive } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';

const at = (id: string, ...position: number[]) => ({ id, at: { kind: 'fixed', position } });
const bar = (id: string, ...path: string[]) => ({ id, path, section: 's' });

function frame(records: object) {
  const parsed = parseJob(
    JSON.stringify({ format: 'cagewright/job', version: 1, name: 'X', lengthUnit: 'mm', ...records }),
  );
  const derived = parsed.ok ? derive(parsed.job) : parsed;
  if (!derived.ok) throw new Error(JSON.stringify(derived.faults));
  return derived.value;
}

/** Two of an X in the plane y = 500, a sill that one of them ends on, and bars that pass 39 and 41 mm beside the first: tube of 40. */
const FRAME = frame({
  sections: [{ id: 's', outerDiameter: 40, wall: 2 }],
  nodes: [
    at('a', 0, 500, 0),
    at('b', 1000, 500, 800),
    at('c', 0, 500, 800),
    at('d', 1000, 500, 0),
    at('e', 300, 539, -200),
    at('f', 300, 539, 900),
    at('g', 700, 541, -200),
    at('h', 700, 541, 900),
    at('i', -300, 500, 0),
  ],
  members: [
    bar('up', 'a', 'b'),
    bar('down', 'c', 'd'),
    bar('sill', 'i', 'd'),
    bar('near', 'e', 'f'),
    bar('beside', 'g', 'h'),
  ],
});

it('are those whose tube reaches into its own between its ends', () => {
  expect(crossedBy(FRAME, 'up')).toEqual(['down', 'near']);
  expect(crossedBy(FRAME, 'down')).toEqual(['up', 'near']);
});

it('of what a bar ends on, and what ends on it, only the bar that runs through is one', () => {
  expect(crossedBy(FRAME, 'sill'), 'the first begins on it, and could cut it there').toEqual(['up', 'near']);
  expect(crossedBy(FRAME, 'none')).toEqual([]);
});
