/** What two of its keys do, here and on their buttons. */
export const FIT_ALL = 'Fit the whole frame';
export const FIT_CHOSEN = 'Fit what is selected';

/** The keys that the bay answers itself while it has the focus, for the page that lists all keys. */
export const BAY_KEYS: readonly { readonly name: string; readonly keys: readonly string[] }[] = [
  { name: FIT_ALL, keys: ['F'] },
  { name: FIT_CHOSEN, keys: ['S'] },
  { name: 'Three-quarter, top, left, right, front, rear, hoop view', keys: ['1', '2', '3', '4', '5', '6', '7'] },
  { name: 'Member numbers on or off', keys: ['N'] },
  { name: 'Turn the view; with Shift, move it', keys: ['←', '→', '↑', '↓'] },
  { name: 'Closer, farther', keys: ['+', '−'] },
  {
    name: 'Selected node: forward, back, left, right, up, down by one step; with Shift, a fine one',
    keys: ['↑', '↓', '←', '→', 'PageUp', 'PageDown'],
  },
  { name: 'Rehearsal: three-quarter, top, side, front view, along the feed', keys: ['1', '2', '3', '4', '5'] },
];
