import { describe, expect, it } from 'vitest';
import type { Pull } from '../../../src/core/job/kinds/pull.ts';
import { pullLaw } from '../../../src/core/springback/pull-law.ts';
import { layPullChart, pullChartInWords } from '../../../src/ui/shop/pull-chart.ts';
import { bentTube } from '../../core/run/tubes.ts';

const { die, section } = bentTube(1);
const pull = (pulled: number, net: number): Pull => ({ die: 'd', section: 's', pulled, net, on: '' });
const lawOf = (pulls: readonly Pull[]) => pullLaw(pulls, die!, section, undefined);
const numbers = (path: string): number[] => path.match(/-?\d+(?:\.\d+)?/gu)!.map(Number);

describe('the chart of pulls', () => {
  const two = [pull(26.8, 25), pull(63.2, 60)];
  const chart = layPullChart(two, lawOf(two), 0.019, 360);
  const { left, right, top, bottom } = chart.plot;

  it('marks the net angle every 30 degrees across the whole width', () => {
    expect(chart.across.map(({ text }) => text)).toEqual(['0°', '30°', '60°', '90°']);
    expect(chart.across.map(({ at }) => at)[0]).toBe(left);
    expect(chart.across.at(-1)!.at).toBe(right);
    expect(right).toBeLessThanOrEqual(360);
  });

  it('sets each pull at its net angle and at what it opened by', () => {
    const perDegree = (right - left) / 90;
    expect(chart.crosses.map(({ x }) => (x - left) / perDegree)).toEqual([
      expect.closeTo(25, 9),
      expect.closeTo(60, 9),
    ]);
    const zero = chart.up.find(({ text }) => text === '0°')!.at;
    const one = chart.up.find(({ text }) => text === '1°')!.at;
    expect(chart.crosses.map(({ y }) => (zero - y) / (zero - one))).toEqual([
      expect.closeTo(1.8, 9),
      expect.closeTo(3.2, 9),
    ]);
    expect(chart.crosses.every(({ counts }) => counts)).toBe(true);
  });

  it('draws the line of two pulls through both, and no band', () => {
    const [x1, y1, x2, y2] = numbers(chart.line!) as [number, number, number, number];
    for (const { x, y } of chart.crosses) expect(y1 + ((y2 - y1) * (x - x1)) / (x2 - x1)).toBeCloseTo(y, 1);
    expect(chart.band).toBeNull();
  });

  it('draws the line of close pulls no further than they bear it', () => {
    // By the two, 90 net would open by 30 degrees.
    const close = [pull(22, 20), pull(23.4, 21)];
    const drawn = layPullChart(close, lawOf(close), null, 360);
    const perDegree = (drawn.plot.right - drawn.plot.left) / 90;
    const [from, , to] = numbers(drawn.line!) as [number, number, number];
    expect((from - drawn.plot.left) / perDegree).toBeGreaterThan(17);
    expect((to - drawn.plot.left) / perDegree).toBeLessThan(24);
    expect(Number.parseFloat(drawn.up.at(-1)!.text)).toBeLessThan(6);
    expect(pullChartInWords(close, lawOf(close), null)).not.toContain('30.0°');
  });

  it('keeps pulls, line and the steel’s own spring inside the field', () => {
    const heights = [numbers(chart.line!)[3]!, numbers(chart.estimate!.path)[3]!, ...chart.crosses.map(({ y }) => y)];
    for (const height of heights) {
      expect(height).toBeGreaterThanOrEqual(top);
      expect(height).toBeLessThanOrEqual(bottom);
    }
    expect(chart.estimate!.labelAt).toBeLessThan(bottom);
  });

  it('lays the band evenly about the line, narrowest at the mean of the net angles', () => {
    const three = [pull(32, 30), pull(64, 60), pull(95, 90)];
    const wide = layPullChart(three, lawOf(three), null, 360);
    const values = numbers(wide.band!);
    const places = values.flatMap((value, index) => (index % 2 === 0 ? [[value, values[index + 1]!] as const] : []));
    const half = places.length / 2;
    const widths = places.slice(0, half).map(([x, y], index) => {
      const [below, under] = places[places.length - 1 - index]!;
      expect(below).toBe(x);
      return under - y;
    });
    // Three net angles with the mean 60, on a chart that ends at 120: the middle.
    expect(wide.across.at(-1)!.text).toBe('120°');
    expect(widths.indexOf(Math.min(...widths))).toBe((half - 1) / 2);
  });

  it('goes below zero for a bend that closed, and marks pulls of another batch as not counting', () => {
    const odd = [pull(60, 61.5), { ...pull(26.8, 25), batch: 'H-1' }];
    const drawn = layPullChart(odd, pullLaw(odd, die!, section, 'H-1'), null, 360);
    expect(drawn.up[0]!.text).toContain('−');
    expect(drawn.crosses.map(({ counts }) => counts)).toEqual([false, true]);
    for (const { y } of drawn.crosses) expect(y).toBeLessThanOrEqual(drawn.plot.bottom);
  });

  it('draws nothing that is not known', () => {
    const bare = layPullChart([], null, null, 360);
    expect([bare.line, bare.band, bare.estimate]).toEqual([null, null, null]);
    expect(Number.parseFloat(bare.up.at(-1)!.text)).toBeGreaterThan(0);
  });

  it('is said in words with every pull', () => {
    const said = pullChartInWords(two, lawOf(two), 0.019);
    expect(said).toContain('pull 1, finished 25.0°, 1.8°; pull 2, finished 60.0°, 3.2°');
    expect(said).toContain('from 0.8° at a finished 1° to 5.0° at a finished 104°, as far as the pulls bear it');
    expect(said).toContain('estimate from the steel alone gives 1.7° at a finished 90°');
  });
});
