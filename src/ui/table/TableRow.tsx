/**
 * A row of a table that is edited where it stands. It is drawn again only when its record, its columns or what stands open in it changes:
 * a drag in the bay previews many times a second, and a long list must not be drawn anew for each.
 */
import {
  memo,
  useLayoutEffect,
  useRef,
  type CSSProperties,
  type KeyboardEvent,
  type ReactNode,
  type RefObject,
} from 'react';
import type { Leaving, Note } from '../fields/EntryField.tsx';
import { editIn, type Column } from './columns.tsx';

export interface Cell {
  readonly row: number;
  readonly column: number;
}

export interface OpenCell extends Cell {
  readonly startWith?: string;
}

/** What a row's cells call; the latest are held by reference, so that a row need not be drawn anew for them. */
export interface Hands {
  take(cell: Cell): void;
  pressAgain(cell: Cell): void;
  leave(cell: Cell, how: Leaving): void;
  keyDown(event: KeyboardEvent, cell: Cell): void;
  /** The row is marked or no longer; with `upTo` all from the one that has the focus to it are. */
  mark(row: number, upTo: boolean): void;
  note(next: Note | null): void;
}

interface TableRowProps<Row> {
  readonly id: string;
  /** undefined while no rows are marked: there is no box then. */
  readonly marked: boolean | undefined;
  readonly canMark: boolean;
  readonly row: Row;
  readonly index: number;
  readonly name: string;
  readonly columns: readonly Column<Row>[];
  readonly firstLine: number | undefined;
  readonly chosen: boolean;
  /** The column that Tab comes to in this row, if it is this row. */
  readonly tabStop: number | null;
  readonly open: OpenCell | null;
  readonly note: Note | null;
  readonly hands: RefObject<Hands | null>;
}

export const TableRow = memo(function TableRow<Row>(props: TableRowProps<Row>): ReactNode {
  const { row, index, columns, chosen, marked, open, note, hands } = props;
  return (
    <tr data-row={props.id} aria-selected={chosen || marked === true} className={chosen ? 'chosen' : undefined}>
      {marked !== undefined && (
        <td className="mark-cell">
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label={`Mark ${props.name}`}
            checked={marked}
            onChange={() => hands.current?.mark(index, false)}
          />
        </td>
      )}
      {columns.map((column, columnIndex) => {
        const cell = { row: index, column: columnIndex };
        const isOpen = open?.column === columnIndex;
        return (
          <td
            key={column.header}
            tabIndex={props.tabStop === columnIndex ? 0 : -1}
            className={`${column.numeric ? 'number' : 'word'}${column.small ? ' small' : ''}`}
            style={widthInLine(columnIndex, columns.length, props.firstLine)}
            aria-readonly={editIn(column, row) ? undefined : true}
            onKeyDown={(event) => hands.current?.keyDown(event, cell)}
            onFocus={(event) => {
              if (event.target === event.currentTarget) hands.current?.take(cell);
            }}
            onMouseDown={(event) => {
              if (props.canMark && !isOpen && (event.ctrlKey || event.metaKey || event.shiftKey)) {
                event.preventDefault();
                hands.current?.mark(index, event.shiftKey);
                return;
              }
              // The second press on a cell opens it; the first one only takes the focus.
              if (!isOpen && document.activeElement === event.currentTarget) {
                event.preventDefault();
                hands.current?.pressAgain(cell);
              }
            }}
          >
            {isOpen && column.edit ? (
              <>
                <span className="cell-under" aria-hidden="true">
                  {column.show(row)}
                </span>
                <div className="cell-field">
                  {column.edit.open(row, {
                    label: `${column.header}, ${props.name}`,
                    ...(open.startWith !== undefined && { startWith: open.startWith }),
                    onLeave: (how) => hands.current?.leave(cell, how),
                    onNote: (next) => hands.current?.note(next),
                  })}
                  {note && <CellNote note={note} />}
                </div>
              </>
            ) : (
              column.show(row)
            )}
          </td>
        );
      })}
    </tr>
  );
}) as <Row>(props: TableRowProps<Row>) => ReactNode;

/** How a two-line row shares its width: each of its lines in equal parts of a grid of 60. */
export const widthInLine = (index: number, count: number, firstLine: number | undefined): CSSProperties | undefined =>
  firstLine === undefined
    ? undefined
    : { gridColumn: `span ${60 / (index < firstLine ? firstLine : count - firstLine)}` };

/** How the open field is read, beside it: fixed on the screen, as the list's box would cut it off. */
function CellNote({ note }: { note: Note }): ReactNode {
  const element = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    const place = (): void => {
      const [own, cell] = [element.current, element.current?.closest('td')];
      if (!own || !cell) return;
      const beside = cell.getBoundingClientRect();
      const below = beside.bottom + 4 + own.offsetHeight < window.innerHeight;
      own.style.top = `${below ? beside.bottom + 4 : beside.top - own.offsetHeight - 4}px`;
      own.style.left = `${Math.max(4, Math.min(beside.left, window.innerWidth - own.offsetWidth - 12))}px`;
    };
    place();
    window.addEventListener('scroll', place, true);
    return () => window.removeEventListener('scroll', place, true);
  });
  return (
    <p ref={element} className={note.refused ? 'cell-note cell-note-refused' : 'cell-note'} aria-hidden="true">
      {note.refused && '▲ '}
      {note.text}
    </p>
  );
}
