/** What is to be padded, to buy and to cut: each stretch of tube near a helmet, where it begins along the tube and how long it is. */
import type { ReactNode } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { ToPad } from '../../core/rules/types.ts';
import { tubeName } from '../../core/solve/names.ts';
import { ALONG_FROM_A } from '../../core/words/rule-book.ts';
import { editor } from '../../store/page.ts';
import { placeAt } from '../../core/geometry/path.ts';
import { Length } from '../fields/Readings.tsx';

export const PaddingList = ({ stretches, derived }: { stretches: readonly ToPad[]; derived: Derived }): ReactNode => (
  <details className="verdict-more">
    <summary>Where to pad, tube by tube</summary>
    <table className="table table-plain">
      <thead>
        <tr>
          <th scope="col">Tube</th>
          <th scope="col" className="number">
            {ALONG_FROM_A}
          </th>
          <th scope="col" className="number">
            Length
          </th>
        </tr>
      </thead>
      <tbody>
        {stretches.map(({ tube, from, to }) => (
          <tr key={`${tube} ${from}`}>
            <th scope="row">
              <button
                type="button"
                className="link"
                onClick={() =>
                  editor
                    .getState()
                    .goTo(placeAt(derived.byId.get(tube)!.path, (from + to) / 2).point, { kind: 'tube', id: tube })
                }
              >
                {tubeName(derived, tube)}
              </button>
            </th>
            <td className="number">
              <Length mm={from} withUnit />
            </td>
            <td className="number">
              <Length mm={to - from} withUnit />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);
