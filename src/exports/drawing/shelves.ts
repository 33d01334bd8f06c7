/** Drawings of different sizes laid out in rows, in their order, none over another. */

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

/** From left to right, then down, then on to the next sheet; a drawing larger than the sheet begins one of its own. */
export function shelved(sizes: readonly Size[], sheet: Size, gap: number): Shelved[] {
  let [count, left, down, tallest] = [0, 0, 0, 0];
  return sizes.map(({ width, height }) => {
    if (left > 0 && left + width > sheet.width) {
      down += tallest + gap;
      [left, tallest] = [0, 0];
    }
    if (down + height > sheet.height && (down > 0 || left > 0)) {
      count += 1;
      [left, down, tallest] = [0, 0, 0];
    }
    const place = { sheet: count, left, down };
    left += width + gap;
    tallest = Math.max(tallest, height);
    return place;
  });
}
