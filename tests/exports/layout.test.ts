/** Full-size layouts, read back by programs that are not ours and held to a bend worked by hand. */
import { unwatched } from '../../src/drawing/going.ts';
import type { IArcEntity, ILineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { layoutPdf } from '../../src/exports/layout/layout-pdf.ts';
import { layoutDxf } from '../../src/exports/layout/layout.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { derived } from '../core/frame.ts';
import { auditDxf, hasEzdxf, readDxf, textsOf } from './dxf.ts';
import { fonts } from './fonts.ts';
import { bentTube, derivedDemo, markedAs } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf } from './pdf.ts';

/** An upright hoop of 44.45 on CLR 152.4: feet 1000 apart, 900 high, two right angles. In the middle of nowhere, askew. */
function hoop() {
  const place = (across: number, up: number) => [500 + across * 0.6, across * 0.8 - 200, 100 + up];
  return derived({
    nodes: { a: place(-500, 0), b: place(-500, 900), c: place(500, 900), d: place(500, 0) },
    members: [{ id: 'hoop', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
  });
}

describe('layout.dxf of a square hoop', () => {
  it('has its centreline, both edges and its dimensions, in millimetres', async () => {
    const drawing = readDxf((await layoutDxf(hoop(), unwatched)).bytes);
    expect(drawing.header.$INSUNITS).toBe(4);
    const arcs = (layer: string) =>
      drawing.entities.filter((each): each is IArcEntity => each.type === 'ARC' && each.layer === layer);
    const lines = (layer: string) =>
      drawing.entities.filter((each): each is ILineEntity => each.type === 'LINE' && each.layer === layer);

    const bends = arcs('CENTRELINE');
    expect(bends.length).toBe(2);
    for (const arc of bends) {
      expect(arc.radius).toBeCloseTo(152.4, 6);
      expect((arc.endAngle - arc.startAngle + 2 * Math.PI) % (2 * Math.PI)).toBeCloseTo(Math.PI / 2, 6);
    }
    // Centres stand 152.4 within the corners: 1000 - 2 x 152.4 apart.
    expect(Math.abs(bends[0]!.center.x - bends[1]!.center.x)).toBeCloseTo(695.2, 4);
    expect(
      arcs('EDGE')
        .map(({ radius }) => radius)
        .toSorted((a, b) => a - b),
    ).toEqual([
      expect.closeTo(130.175, 6),
      expect.closeTo(130.175, 6),
      expect.closeTo(174.625, 6),
      expect.closeTo(174.625, 6),
    ]);
    // Legs upright, 900 - 152.4 long, feet level.
    const legs = lines('CENTRELINE').filter(({ vertices: [from, to] }) => Math.abs(from!.x - to!.x) < 1e-6);
    expect(legs.map(({ vertices: [from, to] }) => Math.abs(from!.y - to!.y))).toEqual([
      expect.closeTo(747.6, 4),
      expect.closeTo(747.6, 4),
    ]);
    const texts = textsOf(drawing);
    expect(texts).toContain('node to node, straight across 1000.0 mm');
    expect(texts).toContain('over all 1044.5 mm'); // 1000 + 44.45, to a tenth
    expect(texts).toContain('over all 922.2 mm'); // 900 + 22.225
    // As the sheet's tape has it: 747.6 a hair short of the division, 747.6 + 152.4 pi / 2 = 986.99 on it.
    expect(texts).toContain('1 start 748 − mm');
    expect(texts).toContain('1 end 987 mm');
    const onFine = textsOf(readDxf((await layoutDxf(markedAs(hoop(), { fine: true }), unwatched)).bytes));
    expect(onFine).toContain('1 start 747.5 + mm');
    expect(texts).toContain('bend 2: 90.0°, CLR 152.4 mm');
  });

  it.skipIf(!hasEzdxf)('passes ezdxf’s audit', async () => {
    const demo = derivedDemo();
    for (const job of [hoop(), demo]) {
      // Two jobs, one after the other.
      const audit = auditDxf((await layoutDxf(job, unwatched)).bytes);
      expect(audit).toMatchObject({ units: 4, troubles: [], undefined: [] });
    }
  });
});

it('says of a tube with what is left on which blank is meant, and of one with an error that it has one', async () => {
  const records = {
    nodes: { a: [0, 0, 0], b: [0, 0, 900], c: [0, 1000, 900], d: [0, 1000, 0] },
    members: [{ id: 'hoop', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square', allowance: 5 }, { fit: 'square' }] }],
  };
  const written = textsOf(readDxf((await layoutDxf(derived(records), unwatched)).bytes)).join('; ');
  // Two legs of 747.6, 695.2 across, two quarter turns of 152.4 pi / 2 = 239.39, and 5 left on at A.
  expect(written).toContain('finished blank 2674.2 mm, places from its sawn end A');
  expect(written).toContain('1 start 753 − mm');
  expect(written).not.toContain('!');
  const die = { id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4, greatestAngle: 80 };
  const barred = await layoutDxf(derived({ ...records, dies: [die] }), unwatched);
  expect(textsOf(readDxf(barred.bytes)).join('; ')).toContain('! Cannot be made like this: see the checks.');
});

describe('what is not laid out', () => {
  it('a tube that does not lie flat is named, and so is one that cannot be made', async () => {
    const texts = textsOf(readDxf((await layoutDxf(bentTube(), unwatched)).bytes));
    expect(texts.join(' ')).toMatch(/No bent tube of this job lies flat\..*does not lie flat: 1 Bar\./u);
    const overlapping = bentTube({ dies: [{ id: 'die', outerDiameter: 45, centrelineRadius: 500 }] });
    const written = textsOf(readDxf((await layoutDxf(overlapping, unwatched)).bytes));
    expect(written.join(' ')).toContain('Cannot be made like this: 1 Bar.');
  });

  it('an S in one plane lies flat too, its bends drawn either way', async () => {
    const sBend = derived({
      nodes: { a: [0, 0, 0], b: [500, 0, 0], c: [700, 400, 0], d: [1300, 400, 0] },
      members: [{ id: 's', path: ['a', 'b', 'c', 'd'], ends: [{ fit: 'square' }, { fit: 'square' }] }],
    });
    const drawing = readDxf((await layoutDxf(sBend, unwatched)).bytes);
    const edges = drawing.entities.filter((each): each is IArcEntity => each.type === 'ARC' && each.layer === 'EDGE');
    expect(edges.map(({ radius }) => Math.round(radius)).toSorted((a, b) => a - b)).toEqual([130, 130, 175, 175]);
    // Every piece of an edge begins where the one before ends.
    const centre = drawing.entities.filter((each) => each.layer === 'CENTRELINE');
    expect(centre.map(({ type }) => type)).toEqual(['LINE', 'ARC', 'LINE', 'ARC', 'LINE']);
    const ends = centre.map((each) => {
      if (each.type === 'LINE') return (each as ILineEntity).vertices;
      const { center, radius, startAngle, endAngle } = each as IArcEntity;
      return [startAngle, endAngle].map((angle) => ({
        x: center.x + radius * Math.cos(angle),
        y: center.y + radius * Math.sin(angle),
      }));
    });
    for (let i = 1; i < ends.length; i++) {
      const gap = Math.min(...ends[i - 1]!.flatMap((a) => ends[i]!.map((b) => Math.hypot(a.x - b.x, a.y - b.y))));
      expect(gap).toBeLessThan(1e-6);
    }
  });
});

describe('layout.pdf', () => {
  it('is one page that says so where nothing is laid out: no tubes, or none that lies flat', async () => {
    for (const members of [[], undefined]) {
      const job = bentTube(members && { members });
      const { pages } = await readPdf((await layoutPdf(job, fonts, plainPrint, unwatched)).bytes);
      expect(pages).toHaveLength(1);
      expect(pages[0]!.texts.map(({ text }) => text)).toContain('No bent tube of this job lies flat.');
    }
  });
  it('has no words over others: the demo on both papers, and bends close to one another', async () => {
    const demo = derivedDemo();
    // Bent to and fro with little between the bends, their planes askew to the axes; and a hoop no wider than its words.
    const close = derived({
      nodes: {
        a: [0, 0, 0],
        b: [260, 120, 90],
        c: [380, 390, 240],
        d: [640, 460, 310],
        e: [760, 730, 460],
        f: [1020, 850, 550],
        p: [0, 0, 900],
        q: [0, 60, 1400],
        r: [330, 90, 1400],
        s: [330, 30, 900],
      },
      members: [
        { id: 'wave', name: 'To and fro', path: ['a', 'b', 'c'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'turn', path: ['d', 'e', 'f'], ends: [{ fit: 'square' }, { fit: 'square' }] },
        { id: 'narrow', path: ['p', 'q', 'r', 's'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      ],
    });
    for (const [frame, paper] of [
      [demo, 'letter'],
      [demo, 'a4'],
      [close, 'a4'],
    ] as const) {
      // One paper after the other.
      const { fileName, bytes } = await layoutPdf(frame, fonts, { ...plainPrint, paper }, unwatched);
      expect(fileName).toBe('layout.pdf');
      const { pages } = await readPdf(bytes);
      expect(pages.length).toBeGreaterThan(2);
      expect(pages.flatMap((page, i) => overlapsOf(page).map((words) => `page ${i + 1}: ${words}`))).toEqual([]);
    }
  });
});
