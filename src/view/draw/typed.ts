/** The numbers of the next leg as they are typed, and the place that they lead to. */
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { AxisNumber, Ground } from '../../core/shape/draw/ground.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import { typedPlace } from '../../core/shape/draw/typed-place.ts';
import { parseAngle } from '../../core/units/angle.ts';
import { parseLength, type LengthUnit } from '../../core/units/length.ts';
import type { Typed } from '../../core/units/typed.ts';
import { TYPED_TROUBLE_WORDS } from '../../core/words/drawing.ts';
import { inSpace } from './aim.ts';

export const TYPED_FIELDS = ['length', 'slope', 'height'] as const;
export type TypedField = (typeof TYPED_FIELDS)[number];

/** An empty one says nothing. */
export type TypedTexts = Readonly<Record<TypedField, string>>;

export const NOTHING_TYPED: TypedTexts = { length: '', slope: '', height: '' };

/** Whether a key begins a number: what is typed from then on goes into the field of the length. */
export const beginsNumber = (key: string): boolean => /^[\d.]$/u.test(key);

/** The place; or why there is none, and of which field that is said. */
export function placeTyped(
  texts: TypedTexts,
  unit: LengthUnit,
  from: Vec3,
  toward: Vec3 | null,
): { readonly at: Vec3 } | { readonly why: string } {
  const read = (field: TypedField): Typed | null =>
    texts[field].trim() === '' ? null : field === 'slope' ? parseAngle(texts[field]) : parseLength(texts[field], unit);
  const numbers = { length: read('length'), slope: read('slope'), height: read('height') };
  for (const field of TYPED_FIELDS) {
    const typed = numbers[field];
    if (typed?.ok === false) return { why: `${TYPED_LABELS[field]}: ${typed.why}.` };
  }
  const value = (typed: Typed | null): number | null => (typed?.ok ? typed.value : null);
  const at = typedPlace(from, toward, {
    length: value(numbers.length),
    slope: value(numbers.slope),
    height: value(numbers.height),
  });
  return typeof at === 'string' ? { why: TYPED_TROUBLE_WORDS[at] } : { at };
}

/**
 * The same as a place of the tube. A coordinate that the aim has from another place, and that the numbers leave, stays that place's; an angle of
 * 0 is level with the place before, and one of 90 plumb.
 */
export function snapTyped(at: Vec3, texts: TypedTexts, last: Snap, aim: Snap | null): Snap {
  const aimed = aim?.ground.kind === 'space' ? aim.ground.by : undefined;
  const isSloped = texts.slope.trim() !== '';
  const isLevel = isSloped && at[2] === last.at[2];
  const isPlumb = isSloped && at[0] === last.at[0] && at[1] === last.at[1];
  const ownerOf = (axis: AxisNumber): Ground | null => {
    if (axis === 2 ? isLevel : isPlumb) return last.ground;
    return at[axis] === aim?.at[axis] && (axis !== 2 || texts.height.trim() === '') ? (aimed?.[axis] ?? null) : null;
  };
  return inSpace(at, [ownerOf(0), ownerOf(1), ownerOf(2)]);
}

export const TYPED_LABELS: Readonly<Record<TypedField, string>> = {
  length: 'Length',
  slope: 'Angle to level',
  height: 'Height',
};
