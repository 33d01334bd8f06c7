/** One job on several devices: how it is shared, who is there, and what came of it. What is shown comes in, what is pressed goes out. */
import { useEffect, useId, useRef, useState, type ReactNode } from 'react';
import type { Device, PairingActions, PairingState } from '../../store/pairing/types.ts';
import { Held } from './Held.tsx';
import { Invitations } from './Invitations.tsx';
import { Overrides } from './Overrides.tsx';
import { standingInWords } from './standing.ts';
import '../kit/ui.css';
import './pairing.css';

interface ViewProps {
  readonly state: PairingState;
  readonly actions: PairingActions;
}

export function PairingView({ state, actions }: ViewProps): ReactNode {
  const whole = useRef<HTMLDivElement>(null);
  // What is pressed may go with the press: whoever pressed it stays in the dialog.
  useEffect(() => {
    if (document.activeElement === document.body) whole.current?.focus({ preventScroll: true });
  });
  return (
    <div ref={whole} className="pairing" tabIndex={-1}>
      {state.standing === 'off' ? (
        <Alone state={state} actions={actions} />
      ) : (
        <Shared state={state} actions={actions} />
      )}
    </div>
  );
}

/** What sharing does, for whoever asks what the key is for. */
function Alone({ state: { offer }, actions }: ViewProps): ReactNode {
  if (offer === null) return <p role="status">Asking the server of this page</p>;
  if (offer === 'none') {
    return (
      <>
        <p>
          A phone or tablet beside the machine can show this same job: what is ticked off there stands here at once, and
          what is changed here stands there.
        </p>
        <p>
          <strong>This page cannot begin it.</strong> Only the computer that serves the program can, and only when it
          was started for the shop’s network:
        </p>
        <p>
          <code className="pairing-command">npm start -- --network</code>
        </p>
        <p className="small">
          Then open this on that computer, at the address that it prints. A page from a web host pairs no devices; how a
          shop’s own server is set up stands in docs/hosting.md.
        </p>
        <p>
          <button type="button" className="press" onClick={() => void actions.ask()}>
            Ask the server again
          </button>
        </p>
      </>
    );
  }
  return (
    <>
      <ul className="pairing-means">
        <li>Every device that has the address sees this job and can change all of it, at the same time as you.</li>
        <li>Without the network each goes on by itself; what was done goes over when it is back.</li>
        {!offer.addresses.every((address) => address.startsWith('https:')) && (
          <li>
            What is sent is not encrypted: whoever is on the network can read it. Share on your own network, not on a
            guest’s.
          </li>
        )}
      </ul>
      {offer.addresses.length === 0 && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          This computer is on no network now, so no phone can reach it. Connect it, then{' '}
          <button type="button" className="press" onClick={() => void actions.ask()}>
            look again
          </button>
        </p>
      )}
      <button type="button" className="press press-live pairing-key" onClick={() => void actions.share()}>
        Share this job
      </button>
    </>
  );
}

function Shared({ state, actions }: ViewProps): ReactNode {
  const { standing, invitations, held, overridden, came, offer } = state;
  const isServer = offer !== null && offer !== 'none';
  const { title, words } = standingInWords(state);
  return (
    <>
      <section className="pairing-now" data-standing={standing}>
        <h3>{title}</h3>
        {words !== '' && <p>{words}</p>}
      </section>
      {held.length > 0 && (
        <section className="pairing-stuck">
          <Held faults={held} />
        </section>
      )}
      <Overrides overridden={overridden} name={state.name} actions={actions} />
      {standing !== 'out' && standing !== 'joining' && invitations.length > 0 && (
        <Invitations invitations={invitations} isOpen={isServer} />
      )}
      {standing !== 'out' && <Devices devices={state.devices} name={state.name} rename={actions.rename} />}
      {came.length > 0 && (
        <section>
          <h3>Done on other devices</h3>
          <ol className="pairing-came">
            {came.map(({ by, label }, i) => (
              <li key={came.length - i}>
                <strong>{by}</strong> {label}
              </li>
            ))}
          </ol>
        </section>
      )}
      <section className="pairing-ways">
        {isServer && (
          <Asked
            name="New address"
            question="All other devices are out at once, until each has scanned the new one. What they did without the network comes with them then."
            yes="Make a new address"
            act={() => void actions.newSecret()}
          />
        )}
        <Asked
          name="Go on alone"
          question="This device keeps the job as it is now, and what the others do from here on does not come. Coming back takes the address again."
          yes="Part from the others"
          act={actions.leave}
        />
      </section>
    </>
  );
}

/** Which devices are there; this one is named by its person. */
function Devices(props: {
  readonly devices: readonly Device[];
  readonly name: string;
  readonly rename: (name: string) => void;
}): ReactNode {
  const { devices, name, rename } = props;
  const [typed, type] = useState<string | null>(null);
  const id = useId();
  const take = (): void => {
    const next = typed?.trim() ?? '';
    if (next !== '' && next !== name) rename(next);
    type(null);
  };
  return (
    <section>
      <h3>Devices</h3>
      {devices.length > 0 && (
        <ul className="pairing-devices">
          {devices.map((device, i) => (
            <li key={i}>
              <strong>{device.name}</strong>
              {device.isSelf && ' (this one)'}
            </li>
          ))}
        </ul>
      )}
      <div className="entry">
        <label htmlFor={id} className="entry-label">
          What the others call this one
        </label>
        <input
          id={id}
          type="text"
          className="entry-input"
          maxLength={40}
          autoComplete="off"
          spellCheck={false}
          value={typed ?? name}
          onChange={(event) => type(event.currentTarget.value)}
          onBlur={take}
          onKeyDown={({ key }) => key === 'Enter' && take()}
        />
      </div>
    </section>
  );
}

/** A key that asks before it acts; what it asks stands in its place. */
function Asked(props: {
  readonly name: string;
  readonly question: string;
  readonly yes: string;
  readonly act: () => void;
}): ReactNode {
  const { name, question, yes, act } = props;
  const [isAsked, ask] = useState<boolean | null>(null);
  if (isAsked !== true) {
    return (
      <button type="button" className="press" autoFocus={isAsked === false} onClick={() => ask(true)}>
        {name}
      </button>
    );
  }
  return (
    <div className="pairing-question" role="group" aria-label={name}>
      <p>{question}</p>
      <div className="row">
        <button
          type="button"
          className="press"
          onClick={() => {
            ask(false);
            act();
          }}
        >
          {yes}
        </button>
        {/* The focus goes to what changes nothing. */}
        <button type="button" className="press press-live" autoFocus onClick={() => ask(false)}>
          Leave it
        </button>
      </div>
    </div>
  );
}
