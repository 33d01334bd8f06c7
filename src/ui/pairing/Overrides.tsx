/** What two devices wrote in one place, neither knowing of the other: the later counts, and the person chooses. */
import type { ReactNode } from 'react';
import { overriddenInWords } from '../../core/words/overridden.ts';
import type { PairingActions, PairingState } from '../../store/pairing/types.ts';
import { useDocument } from '../../store/page.ts';

export function Overrides(props: {
  readonly overridden: PairingState['overridden'];
  readonly actions: Pick<PairingActions, 'take' | 'dismiss'>;
}): ReactNode {
  const { overridden, actions } = props;
  const job = useDocument((state) => state.job);
  if (overridden.length === 0) return null;
  return (
    <section>
      <h3>Both wrote: {overridden.length}</h3>
      <ul className="pairing-twice">
        {overridden.map((one) => {
          const { title, lines } = overriddenInWords(one, job);
          return (
            <li key={one.key}>
              <h4>{title}</h4>
              {lines.map(({ label, here, there }) => (
                <dl key={label}>
                  <div>
                    <dt>{label}</dt>
                    <dd>{here}</dd>
                  </div>
                  <div>
                    <dt>{one.by} wrote</dt>
                    <dd>{there}</dd>
                  </div>
                </dl>
              ))}
              <div className="row">
                <button
                  type="button"
                  className="press"
                  aria-label={`Use theirs: ${title}`}
                  onClick={() => actions.take(one)}
                >
                  Use theirs
                </button>
                <button
                  type="button"
                  className="press"
                  aria-label={`Leave: ${title}`}
                  onClick={() => actions.dismiss(one)}
                >
                  Leave
                </button>
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
