/**
 * A job file with something wrong in it: values of a kind that arithmetic loses, records that name one another, text cut about.
 * Most mutants have one or two changes, so that many still pass the door and are derived.
 */
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Parent = Json[] | { [key: string]: Json };

/** A place in the tree: what holds it, under which key; `field` is the same key without its place in a list. */
interface Place {
  readonly parent: Parent;
  readonly key: string;
  readonly field: string;
}

/** The text of a mutant of job `index` modulo their count; the same for the same seed, number and jobs. */
export function mutantText(jobs: readonly object[], seed: number, index: number): string {
  const draw = drawFrom(seed * 1_000_003 + index);
  const tree = structuredClone(jobs[index % jobs.length]!) as { [key: string]: Json };
  const changes = draw.oneOf([1, 1, 1, 2, 2, 3, 5]);
  const inText = draw.chance(0.15);
  for (let change = 0; change < changes; change++) if (!inText || change > 0) changeValue(tree, draw);
  const text = JSON.stringify(tree);
  return inText ? changedText(text, draw) : text;
}

function placesIn(value: Json, field = '', places: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return places;
  for (const key of Object.keys(value)) {
    const place = { parent: value, key, field: Array.isArray(value) ? `${field}[]` : key };
    places.push(place);
    placesIn(at(place), place.field, places);
  }
  return places;
}

const at = ({ parent, key }: Pick<Place, 'parent' | 'key'>): Json => (parent as { [key: string]: Json })[key]!;

/** Its own key even where the name is one that every object has. */
const put = ({ parent, key }: Pick<Place, 'parent' | 'key'>, value: Json): void =>
  void Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });

function changeValue(tree: Json, draw: Draw): void {
  const places = placesIn(tree);
  if (places.length === 0) return;
  const numbers = places.filter((place) => typeof at(place) === 'number' && place.field !== 'version');
  // Numbers are what a frame is made of; and there are few diameters among all the coordinates.
  const place = draw.oneOf(byField(draw.chance(0.6) && numbers.length > 0 ? numbers : places, draw));
  const value = at(place);
  if (draw.chance(0.05)) return put(place, oddValue(draw));
  if (draw.chance(0.05)) return takeOut(place);
  if (typeof value === 'number') put(place, changedNumber(value, numbers, draw));
  else if (typeof value === 'string') put(place, changedString(value, places, draw));
  else if (Array.isArray(value)) changeList(value, places, draw);
  else if (typeof value === 'object' && value !== null) changeObject(place, value, places, draw);
  else put(place, oddValue(draw));
}

/** Those of one field, every field as likely as another. */
function byField(places: readonly Place[], draw: Draw): readonly Place[] {
  const fields = new Map<string, Place[]>();
  for (const place of places) {
    const same = fields.get(place.field);
    if (same === undefined) fields.set(place.field, [place]);
    else same.push(place);
  }
  return draw.oneOf([...fields.values()]);
}

const ODD_VALUES: readonly Json[] = [null, true, false, 0, '', 'NaN', '1', [], {}, [[]], [null], { id: 'x' }, -1];

/** One of its own: what is put into a tree is changed there. */
const oddValue = (draw: Draw): Json => structuredClone(draw.oneOf(ODD_VALUES));

const ODD_NUMBERS: readonly number[] = [
  0,
  5e-324,
  -5e-324,
  1e-320,
  1e-200,
  -1e-200,
  1e-160,
  1e-100,
  1e-15,
  1e-12,
  1e-9,
  1e-8,
  1e-7,
  -1e-7,
  1.1e-7,
  1e-6,
  1e-3,
  0.0099,
  0.01,
  0.1,
  0.5,
  1,
  -1,
  2,
  3.5,
  90,
  180,
  -180,
  179.9,
  179.95,
  200,
  360,
  -360,
  999,
  1000,
  -1000,
  9999,
  99_999.999,
  100_000,
  -100_000,
  100_000.001,
  2 ** 31,
  2 ** 53,
  1e15,
  1e154,
  1e200,
  -1e200,
  1.7976931348623157e308,
];

function changedNumber(value: number, numbers: readonly Place[], draw: Draw): number {
  const small = draw.oneOf([5e-324, 1e-300, 1e-17, 1e-14, 1e-12, 1e-9, 1e-7, 1e-6, 1e-4, 0.01, 1]);
  return draw.oneOf<() => number>([
    () => draw.oneOf(ODD_NUMBERS),
    () => draw.oneOf(ODD_NUMBERS),
    // Nearly, or just, where something else is.
    () => at(draw.oneOf(numbers)) as number,
    () => (at(draw.oneOf(numbers)) as number) + (draw.chance(0.5) ? small : -small),
    () => value + (draw.chance(0.5) ? small : -small),
    () => -value,
    () => Math.round(value),
    () => value * draw.oneOf([2, 0.5, 10, 0.1, 1000, 1e-3, 1 + 1e-12, 1 - 2 ** -52]),
    () => value + draw.between(-300, 300),
  ])();
}

const ODD_STRINGS: readonly string[] = [
  '',
  ' ',
  "'",
  "''",
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'a\nb',
  '\u0000',
  '\u001b[31m',
  '\u2028',
  '\u202e',
  '\ud800',
  '🏁',
  'NaN',
  '0',
  '-1',
  '=1+1',
  '../..',
  'x'.repeat(200),
  'x'.repeat(201),
  'long '.repeat(1000),
  '𝄞'.repeat(150),
  '<script>',
  'undefined',
  'null',
];

const WORDS = (
  'auto square cope plate fixed point on between ray start middle end x y z box in mm left right beyond before level wheel ' +
  'nominal from-pulls A B dom-1020 cut mark check chord width'
).split(' ');

function changedString(value: string, places: readonly Place[], draw: Draw): string {
  return draw.oneOf<() => string>([
    () => draw.oneOf(ODD_STRINGS),
    () => draw.oneOf(WORDS),
    // Another's name or id: references that go elsewhere, come round, or meet themselves.
    () => draw.oneOf(places.map(at).filter((other) => typeof other === 'string')),
    () => draw.oneOf(places.map(at).filter((other) => typeof other === 'string')),
    () => `${value}'`,
    () => value.replace(/'$/u, ''),
    () => value + draw.oneOf(ODD_STRINGS),
    () => value.slice(0, -1),
  ])();
}

function takeOut({ parent, key }: Place): void {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else delete parent[key];
}

function changeList(list: Json[], places: readonly Place[], draw: Draw): void {
  const somewhere = Math.floor(draw.between(0, list.length + 1));
  const one = list.length === 0 ? null : structuredClone(draw.oneOf(list));
  draw.oneOf<() => void>([
    () => void list.splice(somewhere, 1),
    () => void list.splice(somewhere, 0, one),
    () => void list.splice(somewhere, 0, structuredClone(at(draw.oneOf(places)))),
    () => void list.splice(0, list.length, ...list.toReversed()),
    () => void list.splice(0, list.length, ...list.slice(somewhere), ...list.slice(0, somewhere)),
    () => void list.splice(0),
    () => void list.splice(1),
    () => void list.splice(somewhere, 0, oddValue(draw)),
  ])();
}

function changeObject(place: Place, object: { [key: string]: Json }, places: readonly Place[], draw: Draw): void {
  const keys = Object.keys(object);
  const key = keys.length === 0 ? 'id' : draw.oneOf(keys);
  const others = places.map(at).filter((other) => typeof other === 'object' && other !== null && !Array.isArray(other));
  draw.oneOf<() => void>([
    () => void delete object[key],
    // Another record of its kind, or of any.
    () => put(place, structuredClone(draw.oneOf(others))),
    () => {
      const like = others.filter((other) => keys.every((each) => Object.hasOwn(other as object, each)));
      put(place, structuredClone(draw.oneOf(like.length > 0 ? like : others)));
    },
    () => put({ parent: object, key: draw.oneOf(ODD_STRINGS) }, 1),
    () => put({ parent: object, key }, oddValue(draw)),
    () =>
      put(
        {
          parent: object,
          key: draw.oneOf([
            'mirror',
            'die',
            'allowance',
            'bend',
            'where',
            'offset',
            'batch',
            'stick',
            'radius',
            'gap',
            'rotation',
          ]),
        },
        structuredClone(at(draw.oneOf(places))),
      ),
    () => put(place, nested(draw.oneOf([2, 60, 70, 500]))),
  ])();
}

function nested(deep: number): Json {
  let value: Json = 1;
  for (let level = 0; level < deep; level++) value = level % 2 === 0 ? [value] : { a: value };
  return value;
}

const SCRAPS: readonly string[] = [
  '',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '\\',
  "'",
  'null',
  'true',
  '-',
  '1e999',
  '-1e999',
  '1e-999',
  '0x10',
  '01',
  '1.',
  'NaN',
  'Infinity',
  '//',
  '/*',
  '\n',
  '\u0000',
  '\ud800',
  '\uFEFF',
  '"__proto__":1,',
  '"id":"foot",',
  '"a":1,"a":2,',
  '[[[[[[[[',
  '{"a":'.repeat(70),
];

/** Cut, put in and doubled at any character; a field given twice; a number that JSON has not. */
function changedText(text: string, draw: Draw): string {
  const start = Math.floor(draw.between(0, text.length + 1));
  const end = start + Math.floor(draw.between(0, draw.oneOf([1, 4, 40, 400])));
  return draw.oneOf<() => string>([
    () => text.slice(0, start) + text.slice(end),
    () => text.slice(0, start) + draw.oneOf(SCRAPS) + text.slice(start),
    () => text.slice(0, start) + draw.oneOf(SCRAPS) + text.slice(end),
    () => text.slice(0, end) + text.slice(start),
    () => text.slice(0, start),
    () => {
      const numbers = [...text.matchAll(/-?\d+(?:\.\d+)?/gu)];
      const number = draw.oneOf(numbers);
      return text.slice(0, number.index) + draw.oneOf(SCRAPS) + text.slice(number.index + number[0].length);
    },
    () => {
      const field = draw.oneOf([...text.matchAll(/"\w+":(?:"[^"]*"|-?[\d.]+)/gu)]);
      return `${text.slice(0, field.index)}${field[0]},${text.slice(field.index)}`;
    },
  ])();
}
