/** What two devices wrote in one place, neither knowing of the other: the later counts, and the person chooses. */
import type { ReactNode } from 'react';
import { overriddenInWords } from '../../core/words/overridden.ts';
import type { PairingActions, PairingState } from '../../store/pairing/types.ts';
import { useDocument } from '../../store/page.ts';

export function Overrides(props: {
  readonly overridden: PairingState['overridden'];
  /** Of this device. */
  readonly name: string;
  readonly actions: Pick<PairingActions, 'take' | 'dismiss'>;
}): ReactNode {
  const { overridden, name, actions } = props;
  const job = useDocument((state) => state.job);
  if (overridden.length === 0) return null;
  return (
    <section>
      <h3>Both wrote: {overridden.length}</h3>
      <ul className="pairing-twice">
        {overridden.map((one) => {
          const { title, lines } = overriddenInWords(one, job);
          const use = one.by === name ? 'Use ours' : 'Use theirs';
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
                    <dt>{one.by === name ? 'Written here' : `${one.by} wrote`}</dt>
                    <dd>{there}</dd>
                  </div>
                </dl>
              ))}
              <div className="row">
                <button
                  type="button"
                  className="press"
                  aria-label={`${use}: ${title}`}
                  onClick={() => actions.take(one)}
                >
                  {use}
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
