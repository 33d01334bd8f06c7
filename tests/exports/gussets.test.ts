/** The gussets' sheets as a file, read back by programs that are not ours and held to figures by hand; and their block in the fabrication file. */
import type { IArcEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { unwatched } from '../../src/drawing/going.ts';
import { gussetsDxf } from '../../src/exports/gussets/patterns.ts';
import { fabrication } from '../../src/exports/tables/fabrication.ts';
import { bendJob, jointJob } from '../core/gusset/gusset-jobs.ts';
import { derived } from '../core/frame.ts';
import { auditDxf, hasEzdxf, outlinesOf, readDxf, textsOf } from './dxf.ts';

const boxOf = (vertices: readonly { readonly x: number; readonly y: number }[]) => {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
};

const read = async (frame: Parameters<typeof gussetsDxf>[0]) => readDxf((await gussetsDxf(frame, unwatched)).bytes);

describe('gussets.dxf', () => {
  it('has a right angle as one closed triangle of its legs, with its name, number and thickness', async () => {
    const drawing = await read(jointJob({ gusset: { name: 'Corner' } }));
    expect(drawing.header.$INSUNITS).toBe(4);
    const [outline, ...more] = outlinesOf(drawing, 'CUT');
    expect(more).toEqual([]);
    expect(outline!.shape).toBe(true);
    const { left, bottom } = boxOf(outline!.vertices);
    const places = outline!.vertices.map(({ x, y }) => [x - left, y - bottom]);
    expect(places).toEqual(
      [
        [0, 0],
        [100, 0],
        [0, 100],
      ].map((place) => place.map((at) => expect.closeTo(at, 6))),
    );
    expect(textsOf(drawing)).toEqual(expect.arrayContaining(['G1 Corner', 'Cut 1, 3.2 mm thick.']));
  });

  it('has the arc of a bend as an arc, joined to the lines', async () => {
    const drawing = await read(bendJob());
    const arcs = drawing.entities.filter((each): each is IArcEntity => each.type === 'ARC' && each.layer === 'CUT');
    expect(arcs.map(({ radius }) => radius)).toEqual([expect.closeTo(130.175, 6)]);
    const [lines] = outlinesOf(drawing, 'CUT');
    const { center, startAngle, endAngle } = arcs[0]!;
    const at = (angle: number) => [center.x + 130.175 * Math.cos(angle), center.y + 130.175 * Math.sin(angle)];
    const [first, last] = [lines!.vertices[0]!, lines!.vertices.at(-1)!];
    [at(startAngle), at(endAngle)].forEach(([x, y], i) => {
      expect(x).toBeCloseTo([last, first][i]!.x, 6);
      expect(y).toBeCloseTo([last, first][i]!.y, 6);
    });
  });

  it('unfolds a bent one, marks its fold and says how', async () => {
    const frame = jointJob({ gusset: { kind: 'bent', thickness: 3, width: 38, radius: 4 } });
    const drawing = await read(frame);
    const { top, bottom } = boxOf(outlinesOf(drawing, 'CUT')[0]!.vertices);
    const [, high] = fabrication(frame).gussets[0]!.size;
    expect(top - bottom).toBeCloseTo(high, 6);
    const lines = (layer: string) => drawing.entities.filter((each) => each.type === 'LINE' && each.layer === layer);
    expect([lines('BEND').length, lines('MARK').length]).toEqual([2, 4]);
    expect(textsOf(drawing).join(' ')).toContain('Bend 90° on both middle lines');
  });

  it('says which edge goes on which bar, and to which side a folded one is bent', async () => {
    // A right angle with legs of 140 and 90: the lower edge is the long one, and of the folded one the apex of each face lies off its left end by 140 cos(atan(90/140)).
    const flat = await read(jointJob({ legs: [140, 90] }));
    const box = boxOf(outlinesOf(flat, 'CUT')[0]!.vertices);
    expect(box.right - box.left).toBeCloseTo(140, 6);
    expect(textsOf(flat).join(' ')).toMatch(
      /lower edge lies along run towards end B, the edge that rises at the left along branch/u,
    );
    const bent = await read(
      jointJob({ legs: [140, 90], gusset: { kind: 'bent', thickness: 3, width: 38, radius: 4 } }),
    );
    const { vertices } = outlinesOf(bent, 'CUT')[0]!;
    const { left, right, top } = boxOf(vertices);
    const apex = vertices.find(({ y }) => Math.abs(y - top) < 1e-6)!;
    expect(apex.x - left).toBeGreaterThan(right - apex.x);
    expect(textsOf(bent).join(' ')).toMatch(
      /its left edges lie along run towards end B, its right edges along branch.*away from you/u,
    );
  });

  it('lays several out beside one another, says so where there is none, and leaves out what cannot be made', async () => {
    const { job } = jointJob();
    const between = job.gussets[0]!.between;
    const gussets = [0, 1, 2].map((i) => ({
      ...job.gussets[0]!,
      id: `g${i}`,
      between: between.map((leg) => ({ ...leg, leg: 80 + 40 * i })),
    }));
    const frame = jointJob();
    const three = await read(derivedWith(frame, gussets));
    const boxes = outlinesOf(three, 'CUT').map(({ vertices }) => boxOf(vertices));
    expect(boxes).toHaveLength(3);
    boxes.forEach((a, i) =>
      boxes.slice(i + 1).forEach((b) => {
        expect(a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top).toBe(false);
      }),
    );
    expect(textsOf(await read(derivedWith(frame, [])))).toContain('No gusset of this job can be cut.');
    const said = textsOf(await read(jointJob({ legs: [900, 90] })));
    expect(said).toContain('No gusset of this job can be cut.');
    expect(said.join(' ')).toContain('Not here: g: the leg along run is 900.0 mm');
  });

  it.runIf(hasEzdxf)('is in order for another reader', async () => {
    for (const frame of [
      jointJob(),
      bendJob({ gusset: { kind: 'bent', thickness: 3, width: 38, radius: 4 }, legs: [220, 220] }),
    ]) {
      const audit = auditDxf((await gussetsDxf(frame, unwatched)).bytes);
      expect(audit).toMatchObject({ version: 'AC1021', units: 4, troubles: [], undefined: [] });
    }
  });
});

/** The same frame with other gussets. */
function derivedWith(frame: ReturnType<typeof jointJob>, gussets: readonly object[]) {
  const { job } = frame;
  return derived({
    sections: [...job.sections],
    nodes: Object.fromEntries(job.nodes.map(({ id, at }) => [id, at])),
    members: [...job.members],
    gussets,
  });
}

describe('the fabrication file', () => {
  it('has each with its corner and free edge in the car', () => {
    const [gusset, ...more] = fabrication(jointJob()).gussets;
    expect(more).toEqual([]);
    const near = (place: readonly number[]) => place.map((part) => expect.closeTo(part, 9));
    expect(gusset).toMatchObject({
      id: 'g',
      kind: 'flat',
      between: [
        { bar: 'run', towards: 'B', leg: 100 },
        { bar: 'branch', towards: 'B', leg: 100 },
      ],
      angle: expect.closeTo(90, 9),
      corner: near([22.225, 0, 22.225]),
      freeEdge: [near([122.225, 0, 22.225]), near([22.225, 0, 122.225])],
      size: near([100, 100]),
      area: expect.closeTo(5000, 6),
    });
  });

  it('leaves out one that cannot be made', () => {
    expect(fabrication(jointJob({ legs: [900, 90] })).gussets).toEqual([]);
  });
});
