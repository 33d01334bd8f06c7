/** Where a node of a GLB puts what it holds: Khronos, glTF 2.0 Specification, 3.5.3. */
import type { PlainObject } from '../job/plain.ts';

/** Three rows of four: turn, stretch and shear, then the shift. */
export type Matrix = readonly number[];

/** Nothing is moved. */
export const AS_IT_IS: Matrix = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0];

/** First by `inner`, then by `outer`. */
export const placedBy = (outer: Matrix, inner: Matrix): Matrix =>
  [0, 1, 2].flatMap((row) =>
    [0, 1, 2, 3].map((column) => {
      const at = (k: number): number => outer[4 * row + k]! * inner[4 * k + column]!;
      return at(0) + at(1) + at(2) + (column === 3 ? outer[4 * row + 3]! : 0);
    }),
  );

/** Where a place goes. */
export const through = (m: Matrix, x: number, y: number, z: number): [number, number, number] => [
  m[0]! * x + m[1]! * y + m[2]! * z + m[3]!,
  m[4]! * x + m[5]! * y + m[6]! * z + m[7]!,
  m[8]! * x + m[9]! * y + m[10]! * z + m[11]!,
];

/** The node's own; null where it is given by what are no numbers, or not as many as it takes. */
export function matrixOf(node: PlainObject): Matrix | null {
  const numbers = (name: string, missing: readonly number[]): readonly number[] | null => {
    const value = node[name];
    if (value === undefined) return missing;
    const is =
      Array.isArray(value) && value.length === missing.length && value.every((each) => typeof each === 'number');
    return is ? value : null;
  };
  if (node['matrix'] !== undefined) {
    // Column after column.
    const m = numbers(
      'matrix',
      Array.from({ length: 16 }, () => 0),
    );
    return m === null ? null : [0, 1, 2].flatMap((row) => [0, 4, 8, 12].map((column) => m[row + column]!));
  }
  const shift = numbers('translation', [0, 0, 0]);
  const turn = numbers('rotation', [0, 0, 0, 1]);
  const stretch = numbers('scale', [1, 1, 1]);
  if (shift === null || turn === null || stretch === null) return null;
  const [x, y, z, w] = turn as [number, number, number, number];
  const [a, b, c] = stretch as [number, number, number];
  return [
    (1 - 2 * (y * y + z * z)) * a,
    2 * (x * y - z * w) * b,
    2 * (x * z + y * w) * c,
    shift[0]!,
    2 * (x * y + z * w) * a,
    (1 - 2 * (x * x + z * z)) * b,
    2 * (y * z - x * w) * c,
    shift[1]!,
    2 * (x * z - y * w) * a,
    2 * (y * z + x * w) * b,
    (1 - 2 * (x * x + y * y)) * c,
    shift[2]!,
  ];
}
