/** Draws each frame from where the viewpoint is: sets the camera, the depth of the haze, and the labels. */
import { useEffect, type RefObject } from 'react';
import { Matrix4, Vector3 } from 'three';
import { dot, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import { useEachFrame, useStage } from '../canvas/parts.tsx';
import type { PlaceLabels } from './LabelLayer.tsx';
import { EYE_DISTANCE, hazeOver, type Finishes } from '../scene/steel.ts';

interface Props {
  readonly viewpoint: Viewpoint;
  readonly finishes: Finishes;
  readonly placer: RefObject<PlaceLabels>;
  /** What else is put up over the picture. */
  readonly overlay?: RefObject<PlaceLabels>;
  /** Middle of the frame and its size, for the haze. */
  readonly middle: Vec3;
  readonly depth: number;
}

const basis = new Matrix4();
const [right, up, back] = [new Vector3(), new Vector3(), new Vector3()];

export function Eye({ viewpoint, finishes, placer, overlay, middle, depth }: Props) {
  const { ask } = useStage();

  useEffect(() => viewpoint.listen(ask), [viewpoint, ask]);

  useEachFrame((seconds, { camera }) => {
    if (viewpoint.advance(seconds)) ask();
    const { target } = viewpoint.rig();
    const view = viewpoint.projection();
    camera.position.set(...target).addScaledVector(back.set(...view.toEye), EYE_DISTANCE);
    camera.quaternion.setFromRotationMatrix(basis.makeBasis(right.set(...view.right), up.set(...view.up), back));
    camera.zoom = view.pixelsPerMm;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    hazeOver(finishes, EYE_DISTANCE - dot(subtract(middle, target), view.toEye), depth);
    placer.current(view);
    overlay?.current(view);
  });
  return null;
}
