/** Where the card stands: clear of the aim, of the leg, of strip and keys, in bays of every size. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standBeside, type Room } from '../../../src/view/draw/stand-beside.ts';

const CARD = { width: 300, height: 80 };
const WIDE: Room = {
  bay: { width: 1000, height: 800 },
  below: 60,
  strip: { left: 8, top: 8, right: 640, bottom: 104 },
};
/** A telephone's, with the strip along the whole edge. */
const NARROW: Room = {
  bay: { width: 390, height: 700 },
  below: 60,
  strip: { left: 0, top: 0, right: 390, bottom: 120 },
};
const PHONE_CARD = { width: 374, height: 110 };

describe('the card', () => {
  it('stands to the right of the aim and under it, else at the next corner that is free', () => {
    expect(standBeside(CARD, WIDE, { x: 300, y: 400 }, null)).toEqual({ x: 318, y: 418 });
    expect(standBeside(CARD, WIDE, { x: 900, y: 400 }, null)).toEqual({ x: 582, y: 418 });
    expect(standBeside(CARD, WIDE, { x: 300, y: 700 }, null)).toEqual({ x: 318, y: 602 });
    expect(standBeside(CARD, WIDE, { x: 900, y: 700 }, null)).toEqual({ x: 582, y: 602 });
  });

  it('does not hide the leg that leads to the aim', () => {
    expect(standBeside(CARD, WIDE, { x: 300, y: 400 }, { x: 500, y: 450 })).toEqual({ x: 318, y: 302 });
  });

  it('where it is as wide as the bay, keeps to an edge, away from what is aimed at', () => {
    expect(standBeside(PHONE_CARD, NARROW, { x: 170, y: 200 }, null)).toEqual({ x: 8, y: 522 });
    expect(standBeside(PHONE_CARD, NARROW, { x: 170, y: 600 }, null)).toEqual({ x: 8, y: 128 });
  });

  it('in a bay too low for that, steps to the side', () => {
    const low: Room = { ...WIDE, bay: { width: 800, height: 300 }, strip: { left: 0, top: 0, right: 800, bottom: 90 } };
    const card = { width: 300, height: 140 };
    expect(standBeside(card, low, { x: 600, y: 150 }, null).x).toBe(282);
    expect(standBeside({ width: 600, height: 140 }, low, { x: 600, y: 150 }, null)).toEqual({ x: 8, y: 98 });
    expect(standBeside({ width: 600, height: 140 }, low, { x: 200, y: 150 }, null)).toEqual({ x: 192, y: 98 });
  });

  it('never lies on the aim, nor on the strip, nor out of the bay', () => {
    for (const [card, room] of [
      [CARD, WIDE],
      [{ width: 400, height: 160 }, WIDE],
      [PHONE_CARD, NARROW],
    ] as const) {
      const { bay, below } = room;
      const strip = room.strip!;
      const share = fc.double({ min: 0, max: 1, noNaN: true });
      fc.assert(
        fc.property(share, share, share, share, (...[across, down, fromAcross, fromDown]) => {
          const aim = { x: across * bay.width, y: strip.bottom + down * (bay.height - below - strip.bottom) };
          const { x, y } = standBeside(card, room, aim, { x: fromAcross * bay.width, y: fromDown * bay.height });
          const isOnAim = aim.x > x && aim.x < x + card.width && aim.y > y && aim.y < y + card.height;
          expect([isOnAim, x < strip.right && y < strip.bottom]).toEqual([false, false]);
          const edges = [x, y, bay.width - x - card.width, bay.height - below - y - card.height];
          expect(Math.min(...edges)).toBeGreaterThanOrEqual(0);
        }),
        { seed: 41 },
      );
    }
  });
});
