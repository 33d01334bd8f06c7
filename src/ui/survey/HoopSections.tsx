/** Where the body lines come through the plane of each hoop, and how far from the tube: a press goes there. */
import { useMemo, type ReactNode } from 'react';
import { hoopsInBody } from '../../core/run/body-section.ts';
import { CAR_IN_PLANE, crossingName } from '../../core/words/body-section.ts';
import { numbered } from '../../core/words/ends.ts';
import { editor, useDocument } from '../../store/page.ts';
import { GapLength } from '../fields/Readings.tsx';

export default function HoopSections(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const hoops = useMemo(() => hoopsInBody(derived.job, derived.tubes), [derived]);
  if (hoops.length === 0) {
    return <p className="small">No body line comes through the plane of a hoop.</p>;
  }
  return hoops.map(({ tube, crossings }) => (
    <section key={tube.id} aria-label={numbered(tube)}>
      <h4>{numbered(tube)}</h4>
      <p className="small">{CAR_IN_PLANE}. On paper it is drawn beside the hoop in layout.pdf.</p>
      <ul className="lines">
        {crossings.map((crossing) => (
          <li key={`${crossing.line} ${crossing.at.join(' ')}`} className="small">
            <button
              type="button"
              className="link"
              onClick={() => editor.getState().goTo(crossing.at, { kind: 'tube', id: tube.id })}
            >
              {crossingName(crossing)}
            </button>
            : <GapLength mm={crossing.gap} />
          </li>
        ))}
      </ul>
    </section>
  ));
}
