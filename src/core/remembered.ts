/**
 * What is made from a record is kept as long as the record: an edit leaves most records alone, and then what is shown of
 * them is the same object too.
 */
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
