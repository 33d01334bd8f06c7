import { describe, expect, it } from 'vitest';
import { boxFrame } from '../../../src/core/geometry/solid-box.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { projectionOf } from '../../../src/view/camera/projection.ts';
import { pick } from '../../../src/view/canvas/pick.ts';
import { sightOf } from '../../../src/view/canvas/sight.ts';
import { standsOf } from '../../../src/core/feet/stand.ts';
import { derivedLeg } from '../../core/feet/feet-jobs.ts';
import { tubeByHand, walkPath } from '../../core/mesh/by-hand.ts';

const END = { reference: [0, 0, 1], trim: () => 0 } as const;

/** Looking along -x with 1 pixel a mm: screen right is the car's left. */
const view = projectionOf({ target: [0, 0, 0], yaw: 0, pitch: 0, span: 600 }, 800, 600);

function tubeAt(id: string, x: number, z: number): SolvedTube {
  const path = walkPath([0, 1, 0], [{ straight: 300 }]);
  const [piece] = path.pieces;
  const moved = { ...piece!, from: [x, -150, z], to: [x, 150, z] } as const;
  return { ...tubeByHand({ ...path, pieces: [moved] }, [END, END]), id };
}

const head = { id: 'head', box: boxFrame([0, 0, -150], [300, 200, 100], [0, 0, 0]) };
const scene = (tubes: SolvedTube[]) => ({ tubes: sightOf(tubes), spots: [], feet: [], envelopes: [head] });

describe('picking', () => {
  it('takes the tube nearer to the eye where two cross', () => {
    // The eye stands at +x.
    const tubes = [tubeAt('far', -200, 0), tubeAt('near', 200, 10), tubeAt('middle', 0, 0)];
    expect(pick(scene(tubes), view, 400, 300, 4)).toEqual({ kind: 'tube', id: 'near' });
  });

  it('hits the wall, not only the centreline, and lets a finger miss by its reach', () => {
    const tubes = [tubeAt('t', 0, 0)];
    expect(pick(scene(tubes), view, 400, 300 - 22, 0)).toEqual({ kind: 'tube', id: 't' });
    expect(pick(scene(tubes), view, 400, 300 - 30, 0)).toBeNull();
    expect(pick(scene(tubes), view, 400, 300 - 30, 16)).toEqual({ kind: 'tube', id: 't' });
  });

  it('prefers a hit over a nearer near-miss, and a node or point over both', () => {
    const tubes = [tubeAt('hit', -200, 0), tubeAt('missed', 200, 40)];
    expect(pick(scene(tubes), view, 400, 300 - 10, 16)).toEqual({ kind: 'tube', id: 'hit' });
    const spots = [{ selection: { kind: 'node', id: 'n' }, at: [-500, 5, 0] } as const];
    expect(pick({ ...scene(tubes), spots }, view, 400, 300, 4)).toEqual({ kind: 'node', id: 'n' });
  });

  it('takes the tube that stands on the foot under the pointer, and the tube before the foot', () => {
    const foot = { kind: 'box', size: [300, 300], thickness: 4, height: 60 };
    const { tubes } = derivedLeg({ foot, top: [0, 100, 250], floor: [0, 100, 0], mirror: true });
    const standing = { ...scene([...tubes]), feet: tubes.flatMap(standsOf), envelopes: [] };
    expect(pick(standing, view, 400 + 240, 300 - 30, 4)).toEqual({ kind: 'tube', id: 'leg' });
    expect(pick(standing, view, 400 - 240, 300 - 30, 4)).toEqual({ kind: 'tube', id: "leg'" });
    expect(pick(standing, view, 400 + 255, 300 - 30, 4)).toBeNull();
    expect(pick(standing, view, 400 + 240, 300 - 70, 4)).toBeNull();
    // The twin's foot lies over part of the leg's own: the leg itself is what is pressed.
    expect(pick(standing, view, 400 + 100, 300 - 30, 4)).toEqual({ kind: 'tube', id: 'leg' });
  });

  it('finds the box behind no tube, and nothing on the bare floor', () => {
    expect(pick(scene([]), view, 400 + 90, 300 + 190, 4)).toEqual({ kind: 'envelope', id: 'head' });
    expect(pick(scene([]), view, 400 + 110, 300 + 150, 4)).toBeNull();
  });
});
