/** The renderer on a canvas, with a scene and an eye of its own. A frame is drawn when somebody asks for one, and only then. */
import { Color, OrthographicCamera, Scene, Vector2, WebGLRenderer } from 'three';
import type { Size } from './useSize.ts';

export interface Stage {
  readonly scene: Scene;
  readonly camera: OrthographicCamera;
  /** Its size in CSS pixels, as shaders are given it. */
  readonly pixels: { readonly value: Vector2 };
  /** Asks for a frame: one, however often it is asked for before it is drawn. */
  readonly ask: () => void;
  /** Has `act` called ahead of every frame, with the seconds since the last one; answers how to stop that. */
  readonly beforeEach: (act: (seconds: number) => void) => () => void;
  /** CSS pixels. */
  readonly resize: (size: Size) => void;
  readonly paint: (ground: string) => void;
  /** Gives the card back. The canvas cannot be drawn on again. */
  readonly end: () => void;
}

/** Planes before and behind which nothing is drawn, mm from the eye. */
const [NEAR, FAR] = [100, 60_000];

/** More pixels to a CSS pixel than this are not seen, only drawn. */
const MOST_PIXELS = 2;

/** Throws where the browser gives no card. */
export function setUp(canvas: HTMLCanvasElement): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, powerPreference: 'high-performance' });
  const scene = new Scene();
  const camera = new OrthographicCamera(-1, 1, 1, -1, NEAR, FAR);
  const pixels = { value: new Vector2(1, 1) };
  const acts = new Set<(seconds: number) => void>();
  const ended = new AbortController();
  let asked: number | null = null;
  let last: number | null = null;

  const draw = (now: number): void => {
    asked = null;
    const seconds = last === null ? 0 : (now - last) / 1000;
    last = now;
    for (const act of acts) act(seconds);
    renderer.render(scene, camera);
  };
  const ask = (): void => {
    if (!ended.signal.aborted) asked ??= requestAnimationFrame(draw);
  };

  // The page is zoomed, or moved to another screen.
  const followPixels = (): void => {
    renderer.setPixelRatio(Math.max(1, Math.min(MOST_PIXELS, devicePixelRatio)));
    ask();
    const here = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    here.addEventListener('change', followPixels, { once: true, signal: ended.signal });
  };
  followPixels();
  // The card was taken away and given back: nothing else would ask for the frame.
  canvas.addEventListener('webglcontextrestored', ask, { signal: ended.signal });

  return {
    scene,
    camera,
    pixels,
    ask,
    beforeEach: (act) => {
      acts.add(act);
      return () => acts.delete(act);
    },
    resize: ({ width, height }) => {
      renderer.setSize(width, height);
      pixels.value.set(width, height);
      Object.assign(camera, { left: -width / 2, right: width / 2, top: height / 2, bottom: -height / 2 });
      camera.updateProjectionMatrix();
      ask();
    },
    paint: (ground) => {
      scene.background = new Color(ground);
      ask();
    },
    end: () => {
      ended.abort();
      if (asked !== null) cancelAnimationFrame(asked);
      renderer.dispose();
      renderer.forceContextLoss();
    },
  };
}
