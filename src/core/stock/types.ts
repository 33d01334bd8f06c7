/**
 * Parts out of sticks. mm; costs in whatever money the shop reckons in. A stick gives `length` less `squareOff`, which is cut off to begin with; each part takes its
 * length, and the saw `kerf` behind it, but for the last where no steel is left for that. So parts fit where their lengths and a kerf each come to no more than
 * length - squareOff + kerf.
 */

export interface Part {
  /** A tube's id; of a spare the words for it. */
  readonly id: string;
  /** The place of its record in the job where it is a spare; null: a tube. */
  readonly spare: number | null;
  readonly length: number;
  /** Heat or batch that it has to be of; null: of any. */
  readonly batch: string | null;
}

/** Sticks of one sort. */
export interface StickSort {
  readonly id: string;
  readonly length: number;
  /** Infinity: as many as are wanted. */
  readonly count: number;
  readonly cost: number;
  readonly batch: string | null;
}

export interface Sawing {
  readonly kerf: number;
  readonly squareOff: number;
}

export interface CutStick {
  readonly stick: string;
  /** By which it stands in the cut list, where sawing has begun; see saw-order.ts. */
  readonly number?: number;
  /** In the order in which they are cut. */
  readonly parts: readonly Part[];
  /** What remains behind the last kerf; 0 where not even that is whole. */
  readonly left: number;
}

export interface CutPlan {
  readonly sticks: readonly CutStick[];
  readonly cost: number;
  /** No plan that places as much costs less: proven. The very figure of the cost where the plan is the cheapest. */
  readonly leastCost: number;
  /** Parts that the plan has no stick for. */
  readonly unplaced: readonly Part[];
  /** Of these the ones for which there may be a way that nobody found. */
  readonly unfound: readonly Part[];
}

/** Whether it is known that no plan costs less. */
export const isProven = ({ cost, leastCost }: Pick<CutPlan, 'cost' | 'leastCost'>): boolean => cost === leastCost;
