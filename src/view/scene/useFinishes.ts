/** The finishes of one drawing, in the colours of the light, freed with it. */
import { useEffect, useMemo } from 'react';
import type { Palette } from '../canvas/palette.ts';
import { makeFinishes, paintFinishes, type Finishes } from './steel.ts';

/** Whoever draws must ask for a frame when the palette changes. */
export function useFinishes(palette: Palette): Finishes {
  const finishes = useMemo(() => makeFinishes(), []);
  useEffect(() => () => Object.values(finishes).forEach((finish) => finish.dispose()), [finishes]);
  useEffect(() => paintFinishes(finishes, palette), [finishes, palette]);
  return finishes;
}
