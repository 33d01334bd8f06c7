import { describe, expect, it } from 'vitest';
import type { Clearance } from '../../../src/core/checks/clearances.ts';
import type { Finding, Severity } from '../../../src/core/checks/types.ts';
import { bySeverity } from '../../../src/core/checks/faults.ts';
import { nearestFirst } from '../../../src/ui/checks/order.ts';

const finding = (severity: Severity, tube: string): Finding => ({
  id: 'end/wider-than-run',
  severity,
  tube,
  end: 'A',
  node: 'n',
  source: 'practice',
  at: [0, 0, 0],
});

const gap = (envelope: string, distance: number): Clearance => ({
  envelope,
  tube: 't',
  distance,
  gap: 50,
  ok: distance >= 50,
  at: [0, 0, 0],
  onEnvelope: [0, 0, 0],
});

describe('the order of reading', () => {
  it('puts errors first, then warnings, then notes, each in the order found', () => {
    const given = [finding('note', '1'), finding('error', '2'), finding('warning', '3'), finding('error', '4')];
    expect(bySeverity(given).map(({ tube }) => tube)).toEqual(['2', '4', '3', '1']);
    expect(given[0]?.tube).toBe('1');
  });

  it('puts the shortest gap of a box first, inside it before all', () => {
    const gaps = [gap('head', 80), gap('knee', 1), gap('head', -4), gap('head', 61)];
    expect(nearestFirst(gaps, 'head').map(({ distance }) => distance)).toEqual([-4, 61, 80]);
  });
});
