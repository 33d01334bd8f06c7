/**
 * The sheets followed to the letter: what is printed is read as words and figures, and done by somebody who knows nothing else. The
 * tube that comes of it is the tube of the fabrication file, and turned the other way it is not.
 */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import type { Marking } from '../../src/core/job/kinds/marking.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import type { Words } from '../../src/drawing/types.ts';
import { fabrication, type FabricationTube } from '../../src/exports/tables/fabrication.ts';
import { liesOf } from '../../src/exports/sheets/locator.ts';
import { tubeSheets } from '../../src/exports/sheets/tube.ts';
import { demoText } from '../command-line.ts';
import { drawn } from '../draws.ts';
import { cutterThrough, placeOnBow, type Cutter } from '../reference/oracles/centreline.ts';
import {
  around,
  difference,
  inner,
  outer,
  size,
  square,
  times,
  unit,
  type Triple,
} from '../reference/oracles/space.ts';
import { drawFrom } from '../reference/oracles/seeded.ts';
import { apart, bentToTheLetter, drawnPlaces, type LetterStep, type Turning } from './by-the-letter.ts';
import { fonts } from './fonts.ts';
import { derivedFrom, markedAs } from './jobs.ts';

const letters = lettering(fonts);
const WIDTH = 190;

/** All that is set on a tube's sheets, in the order in which it is drawn. */
function wordsOf(plain: Derived, id: string, tape: Partial<Marking>): readonly Words[] {
  const derived = markedAs(plain, tape);
  const tube = derived.byId.get(id)!;
  const paper = { width: 210, height: 297 };
  const context = { derived, unit: derived.job.lengthUnit, letters, paper, width: WIDTH };
  const alone = { ...context, derived: { ...derived, tubes: [tube] } };
  return tubeSheets(alone, liesOf([tube]))
    .flatMap((sheets) => sheets())
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark] : [])));
}

const files = new WeakMap<Derived, ReturnType<typeof fabrication>>();
function fileOf(derived: Derived) {
  const file = files.get(derived) ?? fabrication(derived);
  files.set(derived, file);
  return file;
}

const number = (text: string): number => Number(text.replace('−', '-').replace('≈', ''));

interface PaperStep extends LetterStep {
  readonly words: string;
}

/** The rows of the bends as a person reads them, in the order of bending. */
function rowsOf(sheet: readonly Words[], radius: number, blank: number, from: Marking['from']): readonly PaperStep[] {
  const starts = sheet.flatMap(({ size: body, bold }, i) => (Math.abs(body - 5.4) < 1e-9 && bold ? [i] : []));
  const all = sheet.map(({ text }) => text).join(' ');
  let front = /End ([AB]) in front/u.exec(all)![1] as 'A' | 'B';
  return starts.map((start, i) => {
    const row = sheet.slice(start, starts[i + 1]);
    const words = row.map(({ text }) => text).join(' ');
    const [mark, turn, net] = row.filter(({ size: body }) => body === 7).map(({ text }) => text);
    const stated =
      /Turn the tube (?:half round, )?([\d.]+)°(?:, either way| (clockwise|anticlockwise), looking from behind \(end ([AB])’s side\) towards the die)/u.exec(
        words,
      );
    const still = /do not turn the tube/u.test(words);
    const toZero = /Turn the tube to zero and no further/u.test(words);
    expect([stated !== null, still, toZero, turn === 'none'].filter(Boolean), words).toHaveLength(1);
    const zero = /Zero: (?:lay )?bend (\d+) level, its leg to the (left|right)/u.exec(words);
    if (stated !== null) {
      expect(turn).toBe(`${stated[1]}°`);
      if (stated[3] !== undefined) expect(stated[3]).toBe(front === 'A' ? 'B' : 'A');
    }
    const turning: Turning | null =
      zero === null
        ? null
        : {
            zeroOn: Number(zero[1]),
            legTo: zero[2] as Turning['legTo'],
            degrees: stated === null ? 0 : number(stated[1]!),
            sense: (stated?.[2] ?? null) as Turning['sense'],
          };
    // A hair more or less than the division is not followed here.
    const at = number(mark!.replace(/\s[+−]$/u, ''));
    expect(words).toContain(`Towards end ${front === 'A' ? 'B' : 'A'}`);
    const step: PaperStep = {
      bend: Number(row[0]!.text),
      front,
      mark: from === 'B' ? blank - at : at,
      degrees: number(net!.replace('°', '')),
      radius,
      turning,
      words,
    };
    front = (/Turn the tube end for end: end ([AB]) in front/u.exec(words)?.[1] ?? front) as 'A' | 'B';
    return step;
  });
}

/** Of all that is printed the figures that are rounded, put back to what they are rounded from once they are seen to be. */
function unrounded(stated: readonly PaperStep[], tube: FabricationTube, toNode: number, coarse: number): LetterStep[] {
  return stated.map((step) => {
    const { angle, start, end, radius } = tube.bends[step.bend - 1]!;
    const exact = toNode + (step.front === 'A' ? start : end);
    expect(Math.abs(step.mark - exact), `mark of bend ${step.bend}`).toBeLessThanOrEqual(coarse / 2 + 1e-6);
    expect(Math.abs(step.degrees - angle), `angle of bend ${step.bend}`).toBeLessThanOrEqual(0.05 + 1e-9);
    return { ...step, mark: exact, degrees: angle, radius };
  });
}

const other = { clockwise: 'anticlockwise', anticlockwise: 'clockwise' } as const;
const mirrored = (step: LetterStep): LetterStep =>
  step.turning?.sense == null ? step : { ...step, turning: { ...step.turning, sense: other[step.turning.sense] } };

/** The tube of a job follows its sheet; what the wrong way would have cost, mm. */
function follow(derived: Derived, id: string, tape: Marking, machine: 'left' | 'right'): number {
  const tube = fileOf(derived).tubes.find((each) => each.id === id)!;
  const die = derived.byId.get(id)!.die!;
  const { byLevel, step } = { byLevel: die.bender!.rotationBy === 'level', step: die.bender!.levelStep };
  const sheet = wordsOf(derived, id, tape);
  const all = sheet.map(({ text }) => text).join(' ');
  const blank = number(/Cut the blank to ([\d.]+) mm/u.exec(all)![1]!);
  const grips = Object.fromEntries(
    [...all.matchAll(/([\d.]+) mm at end ([AB])/gu)].map(([, mm, end]) => [end, number(mm!)]),
  );
  const [a, b] = tube.ends;
  const gripA = grips['A'] ?? 0;
  const toNode = gripA + a.allowance - a.tip!;
  const stated = rowsOf(sheet, die.centrelineRadius, blank, tape.from);
  expect(stated.map(({ bend }) => bend).toSorted((x, y) => x - y)).toEqual(tube.bends.map((_, i) => i + 1));
  const exactBlank = tube.developedLength + toNode + (grips['B'] ?? 0) + b.allowance - b.tip!;
  expect(Math.abs(blank - exactBlank)).toBeLessThan(0.16);
  // A grip is printed to 0.1 mm, and so is the blank that a tape from end B counts from.
  const steps = unrounded(stated, tube, toNode, (tape.fine ? 0.5 : 1) + 0.4);
  const { places, readings } = bentToTheLetter(exactBlank, steps, machine);
  const drawn = drawnPlaces(tube.corners, tube.bends, toNode, exactBlank);

  // A turn is printed to the level's or the wheel's division, and moves what it turns by that.
  const division = byLevel ? step : die.bender!.wheelStep;
  const turns = stated.filter(({ turning }) => turning !== null).length;
  const within = 0.1 + ((turns * division * Math.PI) / 360) * tube.developedLength;
  const what = `${tube.name}, ${stated.map(({ bend, front }) => `${bend}${front}`).join(' ')}`;
  expect(apart(places, drawn), what).toBeLessThan(within);

  expectScribedAtEnds(sheet, places, {
    outerDiameter: derived.byId.get(id)!.section.outerDiameter,
    turned: stated.some(({ turning }) => turning !== null && turning.degrees > 0),
    within: 0.06 + division * stated.length,
    what,
  });
  stated.forEach(({ words, turning, bend, front }, i) => {
    const read = readings[i];
    if (turning === null || read == null) return;
    expect(turning.legTo, what).toBe(machine);
    expect(read.legAtZero).toBeLessThan(1e-6);
    if (turning.degrees > 0)
      expectReadings(words, read, turning, { step, division, byLevel, what: `${what}, bend ${bend}` });
    const scribed =
      /The scribed line then (?:is (on top|underneath)|stands ([\d.]+)° (clockwise|anticlockwise) of the top, ([\d.]+) mm round)/u.exec(
        words,
      )!;
    const line =
      scribed[1] === 'on top'
        ? 0
        : scribed[1] === 'underneath'
          ? 180
          : number(scribed[2]!) * (scribed[3] === 'clockwise' ? 1 : -1);
    const off = Math.abs(((read.line - line + 540) % 360) - 180);
    expect(off, `${what}, bend ${bend} with ${front} in front: ${scribed[0]} for ${read.line}`).toBeLessThan(
      0.06 + division * stated.length,
    );
    if (scribed[4] !== undefined) {
      const round = (Math.abs(line) * Math.PI * derived.byId.get(id)!.section.outerDiameter) / 360;
      expect(Math.abs(number(scribed[4]) - round)).toBeLessThan(0.08);
    }
  });
  return apart(bentToTheLetter(exactBlank, steps.map(mirrored), machine).places, drawn);
}

/** The scribed line at both ends of the tube as it was bent, from the inside of the nearest bend; said at each end that is cut by marks. */
function expectScribedAtEnds(
  sheet: readonly Words[],
  places: ReturnType<typeof bentToTheLetter>['places'],
  { outerDiameter, turned, within, what }: { outerDiameter: number; turned: boolean; within: number; what: string },
) {
  for (const which of [0, 1] as const) {
    const column = sheet.filter(({ at }) => (at.x < 10 + WIDTH / 2 ? 0 : 1) === which);
    const words = column.map(({ text }) => text).join(' ');
    const stated =
      /The scribed line stands (?:(on it)|(opposite it)|([\d.]+)° (clockwise|anticlockwise) of it)(?:, ([\d.]+) mm round)?\./u.exec(
        words,
      );
    const marked = words.includes(`Look at end ${which === 0 ? 'A' : 'B'}, towards the tube.`);
    expect(stated !== null, `${what}, end ${'AB'[which]}`).toBe(marked && turned);
    if (stated === null) continue;
    const [end, near, far] = which === 0 ? places.slice(0, 3) : places.slice(-3).toReversed();
    const into = times(which === 0 ? 1 : -1, end!.way);
    const inside = square(difference(far!.at, near!.at), into);
    const clockwise = (Math.atan2(inner(outer(inside, end!.line), into), inner(inside, end!.line)) * 180) / Math.PI;
    const shown = stated[1] ? 0 : stated[2] ? 180 : number(stated[3]!) * (stated[4] === 'clockwise' ? 1 : -1);
    expect(Math.abs(((clockwise - shown + 540) % 360) - 180), `${what}: ${stated[0]} for ${clockwise}`).toBeLessThan(
      within,
    );
    const round = (Math.abs(shown) * Math.PI * outerDiameter) / 360;
    expect(Math.abs(number(stated[5] ?? '0') - round)).toBeLessThan(0.08);
    scribedSeen += 1;
  }
}
let scribedSeen = 0;

type Read = NonNullable<ReturnType<typeof bentToTheLetter>['readings'][number]>;

function expectReadings(
  words: string,
  read: Read,
  { degrees }: Turning,
  { step, division, byLevel, what }: { step: number; division: number; byLevel: boolean; what: string },
) {
  const instrument = byLevel
    ? /A level on a bar across the tube (behind the die|in front of the clamp)(?:, short of bend (\d+),)? goes from 0°(, past plumb,)? to ([\d.]+)°/u
    : /A degree wheel on the tube (behind the die|in front of the clamp)(?:, short of bend (\d+),)? goes from 0°(, past plumb,)? to ([\d.]+)°/u;
  const seen = instrument.exec(words);
  expect(seen, words).not.toBeNull();
  const shown = number(seen![4]!);
  expect(Math.abs(shown - (byLevel ? read.bar : degrees)), what).toBeLessThanOrEqual(division / 2 + 1e-6);
  expect(seen![3] !== undefined).toBe(byLevel && degrees > 90);
  // A bar or a wheel has its room there: 40 mm of straight, besides what the follower holds.
  if (seen![1] === 'behind the die') {
    expect(read.behind.length).toBeGreaterThan(40);
    expect(seen![2] === undefined ? null : Number(seen![2]), what).toBe(read.behind.before);
  }
  const along = /laid along the leg, to ([\d.]+)°/u.exec(words);
  if (along !== null) expect(Math.abs(number(along[1]!) - read.leg), what).toBeLessThanOrEqual(step / 2 + 1e-6);
  const points = /turned, it points ([a-z ]+)\./u.exec(words)![1]!;
  const { right, up } = read.legPoints;
  const reach = Math.hypot(right, up);
  if (/straight/u.test(points)) expect(Math.abs(right)).toBeLessThan(0.01 * reach);
  else expect(Math.sign(right), `${what}: ${points}`).toBe(/right/u.test(points) ? 1 : -1);
  if (/level/u.test(points)) expect(Math.abs(up)).toBeLessThan(0.01 * reach);
  else expect(Math.sign(up), `${what}: ${points}`).toBe(/up/u.test(points) ? 1 : -1);
}

/** A job in mm, with benders, and with orders of bending kept for some of its tubes. */
function setUp(job: Record<string, unknown>, bender: Record<string, unknown>, bent: readonly object[] = []): string {
  const dies = (job['dies'] as Record<string, unknown>[]).map((die) => ({ ...die, bender }));
  return JSON.stringify({ ...job, lengthUnit: 'mm', dies, bent });
}

const BENDER = { planeHeight: 1000, levelStep: 0.01, wheelStep: 0.01, pullStep: 0.5, room: [] };
/** Each side, each way of marking and each instrument with each of the others. */
const MACHINES = [
  { turns: 'left', bendLies: 'beyond', rotationBy: 'level' },
  { turns: 'left', bendLies: 'before', rotationBy: 'wheel' },
  { turns: 'right', bendLies: 'beyond', rotationBy: 'wheel' },
  { turns: 'right', bendLies: 'before', rotationBy: 'level' },
] as const;

/** Drawn for each bent tube on each machine, beside the order of its bends from either end of the tape. */
const ORDERS = drawn(1, 3);

/** Any order, either end in front. */
function drawnOrder(count: number, draw: ReturnType<typeof drawFrom>) {
  const left = Array.from({ length: count }, (_, i) => i + 1);
  return left
    .map((bend) => ({ bend, front: draw.oneOf(['A', 'B'] as const), at: draw.between(0, 1) }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ bend, front }) => ({ bend, front }));
}

/** Bends in turned planes, half a turn and none among them: 90°, S, past plumb both ways. */
function twisted(): string {
  const corners: Triple[] = [[0, 0, 0]];
  let [way, normal]: [Triple, Triple] = [
    [1, 0, 0],
    [0, 0, 1],
  ];
  const bends = [
    [40, 0],
    [75, 90],
    [55, 180],
    [95, -143.5],
    [30, 0],
    [62, 118.2],
  ] as const;
  const go = (mm: number) => corners.push(corners.at(-1)!.map((x, i) => x + mm * way[i]!) as unknown as Triple);
  go(520);
  for (const [angle, rotation] of bends) {
    normal = around(way, normal, rotation);
    way = around(normal, way, angle);
    go(560);
  }
  return JSON.stringify({
    format: 'cagewright/job',
    version: 1,
    name: 'Twisted',
    lengthUnit: 'mm',
    points: [],
    envelopes: [],
    sections: [{ id: 'tube', name: '45 x 2.5', outerDiameter: 45, wall: 2.5, material: 'dom-1020' }],
    dies: [
      {
        id: 'die',
        name: '3 D',
        outerDiameter: 45,
        centrelineRadius: 135,
        clampOffset: 114.3,
        leastStraight: 60,
        leastGrip: 120,
        greatestAngle: 120,
      },
    ],
    nodes: corners.map((position, i) => ({ id: `n${i}`, at: { kind: 'fixed', position } })),
    members: [
      {
        id: 'snake',
        name: 'Snake',
        role: 'bar',
        path: corners.map((_, i) => `n${i}`),
        section: 'tube',
        die: 'die',
        ends: [{ fit: 'square' }, { fit: 'square' }],
      },
    ],
  });
}

const FINE: Marking = { from: 'A', mark: 'start', fine: true };
const demoJob = JSON.parse(demoText()) as Record<string, unknown>;
const demo = derivedFrom(setUp(demoJob, { ...BENDER, ...MACHINES[0] }));

const bentIds = (derived: Derived) => derived.tubes.filter(({ bends }) => bends.length > 0).map(({ id }) => id);

describe('every bent tube made by its sheet, to the letter', () => {
  it.each(MACHINES)(
    'on a bender that bends to the $turns, bends $bendLies the mark, turned by $rotationBy',
    (machine) => {
      let costly = 0;
      const draw = drawFrom(MACHINES.indexOf(machine) + 5);
      for (const text of [JSON.stringify(demoJob), twisted()]) {
        const job = JSON.parse(text) as Record<string, unknown>;
        const plain = derivedFrom(setUp(job, { ...BENDER, ...machine }));
        for (const id of bentIds(plain)) {
          for (const from of ['A', 'B'] as const) {
            const cost = follow(plain, id, { ...FINE, from }, machine.turns);
            if (cost > 20) costly += 1;
          }
        }
        for (let i = 0; i < ORDERS; i++) {
          const bent = bentIds(plain).map((id) => ({
            tube: id,
            order: drawnOrder(plain.byId.get(id)!.bends.length, draw),
          }));
          const ordered = derive(
            { ...plain.job, bent: bent.map((each) => ({ ...each, done: [], bends: [], checks: [] })) },
            plain,
          );
          if (!ordered.ok) throw new Error('derives');
          for (const id of bentIds(plain)) if (follow(ordered.value, id, FINE, machine.turns) > 20) costly += 1;
        }
      }
      // The legs and the twisted tube, which the other way round would be scrap.
      expect(costly).toBeGreaterThanOrEqual(3 * (2 + ORDERS));
    },
  );

  it('as the demo is set up, the legs come out to what the level shows, and 350 mm off turned the other way', () => {
    const own = derivedFrom(JSON.stringify({ ...demoJob, lengthUnit: 'mm' }));
    for (const id of ['leg', "leg'"]) expect(follow(own, id, FINE, 'left')).toBeGreaterThan(300);
    // Both legs, both ends, in each of the orders and on each of the machines above.
    expect(scribedSeen).toBeGreaterThan(12 * (2 + ORDERS));
  });
});

/** Where a run's real axis passes nearest a place, from its corners. */
function axisNear(run: Cutter, place: Triple): Triple {
  const near = run.parts.flatMap((part): { at: Triple; way: Triple }[] => {
    if (part.kind === 'straight') {
      const along = inner(difference(place, part.from), part.direction);
      const held = Math.max(part.openBehind ? -Infinity : 0, Math.min(along, part.length));
      return [{ at: part.from.map((x, i) => x + held * part.direction[i]!) as unknown as Triple, way: part.direction }];
    }
    const v = difference(place, part.centre);
    const angle = Math.atan2(inner(v, part.travel), inner(v, part.toStart));
    if (angle < 0 || angle > part.angle) return [];
    const { at, direction } = placeOnBow(part, angle);
    return [{ at, way: direction }];
  });
  const away = ({ at }: { at: Triple }): number => size(difference(at, place));
  return near.reduce((best, each) => (away(each) < away(best) - 1e-9 ? each : best)).way;
}

interface StatedMark {
  readonly degrees: number;
  readonly round: number;
}

/** What is said to be marked on an end: its column's figures under their names, from the top down. On the line nothing is laid off round. */
function marksStated(column: readonly Words[], what: RegExp): StatedMark[] {
  const figures = (heading: RegExp) =>
    column
      .filter(({ text }) => heading.test(text))
      .map((head) => ({
        y: head.at.y,
        text: column.find(({ at }) => Math.abs(at.x - head.at.x) < 1e-6 && head.at.y > at.y && head.at.y - at.y < 6)!
          .text,
      }));
  const rounds = figures(/^(?:\d )?Round (?:the )?tube$/u);
  return figures(what).map(({ y, text: stated }) => {
    const [, degrees, sense] = /^(?:([\d.]+)° (clockwise|anticlockwise)|on the line|opposite the line)$/u.exec(stated)!;
    const size = degrees === undefined ? (stated.startsWith('opposite') ? 180 : 0) : number(degrees);
    const round = rounds.find((each) => Math.abs(each.y - y) < 1e-6);
    return {
      degrees: sense === 'anticlockwise' ? -size : size,
      round: round === undefined ? 0 : number(round.text.replace(' mm', '')),
    };
  });
}

describe('every cope marked as its sheet says, to the letter', () => {
  const file = fileOf(demo);
  const runs = new Map(
    file.tubes.map(({ id, corners, bends }) => {
      const section = demo.byId.get(id)!.section;
      return [id, cutterThrough(corners, bends[0]?.radius ?? 100, section.outerDiameter / 2)] as const;
    }),
  );

  /** The deep-bite side: the part square to the tube of the run's axis, taken away from the joint with the tube. */
  function deepSide(tube: FabricationTube, which: 0 | 1, against: string): { side: Triple; square: boolean } {
    const corners = tube.corners as Triple[];
    const [end, next] = which === 0 ? [corners[0]!, corners[1]!] : [corners.at(-1)!, corners.at(-2)!];
    const u = unit(difference(next, end));
    const v = axisNear(runs.get(against)!, end);
    const along = inner(u, v);
    return { side: unit(square(times(along < 0 ? -1 : 1, v), u)), square: Math.abs(along) < 0.0009 };
  }

  /** The line that the sheet says to begin from, by its own words. */
  function lineStated(words: string, tube: FabricationTube, which: 0 | 1): Triple {
    const corners = tube.corners as Triple[];
    const inside = /Inside line: along the inside of (?:the )?bend(?: (\d+))?, on to here\./u.exec(words);
    if (inside !== null) {
      const bend = Number(inside[1] ?? 1);
      expect(bend).toBe(which === 0 ? 1 : tube.bends.length);
      const [end, corner, far] = [which === 0 ? bend - 1 : bend + 1, bend, which === 0 ? bend + 1 : bend - 1].map(
        (i) => corners[i]!,
      ) as [Triple, Triple, Triple];
      const u = unit(difference(corner, end));
      // The tube bends away to the side of its inside.
      return unit(square(difference(far, corner), u));
    }
    // Anywhere along the uncut tube: the first mark that is said to be on it settles where that is in the car.
    const own = /Scribed line: along the uncut tube, anywhere\./u.test(words);
    const first = own
      ? which
      : ({ A: 0, B: 1 } as const)[/Scribed line: the one from end ([AB])\./u.exec(words)![1] as 'A' | 'B'];
    return deepSide(tube, first, tube.ends[first].cuts[0]!.against).side;
  }

  it('stands on the deep-bite side of the run as it lies in the car; turned the other way it does not', () => {
    let [marks, wrong] = [0, 0];
    for (const tube of file.tubes) {
      const sheet = wordsOf(demo, tube.id, FINE);
      tube.ends.forEach((end, which) => {
        if (end.cuts.length === 0) return;
        const column = sheet.filter(({ at }) => (at.x < 10 + WIDTH / 2 ? 0 : 1) === which);
        const words = column.map(({ text }) => text).join(' ');
        const what = `${tube.name} end ${which === 0 ? 'A' : 'B'}`;
        const line = lineStated(words, tube, which as 0 | 1);
        const stated = marksStated(column, /^(?:\d )?Mark, from line$/u);
        if (stated.some(({ degrees }) => degrees % 180 !== 0)) {
          expect(words).toContain(`Look at end ${which === 0 ? 'A' : 'B'}, towards the tube.`);
        }
        expect(stated, what).toHaveLength(end.cuts.length);
        const square = end.cuts.filter(({ against }) => deepSide(tube, which as 0 | 1, against).square).length;
        expect([...words.matchAll(/bites as deep on the opposite side/gu)], what).toHaveLength(square);
        const corners = tube.corners as Triple[];
        const u = unit(
          which === 0 ? difference(corners[1]!, corners[0]!) : difference(corners.at(-2)!, corners.at(-1)!),
        );
        end.cuts.forEach((cut, i) => {
          const { side, square: both } = deepSide(tube, which as 0 | 1, cut.against);
          // Looking along u clockwise is right-hand about it.
          const off = (degrees: number): number => {
            const mark = around(u, line, degrees);
            const apart = (Math.atan2(size(outer(mark, side)), inner(mark, side)) * 180) / Math.PI;
            return both ? Math.min(apart, 180 - apart) : apart;
          };
          expect(off(stated[i]!.degrees), `${what} to ${cut.against}`).toBeLessThan(0.051);
          const { outerDiameter } = demo.byId.get(tube.id)!.section;
          // A tape round the tube from the line to the side, the shorter way; of a cut that bites as deep on both, to the one marked.
          const opposite = both && inner(around(u, line, stated[i]!.degrees), side) < 0;
          const to = opposite ? times(-1, side) : side;
          const tape = (outerDiameter / 2) * Math.atan2(size(outer(line, to)), inner(line, to));
          expect(Math.abs(stated[i]!.round - tape), what).toBeLessThan(0.051);
          marks += 1;
          if (off(-stated[i]!.degrees) > 5) wrong += 1;
        });
      });
    }
    expect(marks).toBeGreaterThan(30);
    expect(wrong).toBeGreaterThan(6);
  });

  it('the longest side of an end cut by its plate or foot is where the profile of the fabrication file has its least', () => {
    let plates = 0;
    for (const tube of file.tubes) {
      const sheet = wordsOf(demo, tube.id, FINE);
      tube.ends.forEach(({ fit, profile, tip }, which) => {
        if (fit !== 'plate' && fit !== 'foot') return;
        const column = sheet.filter(({ at }) => (at.x < 10 + WIDTH / 2 ? 0 : 1) === which);
        const [stated] = marksStated(column, /^Longest side, from (?:inside|scribed) line$/u);
        if (stated === undefined) {
          expect(Math.max(...(profile as number[])) - tip!).toBeLessThan(1e-6);
          return;
        }
        const least = (profile as number[]).indexOf(Math.min(...(profile as number[])));
        expect(Math.abs(((stated.degrees - least + 540) % 360) - 180), tube.name).toBeLessThan(0.56);
        plates += 1;
      });
    }
    expect(plates).toBeGreaterThan(5);
  });
});
