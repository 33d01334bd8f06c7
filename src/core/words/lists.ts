/** Names, or numbers, one after another. */

/** "a, b and c"; nothing for none. */
export const listed = (items: readonly (string | number)[]): string =>
  items.length < 2 ? `${items[0] ?? ''}` : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
