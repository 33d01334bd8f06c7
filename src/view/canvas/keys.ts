/** The keys that the bay answers itself while it has the focus, for the page that lists all keys. */
import { FIT_ALL, FIT_CHOSEN } from './fits.ts';

export const BAY_KEYS: readonly { readonly name: string; readonly keys: readonly string[] }[] = [
  { name: FIT_ALL, keys: ['F'] },
  { name: FIT_CHOSEN, keys: ['S'] },
  { name: 'Three-quarter, top, left, right, front, rear, hoop view', keys: ['1', '2', '3', '4', '5', '6', '7'] },
  { name: 'Member numbers on or off', keys: ['N'] },
  { name: 'Turn the view; with Shift, move it', keys: ['←', '→', '↑', '↓'] },
  {
    name: 'The same while a node is selected or a tube is drawn, when the bare arrows move that',
    keys: ['Alt+←', 'Alt+→', 'Alt+↑', 'Alt+↓'],
  },
  { name: 'Closer, farther', keys: ['+', '−'] },
  {
    name: 'Selected node: forward, back, left, right, up, down by one step; with Shift, a fine one',
    keys: ['↑', '↓', '←', '→', 'PageUp', 'PageDown'],
  },
  { name: 'Drawing a tube: to the named places near the aim, the nearest first', keys: ['Tab', 'Shift+Tab'] },
  {
    name: 'Drawing a tube: the aim by 1 in or 10 mm; with Shift, a fine step',
    keys: ['↑', '↓', '←', '→', 'PageUp', 'PageDown'],
  },
  { name: 'Drawing a tube: put the place that the keys led to, else end the tube', keys: ['Enter'] },
  { name: 'Drawing a tube: how long the next leg is', keys: ['0', '…', '9'] },
  { name: 'Drawing a tube: take back what is typed, the last place, the tool', keys: ['Escape'] },
  { name: 'Rehearsal: three-quarter, top, side, front view, along the feed', keys: ['1', '2', '3', '4', '5'] },
];
