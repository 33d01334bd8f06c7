/** Several orders joined into one. */

/**
 * One order that agrees with all of these, each name once; where they leave it open, what is named first comes first. Throws
 * where they contradict each other.
 */
export function joinedOrder(orders: readonly (readonly string[])[]): readonly string[] {
  const left = orders.map((order) => [...order]);
  const joined: string[] = [];
  const waiting = new Set(orders.flat());
  const isNext = (name: string) => left.every((order) => order[0] === name || !order.includes(name));
  while (waiting.size > 0) {
    const next = [...waiting].find(isNext);
    if (next === undefined) throw new Error(`no order agrees with all: ${[...waiting].join(' ')}`);
    joined.push(next);
    waiting.delete(next);
    for (const order of left) if (order[0] === next) order.shift();
  }
  return joined;
}
