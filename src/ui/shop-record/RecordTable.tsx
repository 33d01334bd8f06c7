/** A list of the shop's records as a plain table, each with a way out. */
import { useRef, type ReactNode } from 'react';
import { takenOut } from '../../core/shop/take-out.ts';
import type { ShopList } from '../../core/shop/types.ts';
import { shopRecord } from '../../store/page.ts';

export interface Column<R> {
  readonly title: string;
  readonly isNumber?: true;
  readonly show: (record: R) => ReactNode;
}

export function RecordTable<R>(props: {
  caption: string;
  list: ShopList;
  records: readonly R[];
  /** Where each of them stands in the shop's list; in the list's own order where they are all of it. */
  places?: readonly number[];
  /** What a record is called where it is taken out. */
  nameOf: (record: R) => string;
  /** The first heads the row. */
  columns: readonly Column<R>[];
}): ReactNode {
  const { columns, records, list, places } = props;
  const frame = useRef<HTMLDivElement>(null);
  function takeOut(index: number): void {
    shopRecord.getState().replace((shop) => takenOut(shop, list, index));
    // Else the focus would stand on the next record's key, and a second press take that out as well.
    frame.current?.focus();
  }
  if (records.length === 0)
    return (
      <div ref={frame} tabIndex={-1}>
        <p className="small">None yet.</p>
      </div>
    );
  return (
    <div className="record-scroll" ref={frame} tabIndex={-1} role="group" aria-label={props.caption}>
      <table className="table table-plain">
        <caption className="spoken-only">{props.caption}</caption>
        <thead>
          <tr>
            {columns.map(({ title, isNumber }) => (
              <th key={title} scope="col" className={isNumber && 'number'}>
                {title}
              </th>
            ))}
            <th scope="col">
              <span className="spoken-only">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {records.map((record, index) => (
            <tr key={index}>
              {columns.map(({ title, isNumber, show }, at) =>
                at === 0 ? (
                  <th key={title} scope="row">
                    {show(record)}
                  </th>
                ) : (
                  <td key={title} className={isNumber && 'number'}>
                    {show(record)}
                  </td>
                ),
              )}
              <td className="number">
                <button
                  type="button"
                  className="press press-quiet press-small"
                  aria-label={`Take out ${props.nameOf(record)}`}
                  onClick={() => takeOut(places?.[index] ?? index)}
                >
                  Take out
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
