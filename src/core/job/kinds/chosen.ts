/**
 * A shape that is one of several, chosen by what the data names and not by what fits: what is wrong in the chosen one is then said of it
 * alone, at its own place.
 */
import * as v from 'valibot';

/** The options by the key that stands for each, in the order in which they are looked for; where data has none of the keys, the last is meant. */
export function chosenByKey<const Options extends readonly v.GenericSchema[]>(
  keys: { readonly [I in keyof Options]: string },
  options: Options,
): v.UnionSchema<Options, undefined> {
  const names: readonly string[] = keys;
  return chosen(options, (data) => {
    const at = names.findIndex((key) => Object.hasOwn(data, key));
    return options[at < 0 ? options.length - 1 : at]!;
  });
}

/** The options by their `kind`; a kind that there is not is refused in words that name those there are. */
export function chosenByKind<const Options extends readonly v.GenericSchema[]>(
  kinds: { readonly [I in keyof Options]: string },
  options: Options,
): v.UnionSchema<Options, undefined> {
  const names: readonly string[] = kinds;
  const none = v.looseObject({ kind: v.picklist(names) });
  return chosen(options, (data) => options[names.indexOf(String(data['kind']))] ?? none);
}

/** For whatever reads the shape itself it is a union; data that is no object is left to the first of them to refuse. */
function chosen<const Options extends readonly v.GenericSchema[]>(
  options: Options,
  choose: (data: Readonly<Record<string, unknown>>) => v.GenericSchema,
): v.UnionSchema<Options, undefined> {
  const run: v.GenericSchema['~run'] = (dataset, config) => {
    const { value } = dataset;
    const isData = typeof value === 'object' && value !== null;
    return (isData ? choose(value as Readonly<Record<string, unknown>>) : options[0]!)['~run'](dataset, config);
  };
  return { ...v.union(options), '~run': run };
}
