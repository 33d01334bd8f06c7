/** Small signs of a fixed size on the screen, one for each place: crosses for measured points, dots for nodes. */
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, CanvasTexture, PointsMaterial } from 'three';
import type { Vec3 } from '../../core/geometry/vector.ts';

export type Sign = 'cross' | 'dot';

const PIXELS = 64;

function drawSign(sign: Sign, colour: string, halo: string): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = PIXELS;
  canvas.height = PIXELS;
  const pen = canvas.getContext('2d')!;
  const middle = PIXELS / 2;
  const trace = (): void => {
    pen.beginPath();
    if (sign === 'cross') {
      pen.moveTo(8, middle);
      pen.lineTo(PIXELS - 8, middle);
      pen.moveTo(middle, 8);
      pen.lineTo(middle, PIXELS - 8);
    } else {
      pen.arc(middle, middle, 15, 0, 2 * Math.PI);
    }
  };
  pen.lineCap = 'round';
  // A halo of the ground keeps the sign readable over steel of any tone.
  pen.strokeStyle = halo;
  pen.lineWidth = sign === 'cross' ? 18 : 16;
  trace();
  pen.stroke();
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 8;
  trace();
  if (sign === 'dot') pen.fill();
  else pen.stroke();
  return canvas;
}

interface Props {
  readonly places: readonly Vec3[];
  readonly sign: Sign;
  readonly colour: string;
  readonly halo: string;
  /** Pixels across. */
  readonly size: number;
}

/** Drawn over everything: nodes lie inside their tubes, and points behind them still count. */
export function Spots({ places, sign, colour, halo, size }: Props) {
  const material = useMemo(() => {
    const map = new CanvasTexture(drawSign(sign, colour, halo));
    map.colorSpace = 'srgb';
    return new PointsMaterial({
      map,
      size,
      sizeAttenuation: false,
      transparent: true,
      depthTest: false,
      depthWrite: false,
    });
  }, [sign, colour, halo, size]);
  useEffect(
    () => () => {
      material.map?.dispose();
      material.dispose();
    },
    [material],
  );
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(Float32Array.from(places.flat()), 3));
    return made;
  }, [places]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return <points geometry={geometry} material={material} renderOrder={30} frustumCulled={false} dispose={null} />;
}
