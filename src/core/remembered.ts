/**
 * What is made from a record is kept as long as the record: an edit leaves most records alone, and then what is shown of
 * them is the same object too.
 */

/** The same function, which answers for a record that it was asked about before what it answered then. */
export function remembered<K extends object, V>(make: (record: K) => V): (record: K) => V {
  const known = new WeakMap<K, V>();
  return (record) => {
    const before = known.get(record);
    if (before !== undefined) return before;
    const made = make(record);
    known.set(record, made);
    return made;
  };
}

/**
 * Adds to a record what is dear and seldom asked for: worked out when somebody asks, and kept. One getter serves all records of a
 * kind. With getters of its own, as a literal would give it, every record is laid out by the engine as a dictionary: that takes
 * three times the memory, and each look at any of its fields a search.
 */
export function withLater<R extends object, Later extends object>(make: {
  readonly [Name in keyof Later]: (record: R) => Later[Name];
}): (record: R) => R & Readonly<Later> {
  const getters: PropertyDescriptorMap = {};
  for (const name of Object.keys(make) as (keyof Later & string)[]) {
    const kept = remembered(make[name]);
    getters[name] = {
      enumerable: true,
      get(this: R) {
        return kept(this);
      },
    };
  }
  return (record) => Object.defineProperties(record, getters) as R & Readonly<Later>;
}
