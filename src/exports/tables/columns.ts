/** Columns of a table for a spreadsheet. */

export type Cell = string | number | boolean | null;

/** A length is in mm, and its heading still without the unit. */
export interface Column<Row> {
  readonly heading: string;
  readonly kind: 'length' | 'other';
  readonly cell: (row: Row) => Cell;
}

/** In mm; its heading gets the unit. */
export const length = <Row>(heading: string, cell: (row: Row) => number | null): Column<Row> => ({
  heading,
  kind: 'length',
  cell,
});
/** As it is. */
export const other = <Row>(heading: string, cell: (row: Row) => Cell): Column<Row> => ({
  heading,
  kind: 'other',
  cell,
});
