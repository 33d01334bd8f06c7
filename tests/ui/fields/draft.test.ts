/** 593.7 mm shows as 23 3/8 in, which is 593.725 mm: who types that means it, who goes through the field does not. */
import { describe, expect, it } from 'vitest';
import { isAtRest, typeOn, type Draft } from '../../../src/ui/fields/draft.ts';

const SHOWN = '23 3/8';

/** What is left after the texts that the field held one after the other; `how` of the last. */
const after = (texts: readonly string[], how = 'insertText'): Draft | null =>
  texts.reduce<Draft | null>(
    (draft, text, i) => typeOn(draft, SHOWN, text, i === texts.length - 1 ? how : 'insertText'),
    null,
  );
const entersAnew = (draft: Draft | null): boolean => draft !== null && !isAtRest(draft, SHOWN);

describe('a value that is shown rounded', () => {
  it('is entered anew when its very text is typed over it, key by key', () => {
    expect(entersAnew(after(['2', '23', '23 ', '23 3', '23 3/', '23 3/8']))).toBe(true);
  });
  it('is entered anew when the field is emptied first, or its last figure typed again', () => {
    expect(entersAnew(after(['', '23 3/8']))).toBe(true);
    expect(entersAnew(after(['23 3/', '23 3/8']))).toBe(true);
  });
  it('is entered anew when the same text is pasted over it', () => {
    expect(entersAnew(after(['23 3/8'], 'insertFromPaste'))).toBe(true);
    // One key over all of a value of one figure.
    expect(entersAnew(typeOn(null, '5', '5', 'insertText'))).toBe(true);
    // An input method that says what stands there already changes nothing.
    expect(after(['23 3/8'], 'insertCompositionText')).toBeNull();
  });
  it('stays what it was when a letter is added and taken away again, and with a space behind it', () => {
    expect(after(['23 3/8x', '23 3/8'], 'deleteContentBackward')).toBeNull();
    expect(entersAnew(after(['23 3/8 ']))).toBe(false);
  });
  it('stays what it was when the typing is undone', () => {
    expect(after(['2', '23', '23 3/8'], 'historyUndo')).toBeNull();
  });
  it('of an empty field, nothing typed is nothing entered', () => {
    expect(typeOn({ text: 'a', anew: false }, '', '', 'deleteContentBackward')).toBeNull();
    expect(typeOn(null, '', '12', 'insertText')).toEqual({ text: '12', anew: false });
    expect(isAtRest({ text: '12', anew: false }, '')).toBe(false);
  });
});
