/** A tube section: what a member is made of. */
import * as v from 'valibot';
import { fault, figure } from '../fault.ts';
import type { SectionId } from '../reference.ts';
import { across, named, size } from './fields.ts';
import type { Kind } from './kind.ts';

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

export const sectionKind: Kind<Section> = {
  word: 'section',
  letter: 's',
  shape: v.looseObject({
    ...named,
    outerDiameter: across,
    wall: across,
    material: v.optional(v.string(), ''),
    stick: v.exactOptional(size),
  }),
  keys: ['id name outerDiameter wall material stick'],
  beyondShape({ outerDiameter, wall }, at) {
    if (outerDiameter <= 0 || wall < outerDiameter / 2) return [];
    return [fault(`${at}.wall`, `${figure(wall)} is not less than the tube's radius, ${figure(outerDiameter / 2)}`)];
  },
};
