/** Where a hole has room: figures by hand, and every edge that lies on a tube laid out degree by degree. */
import { describe, expect, it } from 'vitest';
import { asksForPlace, holePlace } from '../../../src/core/dossier/hole-places.ts';
import type { Derived } from '../../../src/core/derive.ts';
import type { LinePiece } from '../../../src/core/geometry/path.ts';
import { cross, dot, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { demoText, secondRoundText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derived, tube } from '../frame.ts';

const OD = 44.45;
const SQUARE = [{ fit: 'square' }, { fit: 'square' }];
const rail = { id: 'rail', role: 'main-hoop', path: ['a', 'b'], ends: SQUARE };

describe('by hand', () => {
  it('in the middle of the longer part beside a square joint', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [2000, 0, 0], c: [500, 0, 0], d: [500, 0, 600] },
      members: [rail, { id: 'post', path: ['c', 'd'] }],
    });
    const place = holePlace(frame, tube(frame, 'rail'))!;
    // Free from the joint's edge, half a diameter past 500, to the end at 2000.
    const [from, to] = [500 + OD / 2, 2000];
    expect(place.fromTipA).toBeCloseTo((from + to) / 2, 9);
    expect(place.fromTipB).toBeCloseTo((to - from) / 2, 9);
    expect(place.clear).toBeCloseTo((to - from) / 2 - OD, 9);
    expect(place.straight).toBe(0);
  });

  it('beside a joint at 30 degrees by as far as its edge reaches on its acute side', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [2000, 0, 0], c: [500, 0, 0], d: [500 + 600 * Math.cos(Math.PI / 6), 0, 300] },
      members: [rail, { id: 'post', path: ['c', 'd'] }],
    });
    // On the acute side, along the run: r / sin 30 of the branch and r / tan 30 of the run, r half the diameter.
    const from = 500 + OD / 2 / 0.5 + OD / 2 / Math.tan(Math.PI / 6);
    expect(holePlace(frame, tube(frame, 'rail'))!.fromTipA).toBeCloseTo((from + 2000) / 2, 9);
  });

  it('nowhere where joints stand closer than that', () => {
    const feet = [100, 210, 320].map((x) => [`c${x}`, [x, 0, 0]] as const);
    const heads = [100, 210, 320].map((x) => [`d${x}`, [x, 0, 600]] as const);
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [420, 0, 0], ...Object.fromEntries([...feet, ...heads]) },
      members: [rail, ...[100, 210, 320].map((x) => ({ id: `post${x}`, path: [`c${x}`, `d${x}`] }))],
    });
    expect(holePlace(frame, tube(frame, 'rail'))).toBeNull();
  });

  it('clear of a gusset’s leg', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], b: [2000, 0, 0], c: [500, 0, 0], d: [500, 0, 600] },
      members: [rail, { id: 'post', path: ['c', 'd'] }],
      gussets: [
        {
          id: 'g',
          kind: 'flat',
          node: 'c',
          between: [
            { member: 'rail', towards: 'B', leg: 300 },
            { member: 'post', towards: 'B', leg: 300 },
          ],
          thickness: 3,
          mirror: false,
        },
      ],
    });
    // The leg is counted from where the two surfaces' lines meet: half a diameter past the post's axis.
    expect(holePlace(frame, tube(frame, 'rail'))!.fromTipA).toBeCloseTo((500 + OD / 2 + 300 + 2000) / 2, 6);
  });
});

it.each(['main-hoop', 'front-hoop', 'side-hoop', 'rear-stay', 'front-leg'])('is asked for by the role %s', (role) => {
  const frame = derived({ nodes: { a: [0, 0, 0], b: [900, 0, 0] }, members: [{ ...rail, role }] });
  expect(asksForPlace(tube(frame, 'rail'))).toBe(true);
});

it.each(['main-diagonal', 'hooped', ''])('is not asked for by %j', (role) => {
  const frame = derived({ nodes: { a: [0, 0, 0], b: [900, 0, 0] }, members: [{ ...rail, role }] });
  expect(asksForPlace(tube(frame, 'rail'))).toBe(false);
});

/** The places of all cut edges that lie on the tube, mm along the straight piece. */
function edgesOn({ tubes }: Derived, run: SolvedTube, piece: LinePiece): number[] {
  const radius = run.section.outerDiameter / 2;
  return tubes.flatMap((branch) =>
    branch.ends.flatMap(({ position, direction, reference, outer }) => {
      const third = cross(direction, reference);
      const half = branch.section.outerDiameter / 2;
      return Array.from(outer).flatMap((trim, k) => {
        const [c, s] = [half * Math.cos((k * Math.PI) / 180), half * Math.sin((k * Math.PI) / 180)];
        const at = position.map((p, i) => p + trim * direction[i]! + c * reference[i]! + s * third[i]!);
        const off = subtract(at as unknown as Vec3, piece.from);
        const along = dot(off, piece.startTangent);
        const aside = Math.sqrt(Math.max(0, dot(off, off) - along * along));
        return Math.abs(aside - radius) < 0.5 && branch !== run ? [along] : [];
      });
    }),
  );
}

/** Whether some joint's axis passes the tube's at a distance. */
const passed = ({ tubes }: Derived, run: SolvedTube): boolean =>
  tubes.some(({ ends }) =>
    ends.some(({ cuts }) => cuts.some((cut) => cut.against === run.bar && Math.abs(cut.axisOffset) > 1e-9)),
  );

describe.each([
  ['the demo', demoText()],
  ['an earlier demo', secondRoundText()],
])('in %s', (_, text) => {
  const frame = derivedFrom(text);

  it('no edge of a joint and no bend lies nearer to it than is said, and no straight has more room than is found', () => {
    let asked = 0;
    for (const run of frame.tubes) {
      const place = holePlace(frame, run);
      const rooms = run.path.pieces.flatMap((piece) => {
        if (piece.kind === 'arc') return [];
        const [first, last] = [piece.at === 0, piece.at + piece.length > run.path.length - 1e-6];
        const [a, b] = run.ends.map(({ throat }) => throat ?? 0) as [number, number];
        const [from, to] = [first ? a : 0, piece.length - (last ? b : 0)];
        const edges = edgesOn(frame, run, piece).filter((at) => at > from && at < to);
        const stops = [from, ...edges, to].toSorted((one, other) => one - other);
        return stops.slice(1).map((stop, i) => ({ piece, from: stops[i]!, to: stop }));
      });
      const most = Math.max(...rooms.map(({ from, to }) => (to - from) / 2)) - run.section.outerDiameter;
      if (place === null) {
        expect(most, run.id).toBeLessThan(run.section.outerDiameter);
        continue;
      }
      asked += 1;
      const { piece, from, to } = rooms.find(
        (room) => place.at >= room.piece.at + room.from && place.at <= room.piece.at + room.to,
      )!;
      const reach = place.clear + run.section.outerDiameter;
      expect(place.at - (piece.at + from), run.id).toBeGreaterThan(reach - 0.01);
      expect(piece.at + to - place.at, run.id).toBeGreaterThan(reach - 0.01);
      // Of edges that are looked at every degree; where axes pass each other more is held free than they take.
      if (!passed(frame, run)) expect(place.clear, run.id).toBeGreaterThan(most - 0.5);
      expect(place.fromTipA + place.fromTipB).toBeCloseTo(run.developedLength - run.ends[0].tip! - run.ends[1].tip!, 6);
    }
    expect(asked).toBeGreaterThan(10);
  });
});
