/** What is written in the bay: numbers, names, ends, the gap's dimension, what fails and where, and the axes. */
import { shownName } from '../../core/job/shown.ts';
import { addScaled, interpolate, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { Derived } from '../../core/derive.ts';
import type { Forecast } from '../../core/forecast/types.ts';
import type { Finding } from '../../core/checks/types.ts';
import type { Point } from '../../core/job/kinds/point.ts';
import type { Job } from '../../core/job/types.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { bareId } from '../../core/job/reference.ts';
import { stepBelow } from '../../core/units/step.ts';
import type { PointedOut, Selection, Station } from '../../store/types.ts';
import { gapingOf, gapInWords } from '../../core/words/gaping.ts';
import { nodeName, pointName } from '../../core/solve/names.ts';
import { pointPlace } from '../canvas/shown.ts';
import { Figure } from '../canvas/Figure.tsx';
import type { Floor } from '../scene/floor.ts';
import type { DrawnApart } from '../scene/apart.ts';
import type { Gap } from '../scene/gap.ts';
import type { Spot } from '../canvas/pick.ts';
import { remembered } from '../../core/remembered.ts';
import type { Label } from './label.ts';

/** Places along the tube for its number: the middle of its longest straight first, then off the middle, then the others. */
function numberPlaces(tube: SolvedTube): readonly Vec3[] {
  const byLength = tube.path.pieces.filter((piece) => piece.kind === 'line').toSorted((a, b) => b.length - a.length);
  return [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9].flatMap((t) =>
    byLength.map((piece) => interpolate(piece.from, piece.to, t)),
  );
}

export const numberLabels = (tubes: readonly SolvedTube[], chosen: readonly SolvedTube[]): Label[] =>
  tubes.map((tube) => (chosen.includes(tube) ? { ...ownNumber(tube), rank: 0, tone: 'live' } : numberOn(tube)));

const ownNumber = (tube: SolvedTube): Label => ({
  key: `number ${tube.id}`,
  at: numberPlaces(tube),
  rank: 30 + tube.number / 1000,
  look: 'number',
  text: tube.number,
});

const numberOn = remembered((tube: SolvedTube): Label => ({ ...ownNumber(tube), on: tube }));

/** Ends A and B, and the number of each bend, of the chosen tube, or of the pieces of a bar in their order. */
export function tubeLabels(chosen: readonly SolvedTube[]): Label[] {
  const [first, last] = [chosen[0], chosen.at(-1)];
  if (first === undefined || last === undefined) return [];
  const ends = [first.ends[0], last.ends[1]].map((end, i): Label => ({
    key: `end ${i}`,
    at: [addScaled(end.position, end.direction, -42), addScaled(end.position, end.direction, 70)],
    rank: 1,
    look: 'end',
    text: i === 0 ? 'A' : 'B',
  }));
  const bent = chosen.flatMap(({ bends, section }) => bends.map((bend) => ({ bend, width: section.outerDiameter })));
  const bends = bent.map(({ bend, width }, i): Label => {
    const outwards = normalize(subtract(bend.corner, bend.centre));
    return {
      key: `bend ${i}`,
      // Off the outside of the bend, or off its inside, so that the word covers no tube.
      at: [1.6, -1.6].map((diameters) => addScaled(bend.corner, outwards, diameters * width)),
      rank: 2,
      look: 'name',
      text: `bend ${i + 1}`,
    };
  });
  return [...ends, ...bends];
}

/** Of a joint drawn apart: the order in which its tubes are fitted. */
export const orderLabels = (apart: DrawnApart | null): Label[] =>
  (apart?.order ?? []).map(({ nth, at }) => ({ key: `fitted ${nth}`, at: [at], rank: 0, look: 'end', text: nth }));

export const gapLabels = (gaps: readonly Gap[], unit: Job['lengthUnit']): Label[] =>
  gaps.map((gap) => ({
    key: `gap ${gap.envelope}`,
    at: [gap.middle, gap.onTube, gap.onEnvelope],
    shift: [0, -20],
    rank: 1.5,
    look: 'dimension',
    ...(!gap.ok && { tone: 'bad' }),
    text: (
      <>
        {!gap.ok && '× '}
        <Figure mm={stepBelow(gap.distance, unit)} unit={unit} />
      </>
    ),
  }));

/** The dimension of what a list points out. */
export function pointedOutLabels(pointedOut: PointedOut | null): Label[] {
  if (pointedOut?.line == null) return [];
  const { line, text, isAmiss } = pointedOut;
  return [
    {
      key: 'pointed out',
      at: [interpolate(...line, 0.5), ...line],
      shift: [0, -20],
      rank: 0.5,
      look: 'dimension',
      ...(isAmiss && { tone: 'bad' }),
      text: isAmiss ? `× ${text}` : text,
    },
  ];
}

/** One sign a place: findings that share a place share it. Warnings only where the checks are read. */
export function findingLabels(findings: readonly Finding[], station: Station): Label[] {
  const seen = new Set<string>();
  return findings.flatMap((finding) => {
    if (finding.severity === 'note' || (finding.severity === 'warning' && station !== 'checks')) return [];
    const label = findingLabel(finding);
    return seen.size < seen.add(label.key).size ? [label] : [];
  });
}

const findingLabel = remembered(({ severity, at }: Finding): Label => {
  const error = severity === 'error';
  return {
    key: `finding ${severity} ${at.join(' ')}`,
    at: [at],
    shift: [0, -22],
    rank: error ? 4 : 20,
    look: error ? 'fault' : 'caution',
    text: error ? '×' : '!',
  };
});

/** How far each joint that does not fit easily will gape, the widest first, while the forecast is looked at. */
export const forecastLabels = (forecast: Forecast | null, unit: Job['lengthUnit']): Label[] =>
  (forecast?.joints ?? []).flatMap(({ tube, end, at, gap }, i): Label[] => {
    const gaping = gapingOf(gap);
    if (gaping === 'close') return [];
    return [
      {
        key: `forecast ${tube} ${end}`,
        at: [at],
        shift: [0, -20],
        rank: 1.6 + i / 1000,
        look: 'dimension',
        ...(gaping === 'wide' && { tone: 'bad' }),
        text: gapInWords(gap, unit),
      },
    ];
  });

/** Below this zoom, pixels a mm, the names of a whole car's points would cover the car. */
const NAMES_FROM = 0.55;

/** Names of measured points: the selected one's always, the others' where they are asked for and there is room. */
export function pointLabels(spots: readonly Spot[], job: Job, selection: Selection | null, all: boolean): Label[] {
  const live = spots.find(({ selection: { id } }) => selection?.kind === 'point' && selection.id === id);
  const name = job.points.find((point) => live !== undefined && point.id === bareId(live.selection.id))?.name;
  return [
    ...(live === undefined || name === undefined
      ? []
      : [
          {
            key: `point ${live.selection.id}`,
            at: [live.at],
            shift: [0, 20],
            rank: 1,
            look: 'name',
            text: shownName(name),
          } as const,
        ]),
    ...(all ? job.points.filter(({ id }) => id !== live?.selection.id).map(pointLabel) : []),
  ];
}

/** The name of the node or point under the pointer; what is selected says its own. */
export function pointedLabels(
  frame: Derived,
  pointed: Selection | null,
  selection: Selection | null,
  station: Station,
): Label[] {
  if (pointed === null || (pointed.kind !== 'node' && pointed.kind !== 'point')) return [];
  if (pointed.kind === selection?.kind && pointed.id === selection.id) return [];
  const isNode = pointed.kind === 'node';
  const at = isNode ? frame.nodes.get(pointed.id) : pointPlace(frame.job, pointed.id);
  const name = (isNode ? nodeName : pointName)(frame.job, pointed.id);
  // Who has a tube selected takes hold of its corner: the grips come with a press on it.
  const text = isNode && station === 'frame' ? `${name}: press to move it` : name;
  return at === undefined ? [] : [{ key: 'pointed', at: [at], shift: [0, 20], rank: 0, look: 'name', text }];
}

const pointLabel = remembered(({ id, name, position }: Point): Label => ({
  key: `point ${id}`,
  at: (pixelsPerMm) => (pixelsPerMm < NAMES_FROM ? [] : [position]),
  shift: [0, 20],
  rank: 40,
  look: 'name',
  text: shownName(name),
}));

/** At the end of each datum line, or nearer to the datum where that is out of sight. */
export const axisLabels = (floor: Floor): Label[] =>
  (['forward', 'left', 'up'] as const).map((way) => ({
    key: `axis ${way}`,
    at: [1, 0.8, 0.6, 0.4].map((t) => scale(floor[way], t)),
    shift: [0, -14],
    rank: 50,
    look: 'axis',
    text: way,
  }));
