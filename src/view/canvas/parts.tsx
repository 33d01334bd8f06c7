/**
 * What stands on the stage, as components of the page's own tree: each puts an object of three under its parent's, keeps it as its
 * properties say, and takes it out again. They leave nothing in the document. Geometries and materials belong to whoever made them.
 */
import {
  createContext,
  use,
  useEffect,
  useEffectEvent,
  useImperativeHandle,
  useLayoutEffect,
  useState,
  type ReactNode,
  type Ref,
} from 'react';
import * as three from 'three';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Stage } from './stage.ts';

const OnStage = createContext<Stage | null>(null);
const Under = createContext<three.Object3D | null>(null);

/** Its children stand on this stage. */
export function Standing({ stage, children }: { readonly stage: Stage; readonly children: ReactNode }) {
  return (
    <OnStage value={stage}>
      <Under value={stage.scene}>{children}</Under>
    </OnStage>
  );
}

export const useStage = (): Stage => use(OnStage)!;

/** Has `act` called ahead of every frame, in the order in which the callers stand on the stage. */
export function useEachFrame(act: (seconds: number, stage: Stage) => void): void {
  const stage = useStage();
  const onFrame = useEffectEvent(act);
  useLayoutEffect(() => stage.beforeEach((seconds) => onFrame(seconds, stage)), [stage]);
}

interface Placing<T> {
  readonly ref?: Ref<T>;
  readonly position?: Vec3;
  readonly scale?: Vec3;
  readonly quaternion?: three.Quaternion;
  readonly children?: ReactNode;
}

type Fields<T extends three.Object3D> = Partial<
  Pick<T, Extract<keyof T, 'geometry' | 'material' | 'renderOrder' | 'frustumCulled' | 'matrixAutoUpdate'>>
>;

const part = <T extends three.Object3D>(make: () => T) =>
  function Part({ ref, position, scale, quaternion, children, ...fields }: Placing<T> & Fields<T>) {
    const [object] = useState(make);
    const parent = use(Under)!;
    const { ask } = useStage();
    useImperativeHandle(ref, () => object, [object]);
    useLayoutEffect(() => {
      parent.add(object);
      return () => void object.removeFromParent();
    }, [parent, object]);
    useLayoutEffect(() => {
      Object.assign(object, fields);
      if (position) object.position.set(...position);
      if (scale) object.scale.set(...scale);
      if (quaternion) object.quaternion.copy(quaternion);
      ask();
      return ask;
    });
    return children === undefined ? null : <Under value={object}>{children}</Under>;
  };

export const Group = part(() => new three.Group());
export const Mesh = part(() => new three.Mesh<three.BufferGeometry, three.Material>());
export const LineSegments = part(() => new three.LineSegments<three.BufferGeometry, three.Material>());
export const Points = part(() => new three.Points<three.BufferGeometry, three.Material>());

interface Plain {
  readonly color: string;
  readonly opacity?: number;
  readonly depthTest?: boolean;
  readonly depthWrite?: boolean;
  readonly side?: three.Side;
}

/** A face of one colour, seen through and not lit. */
export function usePlain({ color, ...fields }: Plain): three.MeshBasicMaterial {
  const [material] = useState(() => new three.MeshBasicMaterial({ transparent: true }));
  useLayoutEffect(() => {
    material.color.set(color);
    Object.assign(material, fields);
  });
  useEffect(() => () => material.dispose(), [material]);
  return material;
}
