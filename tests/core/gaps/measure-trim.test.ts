/** Gaps to measured points and body lines: worked by hand, what is found of them, and what a frame that is moved, mirrored or edited keeps. */
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { measureTrim } from '../../../src/core/gaps/measure-trim.ts';
import { trimPlaces } from '../../../src/core/gaps/trim-places.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import { fabrication } from '../../../src/exports/tables/fabrication.ts';
import { derived, inWords, jobOf } from '../frame.ts';

type Records = Parameters<typeof derived>[0];
const square = [{ fit: 'square' }, { fit: 'square' }];
const point = (id: string, position: Vec3, more: object = {}) => ({ id, name: id.toUpperCase(), position, ...more });
/** A bar along x of 44.45 over the outside, 400 up and 300 to the left, and its twin. */
const bar = (points: object[], more: Records = {}): Records => ({
  lengthUnit: 'mm',
  points,
  nodes: { a: [-500, 300, 400], b: [500, 300, 400] },
  members: [{ id: 'bar', name: 'Bar', path: ['a', 'b'], mirror: true, ends: square }],
  torchGap: 0,
  ...more,
});
const gapsOf = (records: Records) => {
  const frame = derived(records);
  return measureTrim(frame, trimPlaces(frame), frame).flatMap(({ trim, gaps }) =>
    gaps.map(({ tube, distance }) => [trim.id, tube, Number(distance.toFixed(6))]),
  );
};

describe('the gap of a measured point', () => {
  it('is the distance to the axis less the radius, negative inside', () => {
    expect(gapsOf(bar([point('p', [0, 350, 400])]))).toEqual([
      ['p', 'bar', 27.775],
      ["p'", "bar'", 27.775],
    ]);
    expect(gapsOf(bar([point('p', [0, 310, 400])]))[0]).toEqual(['p', 'bar', -12.225]);
    // 30 beyond the end and 40 outside the wall.
    expect(gapsOf(bar([point('p', [530, 300 + 22.225 + 40, 400])]))[0]).toEqual(['p', 'bar', 50]);
  });
  it('has no image where the other side was measured, or on the centre plane', () => {
    expect(gapsOf(bar([point('l', [0, 350, 400]), point('r', [0, -352, 400])]))).toEqual([
      ['l', 'bar', 27.775],
      ['r', "bar'", 29.775],
    ]);
    const both = gapsOf(bar([point('m', [0, 0, 400], { leastGap: 10 })]));
    expect(both.map(([, tube]) => tube)).toEqual(['bar', "bar'"]);
  });
  it('is shown to 150 mm, and however far where one is asked for', () => {
    const far: Vec3 = [0, 300 + 22.225 + 150.1, 400];
    expect(gapsOf(bar([point('p', far)]))).toEqual([]);
    expect(gapsOf(bar([point('p', far, { leastGap: 20 })]))[0]).toEqual(['p', 'bar', 150.1]);
  });
  it('is less by the trim that goes over the point, and ends on the face of that', () => {
    const under = (y: number) => {
      const frame = derived(bar([point('p', [0, y, 400], { trim: 12 })]));
      return measureTrim(frame, trimPlaces(frame), frame)[0]!.gaps[0]!;
    };
    // The bar's outside is at 322.225: 27.775 from 350, of which 12 are trim.
    const clear = under(350);
    expect(clear.distance).toBeCloseTo(15.775, 9);
    expect(clear.at.map((part) => Number(part.toFixed(9)))).toEqual([0, 322.225, 400]);
    expect(clear.onTrim.map((part) => Number(part.toFixed(9)))).toEqual([0, 338, 400]);
    // 5 from the outside, so the face lies 7 in the tube; and a point that lies in it is so much deeper.
    expect(under(327.225).distance).toBeCloseTo(-7, 9);
    expect(under(327.225).onTrim[1]).toBeCloseTo(315.225, 9);
    expect(under(310).distance).toBeCloseTo(-24.225, 9);
    expect(under(322.225).distance).toBeCloseTo(-12, 9);
    // Seen to 150 from its face.
    expect(gapsOf(bar([point('p', [0, 300 + 22.225 + 161, 400], { trim: 12 })]))[0]).toEqual(['p', 'bar', 149]);
    expect(gapsOf(bar([point('p', [0, 300 + 22.225 + 163, 400], { trim: 12 })]))).toEqual([]);
  });
  it('is asked nowhere where a tube stands on the car', () => {
    const foot = { fit: 'plate', normal: [0, 0, 1] };
    const stood = (at: Vec3): Records => ({
      points: [point('p', at, { leastGap: 100 })],
      nodes: { a: [0, 300, 0], b: [0, 300, 900] },
      members: [{ id: 'post', path: ['a', 'b'], ends: [foot, { fit: 'square' }] }],
    });
    expect(gapsOf(stood([0, 340, 0])).filter(([id]) => id === 'p')).toEqual([]);
    expect(derived(stood([0, 340, 0])).findings.filter(({ id }) => id === 'gap/near-trim')).toEqual([]);
    expect(gapsOf(stood([0, 350, 0]))[0]).toEqual(['p', 'post', 27.775]);
  });
});

describe('the gap of a body line', () => {
  const line = (from: Vec3, to: Vec3, more: object = {}): Records =>
    bar([point('f', from), point('t', to)], { bodyLines: [{ id: 'rail', name: 'Rail', points: ['f', 't'], ...more }] });
  it('is taken between its points too', () => {
    expect(gapsOf(line([0, 330, 0], [0, 330, 900])).filter(([id]) => id === 'rail')).toEqual([['rail', 'bar', 7.775]]);
    expect(gapsOf(line([0, 310, 0], [0, 310, 900])).filter(([id]) => id === 'rail')).toEqual([
      ['rail', 'bar', -12.225],
    ]);
  });
  it('leaves out the part on which a tube stands', () => {
    const records: Records = {
      points: [point('f', [0, 300, 0]), point('t', [0, 900, 0])],
      bodyLines: [{ id: 'sill', name: 'Sill', points: ['f', 't'] }],
      nodes: { a: [0, 300, 0], b: [0, 300, 900] },
      members: [{ id: 'post', path: ['a', 'b'], ends: [{ fit: 'plate', normal: [0, 0, 1] }, { fit: 'square' }] }],
    };
    // From one diameter off the foot on: 44.45 from the axis.
    expect(gapsOf(records)).toEqual([['sill', 'post', 22.225]]);
  });
});

describe('what is found of it', () => {
  const near = (leastGap?: number) => bar([point('p', [0, 350, 400], leastGap === undefined ? {} : { leastGap })]);
  const found = (records: Records) => inWords(derived(records)).filter(({ id }) => id === 'gap/near-trim');
  it('names tube, point, gap, what is wanted, and how far to move', () => {
    expect(found(near(40)).map(({ severity, message, source }) => [severity, message, source])).toEqual([
      [
        'warning',
        'Bar (left) is 27.8 mm from P; 40.0 mm is wanted there. Move the tube 12.2 mm to the right.',
        'least gap set for this place in this job',
      ],
      [
        'warning',
        'Bar (right) is 27.8 mm from P, mirrored; 40.0 mm is wanted there. Move the tube 12.2 mm to the left.',
        'least gap set for this place in this job',
      ],
    ]);
    expect(found(near(27))).toEqual([]);
    expect(found(near())).toEqual([]);
  });
  it('moved as it says, there is the gap that is wanted', () => {
    for (const y of [350, 318, 300]) {
      const records = bar([point('p', [0, y, 410], { leastGap: 40 })]);
      const { move } = derived(records).findings.find(({ tube }) => tube === 'bar') as { move?: Vec3 } & object;
      const moved = { a: [-500, 300, 400], b: [500, 300, 400] } as Record<string, number[]>;
      for (const id of ['a', 'b']) moved[id] = moved[id]!.map((each, axis) => each + move![axis]!);
      expect(gapsOf({ ...records, nodes: moved })[0]![2]).toBeCloseTo(40, 5);
    }
  });
  it('stands in the fabrication file, with its place', () => {
    const file = fabrication(derived(near(40)));
    expect(file.trimGaps[0]).toMatchObject({
      point: 'p',
      tube: 'bar',
      wanted: 40,
      at: [0, 322.225, 400],
      onTrim: [0, 350, 400],
    });
    expect(file.findings[0]).toMatchObject({ id: 'gap/near-trim', point: 'p', tube: 'bar' });
    expect(fabrication(derived(near())).trimGaps[0]).toMatchObject({ wanted: null });
  });
});

describe('the door', () => {
  const faults = (leastGap: unknown) => {
    const job = JSON.parse(serialiseJob(jobOf(bar([point('p', [0, 350, 400])])))) as { points: object[] };
    const parsed = parseJob(JSON.stringify({ ...job, points: [{ ...job.points[0], leastGap }] }));
    return parsed.ok ? [] : parsed.faults.map(({ place, message }) => [place, message]);
  };
  it('takes 0 to 500 mm, and names the place of what it refuses', () => {
    expect(faults(0)).toEqual([]);
    expect(faults(500)).toEqual([]);
    expect(faults(-1)).toEqual([['points[0].leastGap', 'below zero']]);
    expect(faults(500.1)).toEqual([['points[0].leastGap', 'beyond 500 mm']]);
    expect(faults('wide')[0]![0]).toBe('points[0].leastGap');
  });
});

describe('a car that is', () => {
  const records = (place: (at: Vec3) => Vec3): Records => ({
    points: [point('p', place([40, 350, 430]), { leastGap: 30 }), point('q', place([300, 420, 600]), { leastGap: 90 })],
    bodyLines: [{ id: 'rail', name: 'Rail', points: ['p', 'q'], leastGap: 60 }],
    nodes: Object.fromEntries(
      Object.entries({ a: [-500, 300, 400], b: [200, 300, 400], c: [500, 380, 700], d: [40, 300, 100] }).map(
        ([id, at]) => [id, place(at as unknown as Vec3)],
      ),
    ),
    members: [
      { id: 'bent', path: ['a', 'b', 'c'], ends: square },
      { id: 'post', path: ['d', 'a'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
    ],
  });
  const ways: readonly [string, (at: Vec3) => Vec3][] = [
    ['moved', ([x, y, z]) => [x + 1234.5, y + 678.9, z + 300.1]],
    ['mirrored', ([x, y, z]) => [x, -y, z]],
  ];
  it.each(ways)('%s keeps every gap', (_, place) => {
    const own = (given: Records) => gapsOf(given).filter(([id]) => !String(id).endsWith("'"));
    const [before, after] = [own(records((at) => at)), own(records(place))];
    expect(before.length).toBeGreaterThan(2);
    expect(after.map(([id, tube]) => [id, tube])).toEqual(before.map(([id, tube]) => [id, tube]));
    after.forEach(([, , distance], i) => expect(distance).toBeCloseTo(Number(before[i]![2]), 4));
  });
  it('edited keeps the records of what it leaves alone, and answers as if it were new', () => {
    const job = jobOf(records((at) => at));
    const first = derive(job);
    const again = derive({ ...job, name: 'again' }, first.ok ? first.value : undefined);
    expect(first.ok && again.ok && again.value.trimGaps === first.value.trimGaps).toBe(true);
    for (const by of [1, -40, 200]) {
      const nodes = job.nodes.map((node) =>
        node.id === 'c' && node.at.kind === 'fixed'
          ? { ...node, at: { ...node.at, position: [500, 380 + by, 700] as const } }
          : node,
      );
      const [kept, fresh] = [derive({ ...job, nodes }, first.ok ? first.value : undefined), derive({ ...job, nodes })];
      expect(kept.ok && kept.value.trimGaps).toEqual(fresh.ok && fresh.value.trimGaps);
    }
  });
});
