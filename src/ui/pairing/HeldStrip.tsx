/** Over whatever is worked on, as long as what all have made together cannot be drawn. It folds, since it cannot be closed. */
import type { ReactNode } from 'react';
import { usePairing } from '../../store/pairing-page.ts';
import { isNarrow } from '../kit/useNarrow.ts';
import { Held } from './Held.tsx';
import './pairing.css';

export default function HeldStrip(): ReactNode {
  const held = usePairing((state) => state.held);
  if (held.length === 0) return null;
  return (
    <details className="notice notice-wrong pairing-strip" open={!isNarrow()}>
      <summary>
        <span aria-hidden="true">▲ </span>What the devices made together cannot be drawn
      </summary>
      <Held faults={held} />
    </details>
  );
}
