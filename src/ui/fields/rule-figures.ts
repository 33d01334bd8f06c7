/** The figures of a rule sheet as they are typed: lengths, areas and masses in the job's unit, tubes as "45 x 2.5 or 50 x 2". */
import { NOT_WHOLE } from '../../core/job/fault.ts';
import type { Quantity, RuleSize } from '../../core/job/kinds/rule-check.ts';
import { shownName } from '../../core/job/shown.ts';
import { MOST_ROLES, MOST_SIZES } from '../../core/job/limits.ts';
import { plainRole, ROLES } from '../../core/job/role.ts';
import { decimalLength, MM_PER_INCH, parseLength, type LengthUnit } from '../../core/units/length.ts';
import { massUnit } from '../../core/units/mass.ts';
import { areaInWords, secondMomentInWords } from '../../core/words/rule-figures.ts';
import { roleInWords } from '../../core/words/rules.ts';
import { angleKind, lengthKind, numberKind, type Entered, type ValueKind } from './kinds.ts';
import { massKind } from './mass.ts';

/** Beside the label. */
export const figureUnit = (quantity: Quantity | 'mass' | 'sizes', unit: LengthUnit): string => {
  switch (quantity) {
    case 'length':
      return unit;
    case 'sizes':
      return `${unit} x ${unit}`;
    case 'angle':
      return '°';
    case 'area':
      return unit === 'in' ? 'in²' : 'cm²';
    case 'secondMoment':
      return unit === 'in' ? 'in⁴' : 'mm⁴';
    case 'mass':
      return massUnit(unit);
    case 'count':
    case 'times':
    case 'share':
      return '';
  }
};

/** How a number that counts this is shown and read. */
export function figureKind(quantity: Quantity | 'mass', unit: LengthUnit): ValueKind<number> {
  switch (quantity) {
    case 'length':
      return lengthKind(unit);
    case 'angle':
      return angleKind;
    case 'area':
      return scaled(unit === 'in' ? MM_PER_INCH ** 2 : 100, (value) => areaInWords(value, unit));
    case 'secondMoment':
      return scaled(unit === 'in' ? MM_PER_INCH ** 4 : 1, (value) => secondMomentInWords(value, unit));
    case 'mass':
      return massKind(unit);
    case 'count':
      return WHOLE;
    case 'times':
      return numberKind(0, 1000, 0.5);
    case 'share':
      return numberKind(0, 1, 0.05);
  }
}

const whole = numberKind(0, 1000, 1);
const WHOLE: ValueKind<number> = {
  ...whole,
  read(text) {
    const entered = whole.read(text);
    return entered.ok && !Number.isInteger(entered.value) ? { ok: false, why: NOT_WHOLE } : entered;
  },
};

/** Typed in a unit of so many of what is kept. */
function scaled(unit: number, inWords: (value: number) => string): ValueKind<number> {
  const figure = numberKind(0, 1e6, 1);
  return {
    show: (value) => figure.show(value / unit),
    read(text) {
      const entered = figure.read(text);
      return entered.ok ? { ...entered, value: entered.value * unit } : entered;
    },
    readBack: (value) => `= ${inWords(value)}`,
    inputMode: 'decimal',
  };
}

/** Tubes of which one has to be met in diameter and wall. */
export function sizesKind(unit: LengthUnit): ValueKind<readonly RuleSize[]> {
  const places = unit === 'in' ? 3 : 2;
  const show = (mm: number): string => decimalLength(mm, unit, places).replace(/\.?0+$/u, '');
  const text = (sizes: readonly RuleSize[]): string =>
    sizes.map(({ outerDiameter, wall }) => `${show(outerDiameter)} x ${show(wall)}`).join(' or ');
  return {
    show: text,
    read(typed) {
      if (typed.trim() === '') return { ok: true, value: [] };
      const sizes = typed.split(/\s*(?:\bor\b|;)\s*/iu).map((each) => readSize(each, unit));
      const wrong = sizes.find((each) => !each.ok);
      if (wrong !== undefined && !wrong.ok) return wrong;
      if (sizes.length > MOST_SIZES) return { ok: false, why: `more than ${MOST_SIZES}` };
      return { ok: true, value: sizes.flatMap((each) => (each.ok ? [each.value] : [])) };
    },
    readBack: (sizes) => (sizes.length === 0 ? '' : `= ${text(sizes)} ${unit}`),
    inputMode: 'text',
  };
}

const SIZE = 'write a tube as 45 x 2.5, several with “or” between them';

/** mm: figures without a unit that make a wider tube of inches were meant in millimetres. */
const WIDEST = 300;

function readSize(text: string, unit: LengthUnit): Entered<RuleSize> {
  const parts = text.split(/\s*(?:x|×|by)\s*/iu);
  if (parts.length !== 2) return { ok: false, why: SIZE };
  const [outerDiameter, wall] = parts.map((part) => parseLength(part, unit)) as [Entered<number>, Entered<number>];
  if (!outerDiameter.ok || !wall.ok) return { ok: false, why: SIZE };
  if (unit === 'in' && outerDiameter.value > WIDEST && !/[a-z"'′″]/iu.test(parts.join('')))
    return {
      ok: false,
      why: `no tube is so wide; for millimetres type ${parts[0]!.trim()} mm x ${parts[1]!.trim()} mm`,
    };
  if (!(wall.value > 0 && 2 * wall.value < outerDiameter.value)) return { ok: false, why: 'that is no tube' };
  return { ok: true, value: { outerDiameter: outerDiameter.value, wall: wall.value } };
}

/** Bars by what they are in the cage: "main hoop, rear stay"; none is every tube. */
export const rolesKind: ValueKind<readonly string[]> = {
  show: (roles) => roles.map(roleInWords).join(', '),
  read(text) {
    const value = text
      .split(',')
      .map((each) => each.trim())
      .filter((each) => each !== '')
      .map((each) => ROLES.find((role) => plainRole(role) === plainRole(each)) ?? shownName(each));
    return value.length > MOST_ROLES ? { ok: false, why: `more than ${MOST_ROLES}` } : { ok: true, value };
  },
  readBack: () => '',
  inputMode: 'text',
};
