/** Layers of the flat patterns of sheet steel: what is cut, where a press brake bends, what is only marked, what is written. */
import type { DxfLayer } from '../../drawing/dxf.ts';

export const SHEET_LAYERS: readonly DxfLayer[] = [
  { name: 'CUT', colour: 1 },
  { name: 'BEND', colour: 6 },
  { name: 'MARK', colour: 5 },
  { name: 'TEXT', colour: 3 },
];
