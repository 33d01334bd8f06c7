/**
 * A forecast of fit: of every joint the gap that 95 of 100 cages built so would stay under, what feeds it most, and what would cure it.
 * To first order: each source of error is moved a little by itself and the cage stood up with it (stand.ts), which tells how it moves the
 * openings of every joint (openings.ts); what all of them do together is normal, and its widest line is sampled (quantile.ts).
 *
 * Derivation, what is taken for granted and what is left out: docs/maths/forecast.md.
 */
import { BRIDGED } from './bridged.ts';
import { FIRST_ACCURACY } from '../job/kinds/accuracy.ts';
import type { TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { jointsOf, linesOf, openings, type Joint, type Line } from './openings.ts';
import { gap95, type Move } from './quantile.ts';
import { errorsOf, sourcesOf } from './sources.ts';
import { stand, type Stand } from './stand.ts';
import type { Cure, Feed, Feeder, Forecast, JointForecast, Source } from './types.ts';

/** Degrees between lines: what moves an edge waves round it twice at most, so the widest lies within 1.5 % of the widest of these. */
const STEP = 10;

/** Of a standard deviation: small enough for the curve of the geometry not to tell, and far above rounding. */
const PROBE = 1e-3;

/** mm that a line moves by where something moves it. */
const STILL = 1e-9;

/** mm that an end is left long by, to be trimmed on the car: a quarter inch, or 6 mm (common practice). */
const LEFT_LONG: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH / 4, mm: 6 };

/** A cure that takes away less than this share of the gap is none. */
const LEAST_CURE = 0.1;

/** Feeds that are named, and the least share of one. */
const MOST_FEEDS = 3;
const LEAST_SHARE = 0.05;

/** A joint with what is needed to reckon it: rows of twice as many openings as it has lines, of the edge and of what is left long on it. */
interface Reckoned {
  readonly joint: Joint;
  readonly lines: readonly Line[];
  readonly nominal: Float64Array;
  readonly moves: { readonly source: Source; readonly row: Float64Array }[];
  /** How its own cut alone moves it. */
  readonly ownCut: Float64Array;
}

/** Of a solved frame; plain data. */
export function forecastFit(frame: Frame): Forecast {
  const sources = sourcesOf(frame);
  const sound = stand(frame, errorsOf([], []));
  const { cut } = frame.job.accuracy ?? FIRST_ACCURACY;
  const left = LEFT_LONG[frame.job.lengthUnit];
  const reckoned = jointsOf(frame).map((joint): Reckoned => {
    const lines = linesOf(joint, STEP);
    const nominal = bothOpenings(joint, lines, left, sound);
    return {
      joint,
      lines,
      nominal,
      moves: [],
      ownCut: moveBetween(nominal, opened(joint, lines, left, sound, cut * PROBE)),
    };
  });
  const byName = new Map(reckoned.map((each) => [nameOf(each.joint), each]));
  for (const { source, deviation } of sources) {
    const errors = errorsOf([{ source, deviation }], [deviation * PROBE]);
    const probed = stand(frame, errors, { stand: sound, sources: [source] });
    for (const name of probed.web.moved!) {
      const each = byName.get(name);
      if (each === undefined) continue;
      const { joint, lines, nominal, moves } = each;
      const open = bothOpenings(joint, lines, left, probed);
      const row = moveBetween(nominal, open);
      if (row.some((move) => Math.abs(move) > STILL)) moves.push({ source, row });
    }
  }
  return { joints: reckoned.map((each) => forecastOf(frame, each)).toSorted((a, b) => b.gap - a.gap) };
}

/** mm a standard deviation. */
const moveBetween = (nominal: Float64Array, probed: Float64Array): Float64Array =>
  probed.map((open, k) => (open - nominal[k]!) / PROBE);

/** As it is called in the web of a cage. */
const nameOf = ({ tube, which }: Joint): string => `joint ${tube.id} ${which}`;

/** Openings of the edge, and of what is or would be left long on it. */
const bothOpenings = (joint: Joint, lines: readonly Line[], left: number, stood: Stand): Float64Array =>
  stood.web.ask(nameOf(joint), () => opened(joint, lines, left, stood, 0));

/** The same with all of it sawn shorter by so much, mm. */
function opened(joint: Joint, lines: readonly Line[], left: number, stood: Stand, shorter: number): Float64Array {
  const { allowance } = joint.end;
  const both = new Float64Array(2 * lines.length);
  // An allowance below 0 is an end that is meant to be short.
  both.set(openings(joint, lines, Math.min(0, allowance) - shorter, stood));
  both.set(openings(joint, lines, (allowance > 0 ? allowance : left) - shorter, stood), lines.length);
  return both;
}

function forecastOf(frame: Frame, reckoned: Reckoned): JointForecast {
  const { joint, lines, nominal, moves, ownCut } = reckoned;
  const { tube, which, end, fit, to } = joint;
  const isLong = end.allowance > 0;
  const gapBy = (all: readonly Move[], long: boolean): number => {
    const used = long ? nominal.length : lines.length;
    return gap95(
      nominal.subarray(0, used),
      all.map(({ row, weight }) => ({ row: row.subarray(0, used), weight })),
      lines.length,
    );
  };
  const weighed = (weightOf: (source: Source) => number): readonly Move[] =>
    moves.map(({ source, row }) => ({ row, weight: weightOf(source) }));

  const first = fittedLater(frame, tube, to);
  const onCar = tube.member.cutOnCar === true && first.length === 0;
  const own: readonly Move[] = [{ row: ownCut, weight: 1 }];
  const name = which === 0 ? 'A' : 'B';
  const gap = gapBy(onCar ? own : weighed(() => 1), isLong);
  const feeds = onCar ? [{ of: { kind: 'cut', tube: tube.id, end: name } as const, share: 1 }] : feedsOf(reckoned);

  function cures(): readonly Cure[] {
    if (onCar || gap <= BRIDGED) return [];
    const point = mostOf(feeds, (of) => (of.kind === 'point' ? of.point : null));
    const bar = mostOf(feeds, (of) => (of.kind === 'bend' ? of.bar : null));
    const tried: readonly (Cure | null)[] = [
      point === null
        ? null
        : {
            kind: 'measure',
            point,
            gap: gapBy(
              weighed((of) => (of.kind === 'point' && of.point === point ? AGAIN : 1)),
              isLong,
            ),
          },
      isLong
        ? null
        : {
            kind: 'long',
            by: LEFT_LONG[frame.job.lengthUnit],
            gap: gapBy(
              weighed(() => 1),
              true,
            ),
          },
      { kind: 'on-car', first, gap: gapBy(own, isLong) },
      bar === null
        ? null
        : {
            kind: 'as-built',
            bar,
            gap: gapBy(
              weighed((of) => (of.kind === 'bend' && of.bar === bar ? 0 : 1)),
              isLong,
            ),
          },
    ];
    return tried.filter((cure): cure is Cure => cure !== null && cure.gap <= (1 - LEAST_CURE) * gap);
  }

  return {
    tube: tube.id,
    end: name,
    node: end.node,
    fit,
    to,
    at: end.position,
    gap,
    onCar,
    feeds: feeds.filter(({ share }) => share >= LEAST_SHARE).slice(0, MOST_FEEDS),
    cures: cures(),
  };
}

/** Of the variance of a point, once it is measured a second time and the mean is taken. */
const AGAIN = 0.5;

/** Bars of these that are fitted after the tube: it cannot be cut to them on the car. */
function fittedLater({ job, bars }: Frame, { member }: SolvedTube, to: readonly TubeRef[]): readonly TubeRef[] {
  const order = job.members.indexOf(member);
  return to.filter((bar) => job.members.indexOf(bars.get(bar)!.member) > order);
}

/** All that moves the edge, the greatest share first. */
function feedsOf({ moves, lines }: Reckoned): readonly Feed[] {
  const shares = new Map<string, { readonly of: Feeder; square: number }>();
  let all = 0;
  for (const { source, row } of moves) {
    const square = row.subarray(0, lines.length).reduce((sum, move) => sum + move * move, 0);
    const of = feederOf(source);
    const key = JSON.stringify(of);
    const before = shares.get(key);
    if (before === undefined) shares.set(key, { of, square });
    else before.square += square;
    all += square;
  }
  return [...shares.values()]
    .map(({ of, square }): Feed => ({ of, share: square / all }))
    .toSorted((a, b) => b.share - a.share);
}

const feederOf = (source: Source): Feeder =>
  source.kind === 'bend' ? { kind: 'bend', bar: source.bar, bend: source.bend } : source;

/** What the feeds name so that has the greatest share in all; null where they name none. */
function mostOf(feeds: readonly Feed[], nameOf: (of: Feeder) => string | null): string | null {
  const shares = new Map<string, number>();
  for (const { of, share } of feeds) {
    const name = nameOf(of);
    if (name !== null) shares.set(name, (shares.get(name) ?? 0) + share);
  }
  return [...shares].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? null;
}
