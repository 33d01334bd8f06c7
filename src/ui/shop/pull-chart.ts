/**
 * The chart of the pulls, laid out in pixels: net angle across, up what the bend opened by, which is pulled - net. The pulls,
 * the law as a line, the 95 % band of one more pull, and the steel's spring alone beside them.
 */
import { toDegrees, toRadians } from '../../core/geometry/angle.ts';
import type { Pull } from '../../core/job/kinds/pull.ts';
import { borneRange, furtherPulls } from '../../core/springback/pull-advice.ts';
import type { PullLaw } from '../../core/springback/pull-law.ts';
import { halfWidthInWords } from '../../core/words/pulls.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { fixedText } from '../../core/units/typed.ts';

export interface PullChart {
  readonly height: number;
  /** The field that the axes bound; what lies beyond is cut off. */
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly across: readonly Tick[];
  readonly up: readonly Tick[];
  /** One a pull, in their order; `counts`: the law rests on it. */
  readonly crosses: readonly { readonly x: number; readonly y: number; readonly counts: boolean }[];
  /** Paths; null where there is none. The line runs as far as the pulls bear it. */
  readonly line: string | null;
  readonly band: string | null;
  readonly estimate: { readonly path: string; readonly labelAt: number } | null;
}

interface Tick {
  readonly at: number;
  readonly text: string;
}

const MARGIN = { left: 38, right: 10, top: 24, bottom: 34 };
const HEIGHT = 250;
/** Degrees from one mark to the next across; and the steps that serve upwards. */
const ACROSS = 30;
const STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200];
const MOST_MARKS = 8;
/** The band's edges are curves: drawn through this many places. */
const BAND_PLACES = 48;

/** `pulls` of one die and section; `law` from some or all of them; `spring` the steel's own share of the net angle. */
export function layPullChart(
  pulls: readonly Pull[],
  law: PullLaw | null,
  spring: number | null,
  width: number,
): PullChart {
  const known = law?.from === 'estimate' ? null : law;
  const farthest = Math.max(0, ...pulls.map(({ net }) => net));
  const most = Math.max(3, Math.ceil((farthest + 5) / ACROSS)) * ACROSS;
  const opens = (net: number): number => (known === null ? 0 : toDegrees(known.a) + known.b * net);
  const borne = known === null ? null : borneRange(known);
  const reach = borne === null ? [] : [borne.least, Math.min(borne.greatest, most)];
  const heights = [
    0,
    ...pulls.map(({ pulled, net }) => pulled - net),
    ...reach.map(opens),
    ...(spring === null ? [] : [spring * most]),
  ];
  const [low, high] = [Math.min(...heights), Math.max(1, ...heights) * 1.15];
  const step = STEPS.find((size) => (high - low) / size <= MOST_MARKS) ?? STEPS.at(-1)!;
  const [least, greatest] = [Math.floor(low / step) * step, Math.ceil(high / step) * step];

  const plot = {
    left: MARGIN.left,
    right: Math.max(width - MARGIN.right, MARGIN.left + 1),
    top: MARGIN.top,
    bottom: HEIGHT - MARGIN.bottom,
  };
  const x = (net: number): number => plot.left + (net / most) * (plot.right - plot.left);
  const y = (opened: number): number =>
    plot.bottom - ((opened - least) / (greatest - least)) * (plot.bottom - plot.top);
  const path = (places: readonly (readonly [number, number])[]): string =>
    `M${places.map(([net, opened]) => `${round(x(net))} ${round(y(opened))}`).join('L')}`;

  const marks = Math.round((greatest - least) / step);
  return {
    height: HEIGHT,
    plot,
    across: range(most / ACROSS).map((index) => ({ at: x(index * ACROSS), text: `${index * ACROSS}°` })),
    up: range(marks).map((index) => {
      const opened = least + index * step;
      return { at: y(opened), text: `${formatAngle(opened, step < 1 ? 1 : 0)}°` };
    }),
    crosses: pulls.map((pull) => ({
      x: x(pull.net),
      y: y(pull.pulled - pull.net),
      counts: known?.pulls.includes(pull) ?? false,
    })),
    line: borne === null ? null : path(reach.map((net) => [net, opens(net)])),
    band: bandPath(known, most, opens, path),
    estimate:
      spring === null
        ? null
        : {
            path: path([
              [0, 0],
              [most, spring * most],
            ]),
            // Above its end, the highest place of the line, so that the words never lie on it.
            labelAt: y(spring * most) - 6,
          },
  };
}

function bandPath(
  law: PullLaw | null,
  most: number,
  opens: (net: number) => number,
  path: (places: readonly (readonly [number, number])[]) => string,
): string | null {
  if (law === null || furtherPulls(law, 0) === null) return null;
  const edge = (side: 1 | -1): [number, number][] =>
    range(BAND_PLACES).map((index) => {
      const net = (index * most) / BAND_PLACES;
      return [net, opens(net) + side * toDegrees(furtherPulls(law, toRadians(net)) ?? 0)];
    });
  return `${path([...edge(1), ...edge(-1).toReversed()])}Z`;
}

/** The chart in words. */
export function pullChartInWords(pulls: readonly Pull[], law: PullLaw | null, spring: number | null): string {
  const each = pulls.map(
    ({ pulled, net }, index) => `pull ${index + 1}, finished ${formatAngle(net, 1)}°, ${formatAngle(pulled - net, 1)}°`,
  );
  const range = law === null || law.from === 'estimate' ? null : borneRange(law);
  const ends = range === null ? [] : [range.least, range.greatest];
  const opened = ends.map((net) => `${formatAngle(toDegrees(law!.a) + law!.b * net, 1)}° at a finished ${net}°`);
  const within = law === null || range === null ? null : furtherPulls(law, toRadians(range.greatest));
  return [
    `What a bend opens by, against its finished angle: ${each.join('; ')}.`,
    ...(range === null ? [] : [`The line runs from ${opened.join(' to ')}, as far as the pulls bear it.`]),
    ...(within === null
      ? []
      : [`At a finished ${range!.greatest}°, 95 % of further pulls lie within ${halfWidthInWords(within)} of it.`]),
    ...(spring === null
      ? []
      : [
          `The estimate from the steel alone gives ${formatAngle(90 * spring, 1)}° at a finished 90°, ${fixedText(100 * spring, 1)} %.`,
        ]),
  ].join(' ');
}

/** 0 .. last, both among them. */
const range = (last: number): number[] => Array.from({ length: last + 1 }, (_, index) => index);

const round = (pixels: number): number => Math.round(pixels * 100) / 100;
