/** Figures in rows under the blank, each as near to what it is of as the others leave room for. */

/** Where a block of figures stands under the blank, mm. */
export interface LaidBlock {
  /** From where the blank begins. */
  readonly left: number;
  /** 0 is the tier nearest the blank. */
  readonly tier: number;
}

/**
 * Stands blocks of one width in a row, each as near under its place as its neighbours and the drawing's edges let it;
 * too many for one row go on in even tiers below. `middles` are those places, in the order of the tape, which is
 * the order of the answer.
 */
export function layBlocks(middles: readonly number[], width: number, breadth: number, gap: number): LaidBlock[] {
  const most = Math.max(1, Math.floor((breadth + gap) / (width + gap)));
  const tiers = Math.ceil(middles.length / most);
  const each = Math.ceil(middles.length / tiers);
  return Array.from({ length: tiers }, (_, tier) => {
    const lefts: number[] = [];
    const row = middles.slice(tier * each, (tier + 1) * each);
    row.forEach((middle, index) => {
      const earliest = index === 0 ? 0 : lefts[index - 1]! + width + gap;
      lefts.push(Math.max(middle - width / 2, earliest));
    });
    // Back from the far edge: what was pushed over it pushes its neighbours back.
    let latest = breadth - width;
    for (let index = row.length - 1; index >= 0; index -= 1) {
      lefts[index] = Math.max(0, Math.min(lefts[index]!, latest));
      latest = lefts[index]! - width - gap;
    }
    return lefts.map((left): LaidBlock => ({ left, tier }));
  }).flat();
}
