/** What is to be got for the job, with prices where the shop has given some. */
import { useDeferredValue, useMemo, type ReactNode } from 'react';
import { orderList } from '../../core/quote/order.ts';
import { orderInWords, type OrderPart } from '../../core/words/order.ts';
import { NOTHING_TO_GET, ORDER_COLUMNS, orderTotalInWords, stillCheaperInWords } from '../../core/words/quote.ts';
import { uncapital } from '../../core/words/lists.ts';
import { useDocument } from '../../store/page.ts';
import { usePlans } from './plans.ts';
import { PlansState } from './PlansState.tsx';
import './quote.css';

export function OrderList(): ReactNode {
  const derived = useDeferredValue(useDocument((state) => state.derived));
  const known = usePlans(derived);
  const { plans } = known;
  const list = useMemo(() => orderList(derived, plans), [derived, plans]);
  const parts = orderInWords(list, derived);
  const cheaper = stillCheaperInWords(plans);
  return (
    <>
      <PlansState {...known} />
      {parts.length === 0 ? (
        <p className="empty">{NOTHING_TO_GET}</p>
      ) : (
        <>
          {parts.map((part) => (
            <Part key={part.title} part={part} />
          ))}
          <p>
            <strong>{orderTotalInWords(list, derived.job)}</strong>
            {cheaper !== null && <span className="small under">{cheaper}</span>}
          </p>
        </>
      )}
    </>
  );
}

function Part({ part: { title, note, rows } }: { part: OrderPart }): ReactNode {
  const [what, much, each, cost] = ORDER_COLUMNS;
  return (
    <div>
      <table className="table table-plain order-rows">
        <caption className="order-title">{title}</caption>
        <thead>
          <tr>
            <th scope="col">
              {what}, {uncapital(much)}
            </th>
            <th scope="col" className="number">
              {each}
            </th>
            <th scope="col" className="number">
              {cost}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, howMuch, at, comesTo], i) => (
            <tr key={`${name} ${i}`}>
              <th scope="row">
                {name}
                <span className="under">{howMuch}</span>
              </th>
              <td className="number">{at}</td>
              <td className="number">{comesTo}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {note !== null && <p className="small">{note}</p>}
    </div>
  );
}
