/** The keys that a table answers itself while one of its cells has the focus, for the page that lists all keys. */
export const TABLE_KEYS: readonly { readonly name: string; readonly keys: readonly string[] }[] = [
  { name: 'Open the field', keys: ['Enter', 'F2'] },
  { name: 'Enter it and go on, enter it and go down, leave it as it was', keys: ['Tab', 'Enter', 'Escape'] },
  { name: 'One step more or less in an open field; with Shift, ten', keys: ['↑', '↓'] },
  { name: 'Mark the row, or no longer', keys: ['Space'] },
  { name: 'Mark on to the next row', keys: ['Shift+↓', 'Shift+↑'] },
  { name: 'Mark all rows; mark none', keys: ['Mod+A', 'Escape'] },
];
