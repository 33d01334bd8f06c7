/** What the bay hands on, while a tube is drawn, to the one who draws it. */
import type { Hold } from '../canvas/hands.ts';

export interface Tool {
  point(x: number, y: number, reach: number): void;
  leave(): void;
  pick(x: number, y: number, reach: number): void;
  takeHold(x: number, y: number, reach: number): Hold | null;
  /** Acts on a key; false when it means nothing here. */
  onKey(key: string, shift: boolean): boolean;
}
