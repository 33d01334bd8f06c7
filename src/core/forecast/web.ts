/**
 * Things that hang on each other, each worked out when another asks for it, once. Who asked for whom is noted, so that a second web, which
 * differs in a few things, works out only these and what hangs on them.
 */

export interface Web {
  /** What the thing of this name is: what `make` says, unless that is known. */
  ask<V>(name: string, make: () => V): V;
  /** Those that differ from the web that it was made from, and all that hang on them; null where it was made from none. */
  readonly moved: ReadonlySet<string> | null;
  readonly known: ReadonlyMap<string, unknown>;
  /** Of each thing, those that asked for it. */
  readonly askedBy: ReadonlyMap<string, ReadonlySet<string>>;
}

/** `before`: a web in which everything was asked for, and the names of what is otherwise now. */
export function createWeb(before?: { readonly web: Web; readonly differing: readonly string[] }): Web {
  const moved = before === undefined ? null : hangingOn(before.differing, before.web.askedBy);
  const known = new Map<string, unknown>();
  const askedBy = new Map<string, Set<string>>();
  const asking: string[] = [];
  function ask<V>(name: string, make: () => V): V {
    if (moved !== null && !moved.has(name) && before!.web.known.has(name)) return before!.web.known.get(name) as V;
    const asker = asking.at(-1);
    if (asker !== undefined) {
      const askers = askedBy.get(name) ?? new Set();
      askedBy.set(name, askers.add(asker));
    }
    if (known.has(name)) return known.get(name) as V;
    asking.push(name);
    const made = make();
    asking.pop();
    known.set(name, made);
    return made;
  }
  return { ask, moved, known, askedBy };
}

/** These, and all that asked for any of them, and so on. */
function hangingOn(names: readonly string[], askedBy: Web['askedBy']): ReadonlySet<string> {
  const all = new Set(names);
  // A set is gone through in the order in which it grows.
  for (const name of all) for (const asker of askedBy.get(name) ?? []) all.add(asker);
  return all;
}
