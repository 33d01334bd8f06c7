/**
 * What is written on a full-size layout: names of nodes, places of the tangents, bends, dimensions, what has to be known of the tube.
 * All in the layout's own coordinates; no words stand on others. How wide letters are set is not known here, so they are taken
 * to be wide.
 */
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Finding } from '../../core/checks/types.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import { addScaled } from '../../core/geometry/vector.ts';
import { sectionInWords } from '../../core/job/sizes.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { FlatPlace, FlatTube } from '../../core/run/lay-flat.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { leansOfTape, tapeReading, type TapeReading } from '../../core/units/tape.ts';
import { boxOf, clearOf } from '../../drawing/clear.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { unknownFace } from '../../drawing/unknown-face.ts';
import { DASHED, FAINT, FINE, HAIR, line, words } from '../../drawing/strokes.ts';
import type { Mark, Words } from '../../drawing/types.ts';
import { numbered } from '../../core/words/ends.ts';
import { lengthInWords } from '../shared/wrap-words.ts';

/** Legible from a bench, mm. */
const SIZE = 6;
/** From the tube's surface to the words that name a place on it, and farther out, step by step, where others stand there. */
const OUT = 14;
const STEP = 9;
const STEPS = 12;

/** Everything written about a tube of which something is drawn all over `box`; `fine` as in layoutDrawing. */
export function layoutWords(
  tube: SolvedTube,
  flat: FlatTube,
  box: Box2,
  findings: readonly Finding[],
  unit: LengthUnit,
  fine: boolean,
  dimensioned: boolean,
): Mark[] {
  const ra = tube.section.outerDiameter / 2;
  const reading = (mm: number): TapeReading => tapeReading(mm, unit, fine);
  const labels = labelled([
    ...nodeLabels(tube, flat, ra),
    ...sawnLabels(tube, flat, ra),
    ...bendLabels(tube, flat, ra, unit, reading),
  ]);
  const around = boundsOf([
    { x: box.left, y: box.bottom },
    { x: box.right, y: box.top },
    ...labels.filter((mark) => mark.kind === 'words').flatMap((mark) => boxOf(mark, unknownFace)),
  ]);
  return [
    ...labels,
    ...(dimensioned ? dimensions(tube, flat, around, unit, labels) : []),
    ...title(tube, around, findings, unit, leansOfTape(unit, fine)),
  ];
}

export const boundsOf = (places: readonly FlatPlace[]): Box2 => ({
  left: Math.min(...places.map(({ x }) => x)),
  right: Math.max(...places.map(({ x }) => x)),
  bottom: Math.min(...places.map(({ y }) => y)),
  top: Math.max(...places.map(({ y }) => y)),
});

/** A line across the tube, and the words at its end, which it reaches out to wherever they find room. */
interface Label {
  /** So far out beyond where the words stand at the nearest, mm. */
  readonly words: (beyond: number) => Words;
  readonly line: (beyond: number) => Mark;
}

/** Each where it stands clear of those before it, as near to the tube as may be. */
function labelled(labels: readonly Label[]): Mark[] {
  const set: Words[] = [];
  return labels.flatMap((label) => {
    const steps = Array.from({ length: STEPS }, (_, i) => label.words(i * STEP));
    const placed = clearOf(steps, set, unknownFace);
    set.push(placed);
    return [label.line(steps.indexOf(placed) * STEP), placed];
  });
}

/** A line square through each node, and its name. */
const nodeLabels = (tube: SolvedTube, flat: FlatTube, ra: number): Label[] =>
  tube.ends.map(({ position, reference, direction }, which) => {
    const at = (aside: number) => flat.onPlane(addScaled(position, reference, aside));
    return {
      words: (beyond) => {
        const place = flat.onPlane(addScaled(addScaled(position, reference, ra + OUT + beyond), direction, 4));
        return words('TEXT', place.x, place.y, `node ${which === 0 ? 'A' : 'B'}`, SIZE, { anchor: 'middle' });
      },
      line: (beyond) => line('NODE', [at(-ra - 10), at(ra + 10 + beyond)], DASHED),
    };
  });

/** Where the blank was sawn, on the other side of the tube than the node's name. */
const sawnLabels = (tube: SolvedTube, flat: FlatTube, ra: number): Label[] =>
  tube.ends.map((end, which) => {
    const { position, reference, direction } = end;
    const sawn = addScaled(position, direction, -beyondNode(end));
    const at = (aside: number) => flat.onPlane(addScaled(sawn, reference, -aside));
    return {
      words: (beyond) => {
        const { x, y } = at(ra + OUT + beyond);
        return words('TEXT', x, y, `sawn end ${which === 0 ? 'A' : 'B'}`, SIZE, { anchor: 'middle' });
      },
      line: (beyond) => line('SAWN', [at(-ra - 4), at(ra + 10 + beyond)], FINE),
    };
  });

/** Across the tube at both tangents of every bend, counted along the tube from its sawn end A; and the bend itself, on its inside. */
function bendLabels(
  tube: SolvedTube,
  flat: FlatTube,
  ra: number,
  unit: LengthUnit,
  reading: (mm: number) => TapeReading,
): Label[] {
  const onTape = (mm: number): string => {
    const { text, leans } = reading(mm);
    return `${text}${leans === '' ? '' : ` ${leans}`} ${unit}`;
  };
  const fromNode = beyondNode(tube.ends[0]);
  const arcs = flat.pieces.filter((piece) => piece.kind === 'arc');
  return arcs.flatMap((arc, i): Label[] => {
    const { centre, radius, low, high, left } = arc;
    const bend = tube.bends[i]!;
    const at = (angle: number, far: number) => ({
      x: centre.x + far * Math.cos(angle),
      y: centre.y + far * Math.sin(angle),
    });
    const tangent = (angle: number, text: string): Label => ({
      words: (beyond) => {
        const { x, y } = at(angle, radius + ra + OUT + beyond);
        const anchor = Math.cos(angle) > 0.3 ? 'start' : Math.cos(angle) < -0.3 ? 'end' : 'middle';
        return words('TEXT', x, y - SIZE / 3, text, SIZE, { anchor });
      },
      line: (beyond) => line('TANGENT', [at(angle, radius - ra - 10), at(angle, radius + ra + 10 + beyond)], FINE),
    });
    const middle = (low + high) / 2;
    const shown = `bend ${i + 1}: ${formatAngle(toDegrees(bend.angle), 1)}°, CLR ${lengthInWords(bend.radius, unit)}`;
    return [
      tangent(left ? low : high, `${i + 1} start ${onTape(fromNode + bend.start)}`),
      tangent(left ? high : low, `${i + 1} end ${onTape(fromNode + bend.end)}`),
      {
        words: (beyond) => {
          const { x, y } = at(middle, Math.max(0, radius - ra - 40) - beyond);
          return words('TEXT', x, y, shown, SIZE, { anchor: 'middle' });
        },
        line: () => line('TANGENT', [at(middle, radius - 6), at(middle, radius + 6)], HAIR),
      },
    ];
  });
}

/**
 * Over all, outside to outside from sawn end to sawn end, below and beside the tube and all that names its places; and straight across from
 * node to node, on the line between them.
 */
function dimensions(tube: SolvedTube, flat: FlatTube, around: Box2, unit: LengthUnit, labels: readonly Mark[]): Mark[] {
  const { left, right, bottom, top } = flat.outside;
  const [a, b] = tube.ends.map(({ position }) => flat.onPlane(position)) as [FlatPlace, FlatPlace];
  const across = (from: number, to: number, y: number, text: string): Mark[] => [
    line(
      'DIMENSION',
      [
        { x: from, y },
        { x: to, y },
      ],
      HAIR,
    ),
    line(
      'DIMENSION',
      [
        { x: from, y: y - 4 },
        { x: from, y: y + 4 },
      ],
      FINE,
    ),
    line(
      'DIMENSION',
      [
        { x: to, y: y - 4 },
        { x: to, y: y + 4 },
      ],
      FINE,
    ),
    words('TEXT', (from + to) / 2, y + 2, text, SIZE, { anchor: 'middle' }),
  ];
  const x = around.left - 10;
  return [
    line('DIMENSION', [a, b], FAINT),
    ...nodeToNode(a, b, labels, unit),
    ...across(left, right, around.bottom - 14, `over all ${lengthInWords(right - left, unit)}`),
    line(
      'DIMENSION',
      [
        { x, y: bottom },
        { x, y: top },
      ],
      HAIR,
    ),
    line(
      'DIMENSION',
      [
        { x: x - 4, y: bottom },
        { x: x + 4, y: bottom },
      ],
      FINE,
    ),
    line(
      'DIMENSION',
      [
        { x: x - 4, y: top },
        { x: x + 4, y: top },
      ],
      FINE,
    ),
    words('TEXT', x - 2, (bottom + top) / 2, `over all ${lengthInWords(top - bottom, unit)}`, SIZE, {
      anchor: 'middle',
      turn: Math.PI / 2,
    }),
  ];
}

/** On the line between the nodes, read from below, where it stands clear of what is named. */
function nodeToNode(a: FlatPlace, b: FlatPlace, labels: readonly Mark[], unit: LengthUnit): Mark[] {
  const [from, to] = a.x <= b.x ? [a, b] : [b, a];
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  if (apart < TOGETHER) return [];
  const turn = Math.atan2(to.y - from.y, to.x - from.x);
  const text = `node to node, straight across ${lengthInWords(apart, unit)}`;
  const places = [0.5, 0.4, 0.6, 0.3, 0.7].flatMap((share) =>
    [2, -2 - SIZE].map((up) =>
      words(
        'TEXT',
        from.x + share * (to.x - from.x) - up * Math.sin(turn),
        from.y + share * (to.y - from.y) + up * Math.cos(turn),
        text,
        SIZE,
        { anchor: 'middle', turn },
      ),
    ),
  );
  const taken = labels.filter((mark) => mark.kind === 'words');
  return [clearOf(places, taken, unknownFace)];
}

/** mm. Nodes so near to one another have no distance to measure. */
const TOGETHER = 1;

/** Above all of it, a line that says what has to be known of the tube over the other. */
function title(
  tube: SolvedTube,
  { left, top }: Box2,
  findings: readonly Finding[],
  unit: LengthUnit,
  leans: string,
): Mark[] {
  const blank = `finished blank ${lengthInWords(tube.blankLength, unit)}, places from its sawn end A. ${leans}`;
  const errors = errorsOf(findings, tube.id);
  return [
    words('TEXT', left, top + 30, numbered(tube), 10, { bold: true }),
    words('TEXT', left, top + 20, `${sectionInWords(tube.section, unit)}, ${blank}`, SIZE),
    ...(errors.length > 0
      ? [words('TEXT', left, top + 10, `! ${faultInWords(errors)}: see the checks.`, SIZE, { bold: true })]
      : []),
  ];
}
