/** A tube section: what a member is made of. */
import type { SectionId } from '../reference.ts';

export interface Section {
  readonly id: SectionId;
  readonly name: string;
  readonly outerDiameter: number;
  readonly wall: number;
  /** A name from the list of steels, or the user's own word; '' when not said. */
  readonly material: string;
  /** How long the sticks are that it is bought in, mm; absent when not said. */
  readonly stick?: number;
}
