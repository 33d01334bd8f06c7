/**
 * What a person has typed into a field, and whether it is a value of their own or still the one that stood there. A value may be shown
 * rounded: 593.7 mm as 23 3/8 in. Who goes through the field, or adds a letter and takes it away again, has typed nothing; who types
 * 23 3/8 means 23 3/8.
 */
export interface Draft {
  readonly text: string;
  /** The text that stood there was taken away, in part or whole, or another put in its place. */
  readonly anew: boolean;
}

/** Keys, paste and drop, which may put in the same text as they replace; an input method says it again without being asked. */
const PUT_IN = /^insert(?!Composition)/u;

/**
 * The draft after one more change of the field's text; null where it has come back to rest.
 *
 * @param before null where nothing has been typed yet
 * @param atRest the text that shows the value
 * @param how the InputEvent's own word for the change; '' where the browser gives none
 */
export function typeOn(before: Draft | null, atRest: string, text: string, how: string): Draft | null {
  if (text === atRest && how === 'historyUndo') return null;
  const anew = (before?.anew ?? false) || !text.includes(atRest) || (text === atRest && PUT_IN.test(how));
  return text === atRest && !anew ? null : { text, anew };
}

/** Whether the draft asks for no other value than the one that stands there. */
export const isAtRest = ({ text, anew }: Draft, atRest: string): boolean => !anew && text.trim() === atRest;
