import { describe, expect, it } from 'vitest';
import { profileDrawing } from '../../../src/ui/shop/profile.ts';
import { endWith } from '../../core/run/tubes.ts';

const around = (trim: (degree: number) => number): Float64Array =>
  Float64Array.from({ length: 360 }, (_, degree) => trim(degree));

describe('an end unrolled flat', () => {
  it('is as wide as the outer circumference, with the reference in the middle', () => {
    const drawing = profileDrawing(endWith({ outer: around(() => 10), inner: around(() => 9) }), 44.45);
    // 1 3/4 in tube: 5.498 in round (computed by hand: 1.75 x 3.14159).
    expect(drawing.halfWidth * 2).toBeCloseTo(5.4978 * 25.4, 2);
    expect(drawing.outer[0]?.[0]?.round).toBeCloseTo(-drawing.halfWidth, 9);
    expect(drawing.outer[0]?.at(-1)?.round).toBeCloseTo(drawing.halfWidth, 9);
    expect(drawing.outer[0]?.[180]).toEqual({ round: 0, along: 10 });
  });

  it('closes at the seam', () => {
    const [line] = profileDrawing(endWith({ outer: around((degree) => degree), inner: around(() => 0) }), 40).outer;
    expect(line?.[0]?.along).toBe(180);
    expect(line?.at(-1)?.along).toBe(180);
    expect(line?.[90]?.along).toBe(270);
  });

  it('marks throat and tip where they are, between the degrees too, and the curve goes through them', () => {
    const place = (degree: number, s: number) => ({ phi: (degree * Math.PI) / 180, s });
    const end = endWith({
      outer: around(() => 5),
      inner: around(() => 5),
      lows: [place(-60.3, -3)],
      high: place(30.5, 25),
    });
    const drawing = profileDrawing(end, 360 / Math.PI);
    expect(drawing.throat).toEqual({ round: expect.closeTo(30.5, 9), along: 25 });
    expect(drawing.tip).toEqual({ round: expect.closeTo(-60.3, 9), along: -3 });
    expect([drawing.lowest, drawing.highest]).toEqual([-3, 25]);
    const [line] = drawing.outer;
    expect(line!.filter(({ along }) => along !== 5).map(({ along }) => along)).toEqual([-3, 25]);
    expect(line!.every(({ round }, i) => i === 0 || round >= line![i - 1]!.round)).toBe(true);
  });

  it('breaks the curve where no cutter is reached, and never bridges it', () => {
    const trims = around((degree) => (degree > 80 && degree < 280 ? Number.NaN : 7));
    // It ends in its tip, between the degrees.
    const lows = [{ phi: (80.4 * Math.PI) / 180, s: 6 }];
    const high = { phi: 0, s: 7 };
    const drawing = profileDrawing(endWith({ outer: trims, inner: around(() => Number.NaN), lows, high }), 40);
    expect(drawing.outer).toHaveLength(1);
    expect(drawing.outer[0]!.at(-1)).toEqual({ round: expect.closeTo((80.4 * Math.PI * 40) / 360, 9), along: 6 });
    expect(drawing.inner).toEqual([]);
  });

  it('has no throat or tip where nothing is reached at all', () => {
    const nothing = around(() => Number.NaN);
    const drawing = profileDrawing(endWith({ outer: nothing, inner: nothing, lows: [], high: null }), 40);
    expect([drawing.throat, drawing.tip, drawing.lowest, drawing.highest]).toEqual([null, null, 0, 0]);
  });
});
