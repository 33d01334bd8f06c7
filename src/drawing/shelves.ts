/** Drawings of different sizes laid out in rows, none over another: each where there is room first, so that little paper stays white. */

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Shelved {
  /** 0 is the first sheet. */
  readonly sheet: number;
  /** Of the drawing's upper left corner, from the sheet's upper left corner, y down. */
  readonly left: number;
  readonly down: number;
}

interface Row {
  readonly down: number;
  left: number;
  height: number;
}

/**
 * Each in the first row of the first sheet that has room, else in a new row, else on a new sheet; one larger than the sheet has a row
 * or a sheet of its own. The last row of a sheet may still grow.
 */
export function shelved(sizes: readonly Size[], sheet: Size, gap: number): Shelved[] {
  const sheets: Row[][] = [];
  return sizes.map((size) => {
    for (let count = 0; ; count++) {
      const rows = (sheets[count] ??= []);
      const row = rowFor(rows, size, sheet, gap);
      if (row === null) continue;
      const place = { sheet: count, left: row.left, down: row.down };
      row.left += size.width + gap;
      row.height = Math.max(row.height, size.height);
      return place;
    }
  });
}

/**
 * As shelved, but the tallest first, which takes fewer sheets (first fit by decreasing height: E. G. Coffman, M. R. Garey, D. S. Johnson
 * and R. E. Tarjan, SIAM J. Comput. 9, 1980). Sheets, the rows on them and what stands in a row then go in the order that was given.
 */
export function packed(sizes: readonly Size[], sheet: Size, gap: number): Shelved[] {
  const tallest = sizes.map((_, i) => i).toSorted((a, b) => sizes[b]!.height - sizes[a]!.height || a - b);
  const put = shelved(
    tallest.map((i) => sizes[i]!),
    sheet,
    gap,
  );
  // Rows of each sheet, each the drawings that stand in it.
  const sheets: Map<number, number[]>[] = [];
  tallest.forEach((drawing, k) => {
    const { sheet: on, down } = put[k]!;
    const rows = (sheets[on] ??= new Map());
    rows.set(
      down,
      [...(rows.get(down) ?? []), drawing].toSorted((a, b) => a - b),
    );
  });
  const inOrder = sheets
    .map((rows) => [...rows.values()].toSorted((a, b) => a[0]! - b[0]!))
    .toSorted((a, b) => a[0]![0]! - b[0]![0]!);
  const places: Shelved[] = [];
  for (const [on, rows] of inOrder.entries()) {
    let down = 0;
    for (const row of rows) {
      let left = 0;
      for (const drawing of row) {
        places[drawing] = { sheet: on, left, down };
        left += sizes[drawing]!.width + gap;
      }
      down += Math.max(...row.map((drawing) => sizes[drawing]!.height)) + gap;
    }
  }
  return places;
}

function rowFor(rows: Row[], { width, height }: Size, sheet: Size, gap: number): Row | null {
  const last = rows.at(-1);
  const found = rows.find(
    (row) =>
      row.left + width <= sheet.width && (height <= row.height || (row === last && row.down + height <= sheet.height)),
  );
  if (found !== undefined) return found;
  const down = last === undefined ? 0 : last.down + last.height + gap;
  if (last !== undefined && down + height > sheet.height) return null;
  const row = { down, left: 0, height };
  rows.push(row);
  return row;
}
