/** The feet's flat pieces as files, read back by programs that are not ours and held to figures by hand. */
import type { ICircleEntity, IDxf, ILineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { feetPdf } from '../../src/exports/feet/feet-pdf.ts';
import { feetDxf, feetSvg } from '../../src/exports/feet/patterns.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { secondRoundText } from '../command-line.ts';
import { derivedFrom, legJob } from '../core/feet/feet-jobs.ts';
import { auditDxf, hasEzdxf, outlinesOf, readDxf, textsOf } from './dxf.ts';
import { fonts } from './fonts.ts';
import { derivedFrom as derivedText } from './jobs.ts';
import { overlapsOf } from './overlap.ts';
import { readPdf } from './pdf.ts';

const HOLES = [
  { at: [-60, 30], diameter: 8.5 },
  { at: [-60, -30], diameter: 8.5 },
  { at: [80, 20], diameter: 10.5 },
];

/** A mirrored leg on a bent plate, handed by its third hole, and two lone struts on a box; a foot that nobody stands on. */
function job(name = 'Sill foot') {
  const kink = { runs: 'across', at: 45, angle: 30, radius: 4 };
  const base = legJob({ foot: { kind: 'plate', size: [200, 120], thickness: 4, kink, holes: HOLES }, mirror: true });
  const strut = (id: string, x: number) => ({
    nodes: [
      { id: `${id}-top`, at: { kind: 'fixed', position: [x, 0, 700] } },
      { id: `${id}-low`, at: { kind: 'fixed', position: [x, 0, 0] } },
    ],
    member: {
      id,
      path: [`${id}-top`, `${id}-low`],
      section: 's',
      ends: [{ fit: 'square' }, { fit: 'foot', foot: 'box', normal: [0, 0, 1] }],
    },
  });
  const [one, two] = [strut('one', -600), strut('two', -900)];
  return {
    ...base,
    name,
    lengthUnit: 'mm',
    nodes: [...base.nodes, ...one.nodes, ...two.nodes],
    feet: [
      { ...base.feet[0]!, name },
      { id: 'spare', name: 'Spare', kind: 'plate', size: [50, 50], thickness: 3 },
      { id: 'box', name: 'Floor box', kind: 'box', size: [100, 140], thickness: 4, height: 60, wall: 3 },
    ],
    members: [...base.members, one.member, two.member],
  };
}

const derived = derivedFrom(job());

const boxOf = (vertices: readonly { readonly x: number; readonly y: number }[]) => {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
};

const circlesOn = (drawing: IDxf, layer: string) =>
  drawing.entities.filter((each): each is ICircleEntity => each.type === 'CIRCLE' && each.layer === layer);

/** Of 30 degrees round 4 in plate of 4: the fibre lies 0.325 x 4 out (DIN 6935, r = t); set-back 4 tan 15. */
const ALLOWANCE = (Math.PI / 6) * (4 + 0.325 * 4);
const SET_BACK = 4 * Math.tan(Math.PI / 12);

describe('feet.dxf', () => {
  it('has every piece once, at its size, none over another, holes and bend where a tape finds them', async () => {
    const { fileName, bytes } = await feetDxf(derived, unwatched);
    expect(fileName).toBe('feet.dxf');
    const drawing = readDxf(bytes);
    expect(drawing.header.$INSUNITS).toBe(4);
    const boxes = outlinesOf(drawing, 'CUT').map(({ vertices }) => boxOf(vertices));
    const sizes = boxes.map(({ left, right, bottom, top }) => [right - left, top - bottom]);
    const close = (value: number): unknown => expect.closeTo(value, 6);
    expect(sizes).toEqual([
      [close(200 - 2 * SET_BACK + ALLOWANCE), close(120)],
      [close(100), close(140)],
      [close(140), close(60)],
      [close(94), close(60)],
    ]);
    boxes.forEach((a, i) =>
      boxes.slice(i + 1).forEach((b) => {
        expect(a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top).toBe(false);
      }),
    );
    const { left, bottom, top } = boxes[0]!;
    const holes = circlesOn(drawing, 'CUT').map(({ center, radius }) => [
      center.x - left,
      center.y - bottom,
      2 * radius,
    ]);
    expect(holes).toEqual([
      [close(40), close(90), close(8.5)],
      [close(40), close(30), close(8.5)],
      [close(180 - 2 * SET_BACK + ALLOWANCE), close(80), close(10.5)],
    ]);
    const bends = drawing.entities.filter((each): each is ILineEntity => each.type === 'LINE' && each.layer === 'BEND');
    expect(bends).toHaveLength(1);
    const [from, to] = bends[0]!.vertices;
    expect([from!.x - left, to!.x - left]).toEqual([
      close(145 - SET_BACK + ALLOWANCE / 2),
      close(145 - SET_BACK + ALLOWANCE / 2),
    ]);
    expect([from!.y, to!.y].toSorted((a, b) => a - b)).toEqual([close(bottom), close(top)]);
  });

  it('marks where the tube stands: the ellipse of the fabrication file, a ring under an upright strut', async () => {
    const drawing = readDxf((await feetDxf(derived, unwatched)).bytes);
    const [plate, top] = outlinesOf(drawing, 'CUT').map(({ vertices }) => boxOf(vertices));
    const [ellipse, ...more] = outlinesOf(drawing, 'MARK');
    expect(more).toEqual([]);
    const { outline, along, across } = fabrication(derived).feet[0]!;
    const [node] = derived.tubes[0]!.corners.slice(-1);
    const off = outline!.centre.map((value, k) => value - node![k]!);
    const on = (axis: readonly number[]) => axis.reduce((sum, each, k) => sum + each * off[k]!, 0);
    for (const { x, y } of ellipse!.vertices) {
      // Either focus lies so far from the middle, and both distances make the long axis.
      const long = outline!.longAxis;
      const focus = Math.sqrt(outline!.half[0] ** 2 - outline!.half[1] ** 2);
      const [u, w] = [along, across].map((axis) => axis.reduce((sum, each, k) => sum + each * long[k]!, 0)) as [
        number,
        number,
      ];
      const [px, py] = [x - plate!.left - 100 - on(along), y - plate!.bottom - 60 - on(across)];
      const both = Math.hypot(px - focus * u, py - focus * w) + Math.hypot(px + focus * u, py + focus * w);
      expect(both).toBeCloseTo(2 * outline!.half[0], 5);
    }
    const rings = circlesOn(drawing, 'MARK').map(({ center, radius }) => [
      center.x - top!.left,
      center.y - top!.bottom,
      radius,
    ]);
    expect(rings).toEqual([[expect.closeTo(50, 6), expect.closeTo(70, 6), expect.closeTo(22.225, 6)]]);
  });

  it('says how many to cut, and how many of them are bent the other way', async () => {
    const said = textsOf(readDxf((await feetDxf(derived, unwatched)).bytes)).join('\n');
    expect(said).toContain('F1 Sill foot: plate');
    expect(said).toContain('Cut 2, 4.0 mm thick. Bend 1 as drawn and 1 the other way');
    expect(said).toContain('F3 Floor box: box, long wall');
    expect(said.match(/Cut 4, 3\.0 mm/gu)).toHaveLength(2);
    expect(said).not.toContain('Spare');
  });

  it.skipIf(!hasEzdxf)('passes ezdxf’s audit, which finds the same outlines', async () => {
    const { bytes } = await feetDxf(derived, unwatched);
    const audit = auditDxf(bytes);
    expect(audit).toMatchObject({ units: 4, troubles: [], undefined: [], open: 0 });
    expect(audit.cut).toEqual(
      outlinesOf(readDxf(bytes), 'CUT').map(({ vertices }) => vertices.map(({ x, y }) => [x, y])),
    );
  });

  it('of a job without feet says so', async () => {
    const drawing = readDxf((await feetDxf(derivedText(secondRoundText()), unwatched)).bytes);
    expect(outlinesOf(drawing, 'CUT')).toEqual([]);
    expect(textsOf(drawing)).toContain('No end of this job stands on a foot.');
    expect(await feetSvg(derivedText(secondRoundText()), unwatched)).toEqual([]);
  });
});

describe('feet/*.svg', () => {
  it('are one a piece, named by its place in the job, full size, whatever a foot is called', async () => {
    const files = await feetSvg(derivedFrom(job('../../<script>alert(1)</script>')), unwatched);
    expect(files.map(({ fileName }) => fileName)).toEqual([
      'feet/1-plate.svg',
      'feet/3-top.svg',
      'feet/3-long-wall.svg',
      'feet/3-short-wall.svg',
    ]);
    const texts = files.map(({ bytes }) => new TextDecoder().decode(bytes));
    expect(texts[2]).toContain('width="140mm" height="60mm" viewBox="0 0 140 60"');
    expect(texts[0]).not.toContain('<script');
    expect(texts[0]).toContain('Bend down 30.0°');
    expect(texts[0]).toMatch(/<circle cx="40" cy="30" r="4.25"/u);
  });
});

describe('feet.pdf', () => {
  it('has every piece with its count, holes from the edges, areas and mass, no word over another', async () => {
    for (const paper of ['a4', 'letter'] as const) {
      const { pages } = await readPdf((await feetPdf(derived, fonts, { ...plainPrint, paper }, unwatched)).bytes);
      expect(pages.flatMap(overlapsOf)).toEqual([]);
      const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
      expect(said).toContain('Under 1 B, 2 B.');
      expect(said).toContain('1 at 40.0, 90.0, Ø 8.5; 2 at 40.0, 30.0, Ø 8.5');
      // Walls 100 x 140 outside, 94 x 134 inside.
      expect(said).toContain(
        `touches the car with ${((14_000 - 94 * 134) / 100).toFixed(1)} cm² (the foot of its walls) and covers 140.0 cm²`,
      );
      const mass = (100 * 140 * 4 + (14_000 - 94 * 134) * 60) * 7.85e-6;
      expect(said).toContain(`${mass.toFixed(2)} kg in all`);
    }
  });

  it('draws a piece at full size, and one that is larger than the page in sheets', async () => {
    const large = job();
    large.feet[2] = { ...(large.feet[2] as object), size: [300, 240] } as (typeof large.feet)[2];
    const { pages } = await readPdf((await feetPdf(derivedFrom(large), fonts, plainPrint, unwatched)).bytes);
    const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text));
    expect(said.filter((text) => /F3, sheet [AB]\d/u.test(text)).length).toBeGreaterThan(1);
    const { pages: none } = await readPdf(
      (await feetPdf(derivedText(secondRoundText()), fonts, plainPrint, unwatched)).bytes,
    );
    expect(none).toHaveLength(1);
    expect(none[0]!.texts.map(({ text }) => text)).toContain('No end of this job stands on a foot.');
  });

  it('is the same bytes for the same job', async () => {
    const made = async () => (await feetPdf(derivedFrom(job()), fonts, plainPrint, unwatched)).bytes;
    expect(Buffer.compare(await made(), await made())).toBe(0);
  });
});
