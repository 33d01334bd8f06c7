/** Figures in rows under the blank, each as near to what it is of as the others leave room for, and a leader to each. */

/** Where a block of figures stands under the blank, mm. */
export interface LaidBlock {
  /** From where the blank begins. */
  readonly left: number;
  /** 0 is the tier nearest the blank. */
  readonly tier: number;
  /** Where its leader passes between the blocks of each tier above it, from the blank down. */
  readonly through: readonly number[];
}

/**
 * Stands blocks of one width in a row, each as near under its place as its neighbours and the drawing's edges let it. Too many for one
 * row stand in tiers by turns, so that each stays near its place, and leaders come down between the blocks above, in the order of the
 * tape: none crosses another or a block. `middles` are those places, in the order of the tape, which is the order of the answer. Leaders
 * past the last block of a tier have `aside` mm beyond the far edge.
 */
export function layBlocks(
  middles: readonly number[],
  width: number,
  breadth: number,
  gap: number,
  aside: number,
): LaidBlock[] {
  const most = Math.max(1, Math.floor((breadth + gap) / (width + gap)));
  const tiers = Math.ceil(middles.length / most);
  const rows = Array.from({ length: tiers }, (_, tier) =>
    inRow(
      // The higher, the farther to the left: so the leaders of the next ones come down beside it.
      middles.filter((_middle, i) => i % tiers === tier).map((middle) => middle - (width * (tiers - 1 - tier)) / 2),
      width,
      breadth,
      gap,
    ),
  );
  return middles.map((middle, i): LaidBlock => {
    const tier = i % tiers;
    const turn = Math.floor(i / tiers);
    const through = rows.slice(0, tier).map((row, above) => {
      const next = row[turn + 1] ?? breadth + aside;
      // All that pass here, in order: those of the tiers below this one.
      const apart = Math.min(APART, (next - row[turn]! - width) / tiers);
      const low = row[turn]! + width + apart * (tier - above);
      return Math.min(Math.max(middle, low), next - apart * (tiers - tier));
    });
    return { left: rows[tier]![turn]!, tier, through };
  });
}

/** mm between leaders that come down side by side, where there is room. */
const APART = 2;

/** Left edges of blocks in one row. */
function inRow(middles: readonly number[], width: number, breadth: number, gap: number): number[] {
  const lefts: number[] = [];
  for (const middle of middles)
    lefts.push(Math.max(middle - width / 2, lefts.length === 0 ? 0 : lefts.at(-1)! + width + gap));
  // Back from the far edge: what was pushed over it pushes its neighbours back.
  let latest = breadth - width;
  for (let index = lefts.length - 1; index >= 0; index -= 1) {
    lefts[index] = Math.max(0, Math.min(lefts[index]!, latest));
    latest = lefts[index]! - width - gap;
  }
  return lefts;
}
