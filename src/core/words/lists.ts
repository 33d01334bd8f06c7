/** Names, or numbers, one after another; and a sentence's first letter. */

/** "a, b and c"; nothing for none. */
export const listed = (items: readonly (string | number)[]): string =>
  items.length < 2 ? `${items[0] ?? ''}` : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** The same with a capital, as it begins a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Without it, as it goes on one. */
export const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
