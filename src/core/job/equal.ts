/** Whether two pieces of plain data (what a job is made of) hold the same; key order does not count. */
export function sameData(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((item, i) => sameData(item, b[i]));
  }
  if (Array.isArray(b)) return false;
  const before = Object.entries(a);
  const after = b as Readonly<Record<string, unknown>>;
  return (
    before.length === Object.keys(b).length &&
    before.every(([key, value]) => Object.hasOwn(after, key) && sameData(value, after[key]))
  );
}
