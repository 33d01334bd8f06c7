/**
 * The program's own validator written out as JSON Schema (draft 2020-12), for editors and other programs. It walks the
 * validator's data, so the two cannot drift apart; a kind of check that it does not know stops it.
 */
import type * as v from 'valibot';

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Check = { readonly type: string; readonly requirement?: unknown };
type Schema = v.GenericSchema & {
  readonly entries: Readonly<Record<string, Schema>>;
  readonly items: readonly Schema[];
  readonly item: Schema;
  readonly value: Schema;
  readonly wrapped: Schema;
  readonly options: readonly Schema[] & readonly string[];
  readonly literal: Json;
  readonly default: Json | (() => Json);
  readonly pipe?: readonly (Schema | Check)[];
};

export function jsonSchemaOf(schema: v.GenericSchema): Json {
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', ...(converted(schema as Schema) as object) };
}

function converted(schema: Schema): Json {
  if (schema.pipe) {
    const [first, ...checks] = schema.pipe;
    // Anything at all is looked at before its shape is: the shape says it.
    if ((first as Schema).type === 'unknown') return converted(checks.at(-1) as Schema);
    // A length is a coordinate with one more check: the later, narrower limit stands.
    const base = converted({ ...(first as Schema) }) as { readonly type?: string };
    return Object.assign({}, base, ...checks.map((check) => limit(check as Check, base.type === 'array'))) as Json;
  }
  switch (schema.type) {
    case 'string':
    case 'number':
    case 'boolean':
      return { type: schema.type };
    case 'never':
      return false;
    case 'literal':
      return { const: schema.literal };
    case 'picklist':
      return { enum: schema.options };
    case 'record':
      return { type: 'object', additionalProperties: converted(schema.value) };
    case 'array':
      return { type: 'array', items: converted(schema.item) };
    case 'strict_tuple':
      return { type: 'array', prefixItems: schema.items.map(converted), items: false, minItems: schema.items.length };
    case 'variant':
    case 'union':
      return { anyOf: schema.options.map(converted) };
    case 'exact_optional':
      return converted(schema.wrapped);
    case 'optional': {
      const usual = typeof schema.default === 'function' ? schema.default() : schema.default;
      const inner = converted(schema.wrapped);
      return usual === undefined ? inner : { ...(inner as object), default: usual };
    }
    case 'nullable':
      return { anyOf: [converted(schema.wrapped), { type: 'null' }] };
    // Files grow by fields: a reader learns what there is, not that there may be nothing more.
    case 'strict_object':
    case 'loose_object': {
      const entries = Object.entries(schema.entries);
      return {
        type: 'object',
        properties: Object.fromEntries(entries.map(([key, entry]) => [key, converted(entry)])),
        required: entries.filter(([, entry]) => !entry.type.endsWith('optional')).map(([key]) => key),
      };
    }
    default:
      throw new Error(`no JSON Schema for ${schema.type}`);
  }
}

function limit({ type, requirement }: Check, ofItems: boolean): object {
  switch (type) {
    case 'min_value':
      return { minimum: requirement };
    case 'max_value':
      return { maximum: requirement };
    case 'gt_value':
      return { exclusiveMinimum: requirement };
    case 'integer':
      return { type: 'integer' };
    case 'min_length':
      return { [ofItems ? 'minItems' : 'minLength']: requirement };
    case 'max_length':
      return { [ofItems ? 'maxItems' : 'maxLength']: requirement };
    // JSON has no number that is not finite.
    case 'finite':
      return {};
    case 'regex':
      return { pattern: (requirement as RegExp).source };
    default:
      throw new Error(`no JSON Schema for ${type}`);
  }
}

/** As the project's formatter sets JSON: objects broken, lists of plain values on one line where they fit. */
export function laidOut(value: Json, indent = '', before = 0): string {
  const inner = `${indent}  `;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (!Array.isArray(value)) {
    const entries = Object.entries(value);
    if (entries.length === 0) return '{}';
    const lines = entries.map(([key, item]) => {
      const name = `${JSON.stringify(key)}: `;
      return `${inner}${name}${laidOut(item, inner, name.length)}`;
    });
    return `{\n${lines.join(',\n')}\n${indent}}`;
  }
  const items = value as readonly Json[];
  const line = `[${items.map((item) => JSON.stringify(item)).join(', ')}]`;
  const isPlain = items.every((item) => typeof item !== 'object' || item === null);
  if (isPlain && indent.length + before + line.length < 120) return line;
  return `[\n${items.map((item) => `${inner}${laidOut(item, inner)}`).join(',\n')}\n${indent}]`;
}
