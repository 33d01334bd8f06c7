/** What the forecast of fit says: of every end that is welded, how far it will gape, what feeds that and what would cure it. mm. */
import type { Axis, Vec3 } from '../geometry/vector.ts';
import type { NodeRef, PointId, TubeRef } from '../job/reference.ts';

/** A thing that may come out off what was asked for. Each is independent of all others. */
export type Source =
  | { readonly kind: 'point'; readonly point: PointId; readonly axis: Axis }
  | {
      readonly kind: 'bend';
      readonly bar: TubeRef;
      /** 1 = first from end A. */
      readonly bend: number;
      readonly slip: 'angle' | 'rotation' | 'mark';
    }
  | { readonly kind: 'cut'; readonly tube: TubeRef; readonly end: 'A' | 'B' };

/** What a person does something about: a bend's three slips are one. */
export type Feeder = Exclude<Source, { readonly kind: 'bend' }> | Omit<Extract<Source, { kind: 'bend' }>, 'slip'>;

export interface Feed {
  readonly of: Feeder;
  /** Of the mean square of the opening round the edge, 0 to 1. */
  readonly share: number;
}

/** Something that can be done before steel is cut, and the gap that 95 of 100 cages would then stay under, mm. */
export type Cure = { readonly gap: number } & (
  | { readonly kind: 'measure'; readonly point: PointId }
  | { readonly kind: 'long'; readonly by: number }
  /** Cut this tube on the car; `first`: these are fitted after it as yet, and would have to stand by then. */
  | { readonly kind: 'on-car'; readonly first: readonly TubeRef[] }
  /** Read that bar when it is bent, and draw the rest to it. */
  | { readonly kind: 'as-built'; readonly bar: TubeRef }
);

export interface JointForecast {
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  /** Null where a bar in pieces is cut. */
  readonly node: NodeRef | null;
  readonly fit: 'cope' | 'plate' | 'foot' | 'mitre' | 'butt';
  /** The bars that it meets; none on a plate or a foot. */
  readonly to: readonly TubeRef[];
  readonly at: Vec3;
  /** 95 of 100 cages gape less here. */
  readonly gap: number;
  readonly onCar: boolean;
  /** Greatest first, three at most. */
  readonly feeds: readonly Feed[];
  /** The cheapest first. */
  readonly cures: readonly Cure[];
}

export interface Forecast {
  /** Worst first. */
  readonly joints: readonly JointForecast[];
}
