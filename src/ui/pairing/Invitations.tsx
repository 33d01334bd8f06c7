/** The address that lets a device in: as a code for its camera, and as text. A network may know the server by several. */
import { useRef, useState, type ReactNode } from 'react';
import { encodeQR } from 'qr';

/** Squares of white round it, which a camera needs (ISO/IEC 18004). */
const QUIET = 4;

export function Invitations(props: { readonly invitations: readonly string[]; readonly isOpen: boolean }): ReactNode {
  const [first, ...others] = props.invitations as readonly [string, ...string[]];
  return (
    <details className="pairing-fold" open={props.isOpen}>
      <summary>Let a device in</summary>
      <div className="pairing-invitation">
        <Code words={first} />
        <div>
          <p>
            On the phone, on the same network: point the camera at the square, or type the address into the browser.
          </p>
          <Address address={first} />
        </div>
      </div>
      {others.length > 0 && (
        <details className="pairing-fold">
          <summary>If that one does not open: {others.length} more</summary>
          {others.map((address) => (
            <Address key={address} address={address} />
          ))}
        </details>
      )}
    </details>
  );
}

/** Dark on light in every light of the shop: the other way round many a camera does not read it. */
function Code({ words }: { readonly words: string }): ReactNode {
  const rows = encodeQR(words, 'raw', { ecc: 'medium', border: QUIET });
  const path = rows.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  return (
    <svg
      className="pairing-code"
      viewBox={`0 0 ${rows.length} ${rows.length}`}
      role="img"
      aria-label="The address as a code for the camera"
      shapeRendering="crispEdges"
    >
      <path d={path} />
    </svg>
  );
}

function Address({ address }: { readonly address: string }): ReactNode {
  const field = useRef<HTMLInputElement>(null);
  const [said, say] = useState('');
  async function copy(): Promise<void> {
    field.current!.select();
    try {
      await navigator.clipboard.writeText(address);
      say('Copied');
    } catch {
      say('It is marked: copy it by hand'); // the browser hands nothing over here
    }
  }
  return (
    <div className="pairing-address">
      <input ref={field} className="entry-input" readOnly aria-label="Address" value={address} />
      <button type="button" className="press" onClick={() => void copy()}>
        Copy
      </button>
      <span role="status" className="small">
        {said}
      </span>
    </div>
  );
}
