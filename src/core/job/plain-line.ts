/** Text that a person typed, or a file holds, where it stands beside other text: it may hold line breaks, and marks that turn the reading direction of all that follows round, figures too. */

/** One line of printable text: controls, direction marks, line breaks and halves of characters become a space. */
export const plainLine = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ').trim();
