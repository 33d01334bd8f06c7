/** Findings of gussets; types.ts has the others. `tube` is the one that leg 1 runs along. */
import type { NoGusset } from '../gusset/gussets.ts';
import type { GussetId, TubeRef } from '../job/reference.ts';
import type { OfTube } from './types.ts';

interface OfGusset extends OfTube {
  readonly gusset: GussetId;
}

/** It cannot be made as the job has it. */
export interface GussetCannot extends OfGusset {
  readonly id: 'gusset/cannot';
  /** Of its mirror image alone: the gusset itself can be made. */
  readonly isImage: boolean;
  readonly no: NoGusset;
}

/** The sheet is thinner than the thicker of the two walls, or than 1 mm; `least` is the greater of these. */
export interface GussetThin extends OfGusset {
  readonly id: 'gusset/thin';
  readonly thickness: number;
  readonly least: number;
}

/** A leg is shorter than twice the diameter of the tube that it runs along, or longer than four times that. */
export interface GussetLegLength extends OfGusset {
  readonly id: 'gusset/leg-length';
  readonly along: TubeRef;
  readonly leg: number;
  readonly least: number;
  readonly greatest: number;
}

/** The corner of the sheet lies in the steel of another tube of the joint, or in its bore: so far from its outside, mm. */
export interface GussetInTube extends OfGusset {
  readonly id: 'gusset/in-tube';
  readonly into: TubeRef;
  readonly depth: number;
}

/** The sheet runs into a tube that has no part in it, away from its corner: so deep from that tube's outside, mm. */
export interface GussetInTheWay extends OfGusset {
  readonly id: 'gusset/runs-into';
  readonly into: TubeRef;
  readonly depth: number;
}

/** A leg begins so far before the straight of the tube that it is to lie on, mm: there is nothing to weld it to. */
export interface GussetLegBefore extends OfGusset {
  readonly id: 'gusset/leg-before-tube';
  readonly along: TubeRef;
  readonly before: number;
}

/** Another gusset, or its mirror image, stands in the same corner. */
export interface GussetTwice extends OfGusset {
  readonly id: 'gusset/twice';
  readonly beside: GussetId;
}

export type GussetFinding =
  | GussetCannot
  | GussetThin
  | GussetLegLength
  | GussetInTube
  | GussetInTheWay
  | GussetLegBefore
  | GussetTwice;
