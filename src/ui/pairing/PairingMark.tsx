/** On the band while the job is shared: how the devices stand, and the way to the dialog. What changes of it is also said aloud. */
import type { ReactNode } from 'react';
import { usePairing } from '../../store/pairing-page.ts';
import { shortStanding, standingInWords } from './standing.ts';
import './pairing.css';

export default function PairingMark({ open }: { readonly open: () => void }): ReactNode {
  const standing = usePairing((state) => state.standing);
  const devices = usePairing((state) => state.devices);
  const held = usePairing((state) => state.held);
  const latest = usePairing((state) => state.came[0]);
  const twice = usePairing((state) => state.overridden.length);
  const stands = standingInWords({ standing, devices, held }).title;
  const said = twice === 0 ? stands : `${stands}. Both wrote: ${twice}`;
  return (
    <>
      <span className="spoken-only" role="status">
        {standing === 'off' ? '' : said}
      </span>
      <span className="spoken-only" role="status">
        {latest === undefined ? '' : `${latest.by}: ${latest.label}`}
      </span>
      {standing !== 'off' && (
        <button
          type="button"
          className="band-key pairing-mark"
          data-wrong={standing === 'out' || standing === 'full' || held.length + twice > 0 ? '' : undefined}
          aria-label={`Phone at the bender. ${said}`}
          title={said}
          onClick={open}
        >
          <svg className="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
            <path d="M6 1.5h8v17H6zM8.5 15.5h3" fill="none" stroke="currentColor" strokeWidth="1.75" />
          </svg>
          <span aria-hidden="true">{twice > 0 ? 'both wrote' : shortStanding({ standing, devices, held })}</span>
        </button>
      )}
    </>
  );
}
