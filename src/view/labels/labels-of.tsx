/** What is written in the bay: numbers, names, ends, the gap's dimension, what fails and where, and the axes. */
import { addScaled, interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import type { Finding } from '../../core/checks/types.ts';
import type { Job } from '../../core/job/types.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Station } from '../../store/types.ts';
import { Figure } from '../Figure.tsx';
import type { Floor } from '../scene/floor.ts';
import type { Gap } from '../scene/gap.ts';
import type { Spot } from '../pick.ts';
import type { Label } from './label.ts';

/** Places along the tube for its number: the middle of its longest straight first, then off the middle, then the others. */
function numberPlaces(tube: SolvedTube): readonly Vec3[] {
  const byLength = tube.path.pieces.filter((piece) => piece.kind === 'line').toSorted((a, b) => b.length - a.length);
  return [0.5, 0.38, 0.62, 0.26, 0.74].flatMap((t) => byLength.map((piece) => interpolate(piece.from, piece.to, t)));
}

export function numberLabels(tubes: readonly SolvedTube[], selected: SolvedTube | undefined): Label[] {
  return tubes.map((tube) => {
    const live = tube === selected;
    return {
      key: `number ${tube.id}`,
      at: numberPlaces(tube),
      rank: live ? 0 : 30 + tube.number / 1000,
      look: 'number',
      ...(live && { tone: 'live' }),
      text: tube.number,
    };
  });
}

/** Ends A and B, and the number of each bend, of the selected tube. */
export function tubeLabels(tube: SolvedTube): Label[] {
  const ends = tube.ends.map((end, i): Label => ({
    key: `end ${i}`,
    at: [addScaled(end.position, end.direction, -42), addScaled(end.position, end.direction, 70)],
    rank: 1,
    look: 'end',
    text: i === 0 ? 'A' : 'B',
  }));
  const bends = tube.bends.map((bend, i): Label => ({
    key: `bend ${i}`,
    // The sharp corner lies outside the bend, where the word covers no tube.
    at: [bend.corner, interpolate(bend.corner, bend.centre, 0.5)],
    rank: 2,
    look: 'name',
    text: `bend ${i + 1}`,
  }));
  return [...ends, ...bends];
}

export const gapLabels = (gaps: readonly Gap[], unit: Job['lengthUnit']): Label[] =>
  gaps.map((gap) => ({
    key: `gap ${gap.envelope}`,
    at: [gap.middle],
    shift: [0, -20],
    rank: 3,
    look: 'dimension',
    ...(!gap.ok && { tone: 'bad' }),
    text: (
      <>
        {!gap.ok && '! '}
        <Figure mm={gap.distance} unit={unit} />
      </>
    ),
  }));

/** One sign a place: findings that share a place share it. Warnings only where the checks are read. */
export function findingLabels(findings: readonly Finding[], station: Station): Label[] {
  const seen = new Set<string>();
  return findings.flatMap((finding) => {
    if (finding.severity === 'note' || (finding.severity === 'warning' && station !== 'checks')) return [];
    const key = `finding ${finding.severity} ${finding.at.join(' ')}`;
    if (seen.has(key)) return [];
    seen.add(key);
    const error = finding.severity === 'error';
    return [
      {
        key,
        at: [finding.at],
        shift: [0, -22],
        rank: error ? 4 : 20,
        look: error ? 'fault' : 'caution',
        text: error ? '!' : '?',
      },
    ];
  });
}

export const spotLabels = (spots: readonly Spot[], nameOf: (spot: Spot) => string, rank: number): Label[] =>
  spots.map((spot) => ({
    key: `spot ${spot.selection.kind} ${spot.selection.id}`,
    at: [spot.at],
    shift: [0, 18],
    rank,
    look: 'name',
    text: nameOf(spot),
  }));

export const axisLabels = (floor: Floor): Label[] => [
  { key: 'axis forward', at: [floor.forward], shift: [0, -14], rank: 50, look: 'axis', text: 'forward' },
  { key: 'axis left', at: [floor.left], shift: [0, -14], rank: 50, look: 'axis', text: 'left' },
  { key: 'axis up', at: [floor.up], shift: [0, -12], rank: 50, look: 'axis', text: 'up' },
];
