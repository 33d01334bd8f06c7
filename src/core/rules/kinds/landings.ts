/** Where other tubes come onto a bar. */
import type { Vec3 } from '../../geometry/vector.ts';
import type { Bar } from '../../solve/types.ts';
import type { Questions } from '../questions.ts';

interface Landing {
  /** Developed length along the bar from end A's node, mm. */
  readonly at: number;
  /** Of the tube that lands, into it. */
  readonly direction: Vec3;
}

/** Of every tube that is coped to the bar, by a cut that reaches it. */
export const landingsOn = (bar: Bar, ask: Questions): readonly Landing[] =>
  ask
    .tubes()
    .flatMap(({ ends }) =>
      ends.flatMap(({ cuts, direction }) =>
        cuts.flatMap(({ against, landingAt, reaches }) =>
          against === bar.id && reaches ? [{ at: landingAt, direction }] : [],
        ),
      ),
    );
