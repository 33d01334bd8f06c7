/** What has the keys just now, so that none of them means anything else. */

/** A dialog or the menu: it takes them itself, Escape above all. */
export const isLaidOver = (): boolean => document.querySelector('dialog[open], :popover-open') !== null;

/** A field that is typed or chosen in. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));
