/** Tubes that stand as they were bent: against frames that are drawn so, and against the fit found by turning and shifting by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { drawn } from '../../draws.ts';
import { fixed, type Triple } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';

const SECTION = { id: 's', outerDiameter: 40, wall: 2.5 };
const DIE = { id: 'd', outerDiameter: 40, centrelineRadius: 120 };

/** A hoop that spans the car, a bar across it, a stay on either side that stands on it, and a brace that stands on the stays. */
function frame(hoop: readonly Triple[], bent: readonly object[] = [], more: object = {}) {
  return jobOf({
    nodes: {
      ...Object.fromEntries(hoop.map((place, i) => [`h${i}`, place])),
      'stay-top': { kind: 'on', member: 'hoop', bend: 1, where: 'start', distance: -60 },
      'stay-foot': [-900, 520, 250],
      bar: { kind: 'on', member: 'hoop', until: { axis: 'z', value: 610 } },
      brace: { kind: 'on', member: 'stay', from: 'start', distance: 400 },
    },
    sections: [SECTION],
    dies: [DIE],
    members: [
      { id: 'hoop', section: 's', die: 'd', path: hoop.map((_, i) => `h${i}`) },
      { id: 'bar', section: 's', path: ['bar', "bar'"] },
      { id: 'stay', section: 's', path: ['stay-top', 'stay-foot'], mirror: true },
      { id: 'brace', section: 's', path: ['brace', "brace'"] },
    ],
    bent,
    ...more,
  });
}

const HOOP: readonly Triple[] = [
  [0, 610, 0],
  [10, 590, 700],
  [15, 430, 1120],
  [15, -430, 1120],
  [10, -590, 700],
  [0, -610, 0],
];

function derived(job: ReturnType<typeof frame>, previous?: Derived): Derived {
  const derivation = derive(job, previous);
  if (!derivation.ok) throw new Error(derivation.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return derivation.value;
}

const order = (tube: SolvedTube, front: 'A' | 'B' = 'A') => tube.bends.map((_, i) => ({ bend: i + 1, front }));
const inDegrees = (radians: number) => (radians * 180) / Math.PI;
const apart = (a: Triple, b: Triple) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const hoopOf = (frame: Derived) => frame.byId.get('hoop')!;

/** Every bend and straight measured: as it is on that tube. */
const measuredAs = (tube: SolvedTube) =>
  tube.bends.map((bend, i) => ({
    bend: i + 1,
    pulled: inDegrees(bend.angle) + 3,
    net: inDegrees(bend.angle),
    straight: tube.straights[i]!,
    ...(i > 0 && { rotation: inDegrees(bend.rotation) }),
  }));

describe('a tube that stands as it was built', () => {
  const plan = derived(frame(HOOP));

  it('is the drawn one while nothing is measured, and then nothing of the frame moves', () => {
    const hoop = hoopOf(plan);
    for (const front of ['A', 'B'] as const) {
      const run = { tube: 'hoop', stands: true, order: order(hoop, front), done: [], bends: [], checks: [] };
      for (const bent of [run, { ...run, drawn: drawnTube(hoop) }]) {
        const now = derived(frame(HOOP, [bent]));
        for (const tube of now.tubes) {
          const before = plan.byId.get(tube.id)!;
          tube.corners.forEach((corner, i) => expect(apart(corner, before.corners[i]!)).toBeLessThan(1e-9));
          tube.ends.forEach((end, which) =>
            end.outer.forEach((trim, phi) => expect(trim).toBeCloseTo(before.ends[which as 0 | 1].outer[phi]!, 4)),
          );
        }
      }
    }
  });

  it('carries all that stands on it: the frame is that of a hoop which is drawn so', () => {
    const off = fc
      .tuple(...HOOP.map(() => fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -60, max: 60 })))))
      .map((moves) => HOOP.map((place, i) => place.map((value, k) => value + moves[i]![k]! / 10) as unknown as Triple));
    fc.assert(
      fc.property(off, fc.constantFrom<'A' | 'B'>('A', 'B'), (asItCame, front) => {
        // Drawn as it came out, so that its own two ends and corners are where the fit brings them.
        const real = hoopOf(derived(frame(asItCame)));
        const run = {
          tube: 'hoop',
          stands: true,
          order: order(real, front),
          done: [],
          bends: measuredAs(real),
          checks: [],
          drawn: { ...drawnTube(real), angles: drawnTube(hoopOf(plan)).angles },
        };
        // What is kept of the drawing says how long the tube is: as long as the real one.
        const { starts: _, ...kept } = drawnTube(real);
        const now = derived(frame(HOOP, [{ ...run, drawn: kept }]));
        const stood = hoopOf(now);
        const again = derived(frame(stood.corners));
        expect(hoopOf(again).developedLength).toBeCloseTo(real.developedLength, 6);
        // The stays' tops and the bar follow along the tube itself, on the other side at the place nearest the mirror image.
        for (const id of ['stay-top', 'bar']) {
          expect(apart(now.nodes.get(id)!, again.nodes.get(id)!), id).toBeLessThan(1e-6);
          const image = now.nodes.get(`${id}'`)!;
          const mirror = again.nodes.get(`${id}'`)!;
          const nearest = nearestBySampling(hoopOf(again), mirror);
          expect(apart(image, nearest)).toBeLessThan(0.15);
          expect(apart(image, mirror)).toBeLessThanOrEqual(apart(nearest, mirror) + 1e-9);
        }
        const [one, other] = [now.byId.get('stay')!, again.byId.get('stay')!];
        expect(one.blankLength).toBeCloseTo(other.blankLength, 5);
        one.ends[0].outer.forEach((trim, phi) => expect(trim).toBeCloseTo(other.ends[0].outer[phi]!, 4));
      }),
      fixed(drawn(6, 300)),
    );
  });

  it('and cuts bars where the one that runs through them then lies: as in a frame that is drawn so', () => {
    const braced = (hoop: readonly Triple[], bent: readonly object[] = []) => {
      const on = (distance: number) => ({ kind: 'on', member: 'hoop', from: 'start', distance });
      return jobOf({
        nodes: {
          ...Object.fromEntries(hoop.map((place, i) => [`h${i}`, place])),
          'p-foot': on(300),
          'p-top': on(1900),
          'q-foot': on(2700),
          'q-top': on(1000),
        },
        sections: [SECTION],
        dies: [DIE],
        members: [
          { id: 'hoop', section: 's', die: 'd', path: hoop.map((_, i) => `h${i}`) },
          { id: 'p', section: 's', path: ['p-foot', 'p-top'] },
          { id: 'q', section: 's', path: ['q-foot', 'q-top'], cutBy: ['p'] },
        ],
        bent,
      });
    };
    const turns = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(turns, (off) => {
        const plan = hoopOf(derived(braced(HOOP)));
        const bends = plan.bends.map(({ angle, rotation }, i) => ({
          bend: i + 1,
          pulled: inDegrees(angle) + 6,
          net: inDegrees(angle) + off[i]! / 10,
          ...(i > 0 && { rotation: inDegrees(rotation) + off[3 + i]! / 10 }),
        }));
        const now = derived(
          braced(HOOP, [{ tube: 'hoop', stands: true, order: order(plan), done: [], bends, checks: [] }]),
        );
        const again = derived(braced(hoopOf(now).corners));
        for (const id of ['q.1', 'q.2']) {
          const [one, other] = [now.byId.get(id)!, again.byId.get(id)!];
          expect(one.blankLength).toBeCloseTo(other.blankLength, 5);
          one.ends.forEach((end, which) => {
            const { position, outer } = other.ends[which as 0 | 1];
            expect(apart(end.position, position)).toBeLessThan(1e-6);
            end.outer.forEach((trim, phi) => {
              // At the very edge of a strip rounding decides.
              if (!Number.isNaN(trim) && !Number.isNaN(outer[phi]!)) expect(trim).toBeCloseTo(outer[phi]!, 3);
            });
          });
        }
        const strips = (frame: Derived) =>
          frame.findings.filter(({ id }) => id.startsWith('piece/strip')).map((f) => f.id);
        expect(strips(now)).toEqual(strips(again));
      }),
      fixed(drawn(6, 100)),
    );
  });

  it('lies where its ends and corners come nearest to the drawn ones: no turn and no shift by hand comes nearer', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 4, maxLength: 4 }),
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 3 }),
        (nets, rotations) => {
          const hoop = hoopOf(plan);
          const bends = hoop.bends.map(({ angle, rotation }, i) => ({
            bend: i + 1,
            pulled: inDegrees(angle) + 6,
            net: inDegrees(angle) + nets[i]! / 10,
            ...(i > 0 && { rotation: inDegrees(rotation) + rotations[i - 1]! / 10 }),
          }));
          const run = { tube: 'hoop', stands: true, order: order(hoop), done: [], bends, checks: [] };
          const { corners } = hoopOf(derived(frame(HOOP, [run])));
          const sum = (places: readonly Triple[]) =>
            places.reduce((total, place, i) => total + apart(place, hoop.corners[i]!) ** 2, 0);
          const least = sum(corners);
          const centre = corners.reduce((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]] as Triple).map((v) => v / 6);
          for (const axis of [0, 1, 2]) {
            for (const step of [-1e-3, 1e-3]) {
              const shifted = corners.map(
                (p) => p.map((v, k) => v + (k === axis ? 200 * step : 0)) as unknown as Triple,
              );
              expect(sum(shifted)).toBeGreaterThan(least);
              const [i, k] = [(axis + 1) % 3, (axis + 2) % 3];
              const turned = corners.map((p) => {
                const [a, b] = [p[i]! - centre[i]!, p[k]! - centre[k]!];
                const q = [...p];
                q[i] = centre[i]! + a * Math.cos(step) - b * Math.sin(step);
                q[k] = centre[k]! + a * Math.sin(step) + b * Math.cos(step);
                return q as unknown as Triple;
              });
              expect(sum(turned)).toBeGreaterThan(least);
            }
          }
        },
      ),
      fixed(drawn(15, 300)),
    );
  });

  it('is coped and met as drawn: an end whose node it leaves by more than a tube counts as meeting is still coped to it', () => {
    const hoop = hoopOf(plan);
    const bends = hoop.bends.map(({ angle }, i) => ({
      bend: i + 1,
      pulled: inDegrees(angle) + 6,
      net: inDegrees(angle) + 2,
    }));
    const now = derived(frame(HOOP, [{ tube: 'hoop', stands: true, order: order(hoop), done: [], bends, checks: [] }]));
    expect(now.byId.get("stay'")!.ends[0].cuts.map(({ against }) => against)).toEqual(['hoop']);
    expect(apart(hoopOf(now).corners[0]!, now.nodes.get('h0')!)).toBeGreaterThan(2);
    expect(hoopOf(now).ends[0].position).toEqual(hoopOf(now).corners[0]);
    // As the drawing wants it, in the frame as it is: between the nodes of its path.
    expect(hoopOf(now).asDrawn!.corners).toEqual(hoop.corners);
  });

  it('of a pair stands alone: the other stays as drawn, and what stands on both goes by each', () => {
    const stay = plan.byId.get('stay')!;
    const run = {
      tube: 'stay',
      stands: true,
      order: [],
      done: [],
      bends: [],
      checks: [],
      drawn: { ...drawnTube(stay), legs: [stay.developedLength + 6] },
    };
    const now = derived(frame(HOOP, [run]));
    expect(now.byId.get("stay'")).toStrictEqual(plan.byId.get("stay'"));
    expect(now.byId.get('stay')!.developedLength).toBeCloseTo(stay.developedLength + 6, 9);
    // Six longer and laid with as much over at either end, so 400 along from its own end A lies 3 nearer the hoop.
    expect(apart(now.nodes.get('brace')!, plan.nodes.get('brace')!)).toBeCloseTo(3, 9);
    expect(apart(now.nodes.get("brace'")!, plan.nodes.get("brace'")!)).toBeLessThan(1e-9);
  });

  it('is left as drawn where it was bent with another number of bends', () => {
    const hoop = hoopOf(plan);
    const run = { tube: 'hoop', stands: true, order: [], done: [], bends: [], checks: [], drawn: drawnTube(hoop) };
    const straighter = HOOP.filter((_, i) => i !== 1 && i !== 4);
    const now = derived(frame(straighter, [run]));
    expect(hoopOf(now).asDrawn).toBeNull();
    expect(hoopOf(now).bends).toHaveLength(2);
  });

  it('is found off the nodes of its path, by how much; the angles that are kept for its corners are the drawing’s', () => {
    const hoop = hoopOf(plan);
    const bends = [{ bend: 2, pulled: inDegrees(hoop.bends[1]!.angle) + 5, net: inDegrees(hoop.bends[1]!.angle) + 1 }];
    const keptAngles = [{ corner: 'h2', angle: inDegrees(hoop.bends[1]!.angle) }];
    const job = frame(HOOP, [{ tube: 'hoop', stands: true, order: order(hoop), done: [], bends, checks: [] }]);
    const kept = { ...job, members: job.members.map((each) => (each.id === 'hoop' ? { ...each, keptAngles } : each)) };
    const now = derived(kept);
    const off = now.findings.flatMap((finding) => (finding.id === 'made/off-node' ? [finding] : []));
    expect(now.findings.filter(({ id }) => id === 'bend/angle-not-kept')).toEqual([]);
    expect(off.length).toBeGreaterThan(3);
    const corners = hoopOf(now).corners;
    for (const { node, distance, severity } of off) {
      expect(severity).toBe('note');
      expect(distance).toBeCloseTo(apart(corners[Number(node.slice(1))]!, now.nodes.get(node)!), 9);
    }
  });

  it('comes out the same from scratch as from what was derived before', () => {
    const hoop = hoopOf(plan);
    let before = plan;
    for (const net of [1.5, 0.5, -0.7]) {
      const bends = [
        { bend: 2, pulled: inDegrees(hoop.bends[1]!.angle) + 5, net: inDegrees(hoop.bends[1]!.angle) + net },
      ];
      const job = frame(HOOP, [{ tube: 'hoop', stands: true, order: order(hoop), done: [], bends, checks: [] }]);
      const step = derived(job, before);
      const afresh = derived(job);
      expect(step.tubes).toStrictEqual(afresh.tubes);
      expect(step.nodes).toStrictEqual(afresh.nodes);
      before = step;
    }
    expect(derived(frame(HOOP), before).tubes).toStrictEqual(plan.tubes);
  });
});

/** On the tube's straights and arcs by sampling, a place every 0.2 mm. */
function nearestBySampling(tube: SolvedTube, place: Triple): Triple {
  let [best, least]: [Triple, number] = [place, Infinity];
  for (const piece of tube.path.pieces) {
    const steps = Math.ceil(piece.length / 0.2);
    for (let i = 0; i <= steps; i++) {
      const at = alongPiece(piece, i / steps);
      const far = apart(at, place);
      if (far < least) [best, least] = [at, far];
    }
  }
  return best;
}

function alongPiece(piece: SolvedTube['path']['pieces'][number], share: number): Triple {
  if (piece.kind === 'line') return piece.from.map((v, k) => v + share * (piece.to[k]! - v)) as unknown as Triple;
  const spoke = piece.from.map((v, k) => v - piece.centre[k]!);
  const [c, s] = [Math.cos(share * piece.angle), Math.sin(share * piece.angle)];
  return piece.centre.map((v, k) => v + c * spoke[k]! + s * piece.radius * piece.startTangent[k]!) as unknown as Triple;
}
