/**
 * Text copied from a spreadsheet, as a block of cells: tabs between columns, line ends between rows. A cell that a
 * spreadsheet put in double quotes (it does so for cells that hold a quote, as inches do) is given without them.
 */

/** The block's cells, row by row. An empty text has none; the line end that closes the last row adds no row. */
export function readBlock(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let at = 0;
  const normal = text.replace(/\r\n?/g, '\n').replace(/\n$/, '');
  if (normal === '') return rows;
  while (at <= normal.length) {
    const quoted = cell === '' ? quotedCell(normal, at) : null;
    if (quoted !== null) {
      cell = quoted.cell;
      at = quoted.next;
    }
    const next = normal[at];
    if (next === '\t' || next === '\n' || next === undefined) {
      row.push(cell.trim());
      cell = '';
      if (next !== '\t') {
        rows.push(row);
        row = [];
      }
    } else {
      cell += next;
    }
    at += 1;
  }
  return rows;
}

/** A cell in double quotes that begins at `from` and ends before a tab, a line end or the text's end; else null. */
function quotedCell(text: string, from: number): { cell: string; next: number } | null {
  const found = /^"((?:[^"]|"")*)"(?=[\t\n]|$)/.exec(text.slice(from));
  if (found === null) return null;
  return { cell: (found[1] ?? '').replaceAll('""', '"'), next: from + found[0].length };
}
