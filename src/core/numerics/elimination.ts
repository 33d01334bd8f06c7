/**
 * In which order the unknowns of a symmetric system are taken, so that its Cholesky factor has few entries where the matrix has none, and where the
 * factor has any: what hangs together with the fewest others comes first (minimum degree; George and Liu, Computer Solution of Large Sparse Positive
 * Definite Systems, 1981, chapter 5).
 */

export interface Elimination {
  /** The unknown that is taken first, second and so on. */
  readonly order: readonly number[];
  /** By place in that order: the later places in which the factor's column has an entry, rising. */
  readonly below: readonly Int32Array[];
}

/** Every unknown hangs on every other: as they come. */
export function wholly(size: number): Elimination {
  const all = Int32Array.from({ length: size }, (_, i) => i);
  return { order: [...all], below: [...all].map((i) => all.subarray(i + 1)) };
}

/**
 * @param blocks each unknown in one of them; those of one block hang on one another
 * @param links sets of blocks that hang on one another
 */
export function eliminationOf(
  blocks: readonly (readonly number[])[],
  links: readonly (readonly number[])[],
): Elimination {
  const beside = blocks.map(() => new Set<number>());
  for (const link of links) for (const block of link) joinAll(beside, block, link);
  const left = new Set(blocks.keys());
  const first = new Int32Array(blocks.length);
  const order: number[] = [];
  while (left.size > 0) {
    let next = -1;
    for (const block of left) if (next < 0 || beside[block]!.size < beside[next]!.size) next = block;
    left.delete(next);
    // What it hung on hangs together from now on; whom it has beside it now are the later ones.
    for (const block of beside[next]!) {
      beside[block]!.delete(next);
      joinAll(beside, block, beside[next]!);
    }
    first[next] = order.length;
    order.push(...blocks[next]!);
  }
  const below: Int32Array[] = order.map(() => NONE);
  blocks.forEach((block, index) => {
    const later = [index, ...beside[index]!].flatMap((other) => blocks[other]!.map((_, i) => first[other]! + i));
    const rising = Int32Array.from(later.toSorted((a, b) => a - b));
    block.forEach((_, i) => (below[first[index]! + i] = rising.subarray(i + 1)));
  });
  return { order, below };
}

const NONE = new Int32Array(0);

function joinAll(beside: readonly Set<number>[], block: number, others: Iterable<number>): void {
  for (const other of others) if (other !== block) beside[block]!.add(other);
}
