/**
 * Templates of every end: nothing of one stands outside its outline, at whatever angle its tips lie, and its lower edge is where the
 * blank is sawn: one number in fabrication.json, on the templates, in words and on the layout. SVG, DXF and PDF are read back.
 */
import { unwatched } from '../../src/drawing/going.ts';
import type { IEntity, ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { layoutDxf } from '../../src/exports/layout/layout.ts';
import { paperWrap } from '../../src/core/cope/wrap.ts';
import { boxOf } from '../../src/drawing/clear.ts';
import { clipped } from '../../src/drawing/clip.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import type { Line } from '../../src/drawing/types.ts';
import { endsOf } from '../../src/exports/shared/wrap-words.ts';
import { wrapSurface } from '../../src/exports/wraps/wrap-surface.ts';
import { wrapsPdf } from '../../src/exports/wraps/wraps-pdf.ts';
import { wrapsDxf, wrapsSvg } from '../../src/exports/wraps/wraps.ts';
import { demoText } from '../command-line.ts';
import { derived } from '../core/frame.ts';
import { straightJoint } from '../reference/joints.ts';
import { outlinesOf, readDxf, textsOf } from './dxf.ts';
import { fonts } from './fonts.ts';
import { derivedFrom } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf } from './pdf.ts';

const demo = derivedFrom(JSON.stringify({ ...JSON.parse(demoText()), lengthUnit: 'mm' }));

/** A bent tube coped askew to a bar thinner than itself, which it passes by on both sides: its curve ends between the degrees. */
const askew = derived({
  sections: [
    { id: 'main', outerDiameter: 44.45, wall: 3.048 },
    { id: 'thin', outerDiameter: 31, wall: 2 },
  ],
  nodes: { w: [-300, 40, 0], e: [300, -60, 0], a: [20, -6, 4], b: [160, 190, 700], c: [900, 240, 760] },
  members: [
    { id: 'bar', path: ['w', 'e'], section: 'thin', ends: [{ fit: 'square' }, { fit: 'square' }] },
    { id: 'bent', path: ['a', 'b', 'c'], ends: [{ fit: 'cope', against: ['bar'] }, { fit: 'square' }] },
  ],
});

/** Random joints, most of them skew; every other branch is thicker than a run and its template open. */
const joints = Array.from({ length: 12 }, (_, i): Derived => {
  const derivation = derive(straightJoint(7100 + i).job);
  return derivation.ok ? derivation.value : expect.fail(JSON.stringify(derivation.faults));
});
const frames = [demo, askew, ...joints];

interface Pattern {
  readonly fileName: string;
  readonly width: number;
  readonly height: number;
  /** Of what is cut or marked, y up from the lower edge. */
  readonly lines: readonly { readonly layer: string; readonly places: readonly (readonly [number, number])[] }[];
  readonly words: string;
}

/** Every end's, read once. */
const read = frames.map(async (frame): Promise<Pattern[]> =>
  (await wrapsSvg(frame, unwatched)).map(({ fileName, bytes }) => {
    const text = new TextDecoder().decode(bytes);
    const [, width, height] = text.match(/viewBox="0 0 ([\d.]+) ([\d.]+)"/u)!.map(Number) as [number, number, number];
    const lines = [...text.matchAll(/<g id="(\w+)">(.*?)<\/g>/gsu)].flatMap(([, layer, group]) =>
      [...group!.matchAll(/ d="([^"]*)"/gu)].map(([, d]) => ({
        layer: layer!,
        places: [...d!.matchAll(/[ML]([-\d.]+) ([-\d.]+)/gu)].map(
          ([, x, y]) => [Number(x), height - Number(y)] as const,
        ),
      })),
    );
    return {
      fileName,
      width,
      height,
      lines,
      words: [...text.matchAll(/>([^<]+)<\/text>/gu)].map(([, t]) => t).join(' '),
    };
  }),
);
const patternsOf = (frame: Derived): Promise<Pattern[]> => read[frames.indexOf(frame)]!;

/** Pages of wraps.pdf of the demo, the askew one and some of the joints. */
const printed = [demo, askew, ...joints.slice(0, 4)].map(async (frame) => ({
  frame,
  pages: (await readPdf((await wrapsPdf(frame, fonts, plainPrint, unwatched)).bytes)).pages,
}));

/** Coordinates in the file are rounded to a tenth of a micron. */
const ROUNDED = 2e-4;

/** A branch coped to a run of 48.3, and every other end square. */
const joint = (outerDiameter: number, included: number): Derived =>
  derived({
    sections: [
      { id: 'run', outerDiameter: 48.3, wall: 3 },
      { id: 'branch', outerDiameter, wall: 2 },
    ],
    nodes: {
      back: [-800, 0, 0],
      fore: [800, 0, 0],
      joint: [0, 0, 0],
      top: [900 * Math.cos((included * Math.PI) / 180), 0, 900 * Math.sin((included * Math.PI) / 180)],
    },
    members: [
      { id: 'run', path: ['back', 'fore'], section: 'run', ends: [{ fit: 'square' }, { fit: 'square' }] },
      { id: 'branch', path: ['joint', 'top'], section: 'branch', ends: [{ fit: 'auto' }, { fit: 'square' }] },
    ],
  });

describe('wraps.pdf says', () => {
  const wordsOf = async (frame: Derived): Promise<string[]> => {
    const { pages } = await readPdf((await wrapsPdf(frame, fonts, plainPrint, unwatched)).bytes);
    return pages.map(({ texts }) => texts.map(({ text }) => text).join(' '));
  };

  it('of every end of the demo which it is, and the name of its tube', async () => {
    const { pages } = (await printed[0])!;
    const text = pages
      .flatMap(({ texts }) => texts.map((each) => each.text))
      .join(' ')
      .replace(/\s+/gu, ' ');
    for (const { number, name, ends } of demo.tubes) {
      ends.forEach(({ cuts }, which) => {
        const mark = `${number} ${which === 0 ? 'A' : 'B'}`;
        expect(text.includes(mark), mark).toBe(true);
        if (cuts.length > 0) expect(text, mark).toContain(name);
      });
    }
  });

  it('which ends are square: they are not drawn', async () => {
    const pages = await wordsOf(joint(38.1, 60));
    expect(pages).toHaveLength(2);
    expect(pages[1]).toContain('1 A, 1 B, 2 B');
  });

  it('how the sheets of a template larger than the page go together', async () => {
    const pages = await wordsOf(joint(88.9, 30));
    expect(pages.length).toBeGreaterThan(3);
    expect(pages[0]).toContain('sheet A1. Join the sheets on their crosses');
    for (const text of pages.slice(0, 2)) expect(text).toContain('A1–A2');
  });
});

describe('nothing stands outside a template', () => {
  it('in its SVG, where a laser would score', async () => {
    let ends = 0;
    let ticks = 0;
    for (const frame of frames) {
      for (const { fileName, width, height, lines } of await patternsOf(frame)) {
        ends += 1;
        for (const { layer, places } of lines) {
          if (layer === 'MARK') ticks += 1;
          for (const [x, y] of places) {
            const inside = x >= -ROUNDED && x <= width + ROUNDED && y >= -ROUNDED && y <= height + ROUNDED;
            if (!inside) expect.fail(`${fileName}: ${layer} at ${x}, ${y} on a sheet of ${width} x ${height}`);
          }
        }
      }
    }
    expect(ends).toBeGreaterThan(56 + 30);
    expect(ticks).toBeGreaterThan(4 * ends);
  });

  it('in the DXF, whose marks all stand on the outline of an end', async () => {
    for (const frame of frames) {
      const drawing = readDxf((await wrapsDxf(frame, unwatched)).bytes);
      const sizes = await patternsOf(frame);
      const marks = drawing.entities.filter(({ layer }: IEntity) => layer === 'MARK');
      const placesOf = (each: IEntity) => (each as ILwpolylineEntity).vertices;
      const closed = outlinesOf(drawing, 'CUT').map(({ vertices }) => ({
        left: Math.min(...vertices.map(({ x }) => x)),
        right: Math.max(...vertices.map(({ x }) => x)),
        bottom: Math.min(...vertices.map(({ y }) => y)),
        top: Math.max(...vertices.map(({ y }) => y)),
      }));
      // An open pattern has its upper edge alone, in the order of the ends.
      const heights = sizes
        .filter(({ lines }) => !lines.some(({ layer }) => layer === 'CUT'))
        .map(({ height }) => height);
      const level = marks.map(placesOf).filter((places) => Math.abs(places[0]!.y - places[1]!.y) < 1e-9);
      expect(level).toHaveLength(heights.length);
      const open = level.map((places, i) => ({
        left: Math.min(places[0]!.x, places[1]!.x),
        right: Math.max(places[0]!.x, places[1]!.x),
        bottom: places[0]!.y - heights[i]!,
        top: places[0]!.y,
      }));
      const boxes = [...closed, ...open];
      expect(boxes).toHaveLength(sizes.length);
      for (const mark of marks) {
        const within = boxes.some(({ left, right, bottom, top }) =>
          placesOf(mark).every(
            ({ x, y }) => x >= left - ROUNDED && x <= right + ROUNDED && y >= bottom - ROUNDED && y <= top + ROUNDED,
          ),
        );
        if (!within) expect.fail(`a mark at ${JSON.stringify(placesOf(mark))} on no outline`);
      }
    }
  });

  it('in its PDF, whose words name angles as its scale does', async () => {
    let ranges = 0;
    for (const { pages } of await Promise.all(printed)) {
      for (const { texts, width, height } of pages) {
        for (const { text, x, y, width: wide } of texts) {
          if (text === 'tip' || text === 'throat') {
            expect(x > 0 && x + wide < width && y > 0 && y < height, `${text} at ${x}, ${y}`).toBe(true);
          }
        }
        const written = texts.map(({ text }) => text).join(' ');
        const named = [...written.matchAll(/(?:Tip at|Throat at|from|to|at) (−?\d+)°(?! clockwise| anticlockwise)/gu)];
        for (const [whole, degrees] of named) {
          if (/^(from|to)/u.test(whole)) ranges += 1;
          const angle = Number(degrees!.replace('−', '-'));
          expect(angle > -180 && angle <= 180, whole).toBe(true);
        }
      }
    }
    expect(ranges).toBeGreaterThan(3);
  });
});

it('no line of the demo runs through the words at tips and throats', () => {
  const face = lettering(fonts);
  let named = 0;
  for (const end of endsOf(demo)) {
    const wrap = paperWrap(end.tube, end.which, 'outer', 'mm');
    if (wrap === null) continue;
    const marks = wrapSurface(demo, face, end, wrap);
    const lines = marks.filter((mark): mark is Line => mark.kind === 'line' && mark.pen !== null);
    for (const mark of marks) {
      if (mark.kind !== 'words' || (mark.text !== 'tip' && mark.text !== 'throat')) continue;
      const [low, , high] = boxOf(mark, face);
      const box = { left: low!.x, bottom: low!.y, right: high!.x, top: high!.y };
      expect(clipped(lines, box), `${mark.text} of ${end.tube.name}, end ${end.which}`).toEqual([]);
      named += 1;
    }
  }
  expect(named).toBeGreaterThan(60);
});

it('no words stand on others on paper', async () => {
  for (const { pages } of await Promise.all(printed)) expect(pages.flatMap(overlapsOf)).toEqual([]);
});

describe('the lower edge is the sawn end', () => {
  it.each([
    ['the demo', demo],
    ['a bent tube askew on a thinner one', askew],
    ['random joints', null],
  ] as const)('on the templates, in their words and in fabrication.json: %s', async (_, one) => {
    for (const frame of one === null ? joints : [one]) {
      const patterns = await patternsOf(frame);
      const { tubes } = fabrication(frame);
      for (const { number, developedLength, blankLength, ends } of tubes) {
        const beyond = ends.map(({ tip, allowance }) => allowance - (tip ?? 0));
        expect(blankLength).toBeCloseTo(developedLength + beyond[0]! + beyond[1]!, 9);
        ends.forEach(({ tip, throat, allowance }, which) => {
          const pattern = patterns.find(({ fileName }) => fileName === `wraps/${number}-${'AB'[which]}.svg`);
          if (tip === null) return;
          const cut = pattern!.lines
            .filter(({ layer }) => layer !== 'MARK')
            .flatMap(({ places }) => places.map(([, y]) => y))
            .filter((y) => y < pattern!.height - ROUNDED);
          expect(Math.abs(Math.min(...cut) - Math.min(allowance, 25))).toBeLessThan(ROUNDED);
          expect(Math.abs(Math.max(...cut) - Math.min(...cut) - (throat! - tip))).toBeLessThan(ROUNDED);
          const shown = pattern!.words.match(/this edge ([\d.]+) mm from the sawn end/u);
          expect(Math.abs(Number(shown![1]) - pattern!.height)).toBeLessThan(0.05 + ROUNDED);
        });
      }
    }
  });

  it('is the one after the grip is off, at an end that has some, and only there', async () => {
    const dies = demo.job.dies.map((die) => ({ ...die, leastGrip: 600 }));
    const frame = derivedFrom(JSON.stringify({ ...demo.job, dies }));
    const gripped = frame.tubes.flatMap((tube) =>
      feedOf(frame.job, tube).grip.flatMap((length, i) => (length > 0 ? [`wraps/${tube.number}-${'AB'[i]}.svg`] : [])),
    );
    expect(gripped.length).toBeGreaterThan(0);
    const patterns = await wrapsSvg(frame, unwatched);
    const said = patterns.filter(({ bytes }) => new TextDecoder().decode(bytes).includes('grip'));
    expect(said.map(({ fileName }) => fileName)).toEqual(gripped);
  });
  it('on paper: from the sawn end and from the node differ by the tip', async () => {
    for (const { frame, pages } of await Promise.all(printed)) {
      const written = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
      const edges = [...written.matchAll(/square, ([\d.]+) mm from the sawn end, ([\d.]+) mm from the node/gu)];
      const tips = fabrication(frame).tubes.flatMap(({ ends }) =>
        ends.map(({ tip, allowance }) => (tip ?? 0) - allowance),
      );
      expect(edges.length).toBeGreaterThan(0);
      for (const [whole, sawn, node] of edges) {
        const least = Math.min(...tips.map((tip) => Math.abs(Number(node) - Number(sawn) - tip)));
        expect(least, whole).toBeLessThan(0.101);
      }
    }
  });

  it('on the layout: the same blank, and the bend as far from it', async () => {
    const texts = textsOf(readDxf((await layoutDxf(askew, unwatched)).bytes));
    const bent = fabrication(askew).tubes.find(({ id }) => id === 'bent')!;
    expect(texts.join('; ')).toContain(`finished blank ${bent.blankLength.toFixed(1)} mm`);
    const written = texts.find((text) => text.startsWith('1 start'))!;
    const [, shown] = /^1 start (\d+)(?: [+−])? mm$/u.exec(written)!;
    expect(Math.abs(Number(shown) - (bent.straights[0]! - bent.ends[0].tip!))).toBeLessThanOrEqual(0.5);
    // The wall passes the bar by, and goes on past the last degree that meets it.
    const listed = bent.ends[0].profile.flatMap((s) => (s === null ? [] : [s]));
    expect(listed.length).toBeLessThan(360);
    expect(Math.min(...listed) - bent.ends[0].tip!).toBeGreaterThan(0.1);
  });
});
