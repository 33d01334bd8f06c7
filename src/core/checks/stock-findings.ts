/** Tubes that the cutting plan has no stick for, and what to get. Spares have no place in the frame: the plan itself says so of them. */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { Wanting } from '../stock/wanting.ts';
import type { Finding } from './types.ts';

export function stockFindings(frame: Frame, wanting: readonly Wanting[]): readonly Finding[] {
  return wanting.flatMap(({ why, parts, count, length, batch }) =>
    parts.flatMap(({ id, length: part, spare }): readonly Finding[] => {
      const tube = spare === null ? frame.byId.get(id) : undefined;
      if (tube === undefined || (why === 'too-long' && isTold(tube, part))) return [];
      return [
        {
          id: 'stock/no-stick',
          severity: 'warning',
          source: 'rack',
          tube: id,
          at: tube.corners[0]!,
          why,
          length: part,
          get: { count, length, batch, parts: parts.length },
        },
      ];
    }),
  );
}

/** By `stock/longer-than-stick`, which goes by the one length that its section is bought in and also knows the way out. */
const isTold = ({ section: { stick } }: SolvedTube, length: number): boolean =>
  stick !== undefined && length - stick > ROUNDING;
