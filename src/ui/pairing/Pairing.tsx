/** The dialog's content, of this page's own pairing. */
import { useEffect, type ReactNode } from 'react';
import { usePairing } from '../../store/pairing-page.ts';
import { PairingView } from './PairingView.tsx';

export default function Pairing(): ReactNode {
  const state = usePairing((all) => all);
  const { offer, ask } = state;
  useEffect(() => {
    if (offer === null) void ask();
  }, [offer, ask]);
  return <PairingView state={state} actions={state} />;
}
