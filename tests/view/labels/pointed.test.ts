/** The name of what is under the pointer. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { pointedLabels } from '../../../src/view/labels/labels-of.tsx';
import { read, solved } from '../../core/shape/sides.ts';

const frame = solved(read(readFileSync('public/demo.cagewright.json', 'utf8')));
const named = (...asked: [Parameters<typeof pointedLabels>[1], Parameters<typeof pointedLabels>[2]]) =>
  pointedLabels(frame, ...asked, 'checks').map(({ text, at }) => [text, (at as readonly unknown[])[0]]);

it('of a node and its image, and of a point, is said where it is; tubes have numbers, and what is selected says its own', () => {
  const node = { kind: 'node', id: 'stay-top' } as const;
  expect(named(node, null)).toEqual([['Stay at the hoop', frame.nodes.get('stay-top')]]);
  const image = { kind: 'node', id: "stay-top'" } as const;
  expect(named(image, node)).toEqual([['Stay at the hoop, mirrored', frame.nodes.get("stay-top'")]]);
  expect(named(node, node)).toEqual([]);
  expect(named({ kind: 'point', id: 'wheel' }, null)[0]![0]).toBe('Steering wheel, centre');
  expect(named({ kind: 'tube', id: 'hoop' }, null)).toEqual([]);
  expect(named({ kind: 'node', id: 'gone' }, null)).toEqual([]);
  const [label] = pointedLabels(frame, node, null, 'frame');
  expect(label!.text, 'where it can be moved, how').toBe('Stay at the hoop: press to move it');
});
