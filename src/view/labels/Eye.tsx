/** Draws each frame from where the viewpoint is: sets the camera, the depth of the haze, and the labels. */
import { useEffect, type RefObject } from 'react';
import { useFrame, useThree } from '@react-three/fiber';
import { Matrix4, Vector3, type OrthographicCamera } from 'three';
import { dot, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
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
  const invalidate = useThree((state) => state.invalidate);

  useEffect(() => viewpoint.listen(() => invalidate()), [viewpoint, invalidate]);

  useFrame((state, seconds) => {
    if (viewpoint.advance(seconds)) invalidate();
    const { target } = viewpoint.rig();
    const view = viewpoint.projection();
    const camera = state.camera as OrthographicCamera;
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
