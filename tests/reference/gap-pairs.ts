/** Random pairs of tubes that come near one another or run into each other: cut ends facing walls and ends, straight and bent, with lines that nothing reaches. */
import type { Member } from '../../src/core/job/kinds/member.ts';
import type { FrameNode } from '../../src/core/job/kinds/node.ts';
import type { Section } from '../../src/core/job/kinds/section.ts';
import type { EndFit } from '../../src/core/job/kinds/end.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { SolvedTube } from '../../src/core/solve/types.ts';
import { copedTo, dieOf, fixed, jobOf, member, SQUARE, tubing } from './jobs.ts';
import { cutterThrough, placeAlong, developed } from './oracles/centreline.ts';
import { CopedSolid, type CopedEnd } from './oracles/coped.ts';
import { drawFrom, type Draw } from './oracles/seeded.ts';
import { along, anySquare, around, difference, inner, sum, times, unit, type Triple } from './oracles/space.ts';

interface Draft {
  readonly corners: readonly Triple[];
  readonly bendRadius: number;
  readonly radius: number;
  readonly ends: readonly [EndFit, EndFit];
}

export interface PairOfTubes {
  readonly seed: number;
  readonly kind: string;
  readonly job: Job;
  readonly runs: ReadonlyMap<string, Draft>;
}

const direction = (draw: Draw): Triple => {
  const height = draw.between(-1, 1);
  const bearing = draw.between(0, 2 * Math.PI);
  const flat = Math.sqrt(1 - height * height);
  return [flat * Math.cos(bearing), flat * Math.sin(bearing), height];
};

/** Straight, or with one bend. */
function axisFrom(draw: Draw, from: Triple, way: Triple, radius: number): Pick<Draft, 'corners' | 'bendRadius'> {
  const bendRadius = radius * draw.between(5, 7);
  const first = draw.between(180, 400);
  if (draw.chance(0.55)) return { corners: [from, along(from, way, first + 150)], bendRadius };
  const turn = (draw.between(25, 100) * Math.PI) / 180;
  const side = around(way, anySquare(way), draw.between(0, 360));
  const corner = along(from, way, first + bendRadius * Math.tan(turn / 2));
  const next = sum(times(Math.cos(turn), way), times(Math.sin(turn), side));
  return { corners: [from, corner, along(corner, next, bendRadius * Math.tan(turn / 2) + 260)], bendRadius };
}

/** A tube whose end A stands on a run of its own, or is square or a plate. */
function branch(draw: Draw, name: string, runs: Map<string, Draft>, on?: readonly [string, Draft]): Draft {
  const radius = draw.between(12, 26);
  const from: Triple = [0, 0, 0];
  const way = direction(draw);
  const flat: EndFit = draw.chance(0.5)
    ? SQUARE
    : {
        fit: 'plate',
        normal: [...unit(sum(way, times(0.6, direction(draw))))] as [number, number, number],
        allowance: 0,
      };
  if (on === undefined && draw.chance(0.25))
    return { ...axisFrom(draw, from, way, radius), radius, ends: [flat, SQUARE] };
  if (on !== undefined) {
    // On the run that is there already.
    const [id, run] = on;
    const length = developed(run.corners, run.bendRadius);
    const foot = placeAlong(run.corners, run.bendRadius, draw.between(0.3, 0.6) * length);
    const lean = around(foot.direction, anySquare(foot.direction), draw.between(0, 360));
    const included = (draw.between(25, 90) * Math.PI) / 180;
    const leaving = sum(
      times(Math.cos(included) * draw.oneOf([-1, 1]), foot.direction),
      times(Math.sin(included), lean),
    );
    return { ...axisFrom(draw, foot.at, leaving, radius), radius, ends: [copedTo(id), SQUARE] };
  }
  const runRadius = draw.chance(0.2)
    ? radius
    : draw.chance(0.25)
      ? radius * draw.between(0.5, 0.95)
      : draw.between(14, 28);
  const lean = around(way, anySquare(way), draw.between(0, 360));
  const included = (draw.between(25, 90) * Math.PI) / 180;
  const axis = sum(times(Math.cos(included), way), times(Math.sin(included), lean));
  const passing = draw.chance(0.4)
    ? times(draw.between(-0.5, 0.5) * runRadius, around(way, lean, 90))
    : ([0, 0, 0] as const);
  const through = sum(from, passing);
  runs.set(`run-${name}`, {
    corners: [along(through, axis, -300), along(through, axis, 300)],
    bendRadius: 100,
    radius: runRadius,
    ends: [SQUARE, SQUARE],
  });
  return { ...axisFrom(draw, from, way, radius), radius, ends: [copedTo(`run-${name}`), SQUARE] };
}

const moved = (draft: Draft, by: Triple): Draft => ({
  ...draft,
  corners: draft.corners.map((corner) => sum(corner, by)),
});

/** Where on its axis a tube is brought near: at its first end, at its last or between. */
function chosen(draw: Draw, { corners, bendRadius }: Draft): { at: Triple; where: string } {
  const length = developed(corners, bendRadius);
  const where = draw.oneOf(['end A', 'end A', 'end A', 'end B', 'middle']);
  const t =
    where === 'end A'
      ? draw.between(0, 60)
      : where === 'end B'
        ? length - draw.between(0, 40)
        : draw.between(0.2, 0.8) * length;
  return { at: placeAlong(corners, bendRadius, t).at, where };
}

export function pairOfTubes(seed: number): PairOfTubes {
  const draw = drawFrom(seed);
  const runs = new Map<string, Draft>();
  const a = branch(draw, 'a', runs);
  const sameRun = runs.has('run-a') && draw.chance(0.35);
  let b = sameRun ? branch(draw, 'b', runs, ['run-a', runs.get('run-a')!]) : branch(draw, 'b', runs);
  const [nearA, nearB] = [chosen(draw, a), chosen(draw, b)];
  if (!sameRun) {
    const gap = draw.chance(0.5) ? draw.between(0, 25) : draw.between(-30, 5);
    const shift = sum(difference(nearA.at, nearB.at), times(a.radius + b.radius + gap, direction(draw)));
    b = moved(b, shift);
    const own = runs.get('run-b');
    if (own !== undefined) runs.set('run-b', moved(own, shift));
  }
  runs.set('a', a);
  runs.set('b', b);
  const nodes: FrameNode[] = [];
  const members: Member[] = [];
  const sections: Section[] = [];
  for (const [id, { corners, radius, bendRadius, ends }] of runs) {
    const path = corners.map((corner, i) => {
      nodes.push(fixed(`${id}${i}`, corner));
      return `${id}${i}`;
    });
    sections.push(tubing(id, 2 * radius, 2));
    members.push(member(id, path, id, { ends, ...(corners.length > 2 && { die: id }) }));
    void bendRadius;
  }
  const dies = [...runs].map(([id, { radius, bendRadius }]) => dieOf(id, 2 * radius, bendRadius));
  const kind = sameRun ? 'one run' : `${nearA.where} to ${nearB.where}`;
  return { seed, kind, job: jobOf({ sections, dies, nodes, members }), runs };
}

/** The solved tube as the oracle sees it: by its numbers. */
export function copedSolid(
  tube: SolvedTube,
  runs: ReadonlyMap<string, Pick<Draft, 'corners' | 'bendRadius' | 'radius'>>,
  bendRadius: number,
): CopedSolid {
  const endOf = (end: SolvedTube['ends'][number]): CopedEnd => ({
    node: end.position,
    direction: end.direction,
    reference: end.reference,
    radius: tube.section.outerDiameter / 2,
    profile: Array.from(end.outer, (s) => (Number.isNaN(s) ? null : s)),
    tip: end.tip ?? 0,
    plane: end.plateNormal ?? (end.cuts.length === 0 ? end.direction : null),
    cutters: end.cuts.map(({ against }) => {
      const run = runs.get(against)!;
      return cutterThrough(run.corners, run.bendRadius, run.radius);
    }),
  });
  return new CopedSolid({
    corners: tube.corners,
    bendRadius,
    radius: tube.section.outerDiameter / 2,
    ends: [endOf(tube.ends[0]), endOf(tube.ends[1])],
  });
}

/** Whether an end is as it should be: what a cut through a bend, or from end to end, leaves is nobody's answer. */
export const isSound = (tube: SolvedTube): boolean =>
  tube.straights.every((straight) => straight > 0) &&
  tube.ends.every(
    (end, i) =>
      end.tip !== null &&
      (tube.bends.length === 0 ? tube.developedLength / 2 : tube.straights.at(-i)!) > (end.throat ?? 0),
  ) &&
  inner(tube.ends[0].direction, tube.ends[0].direction) > 0;

/** A box beside a tube or over it: the place that it is brought to is more often at the tube's cut end than along it. */
export function boxBeside(seed: number, tube: CopedSolid): { centre: Triple; size: Triple; rotation: Triple } {
  const draw = drawFrom(seed + 0.5 * 2 ** 20);
  const { corners, bendRadius, radius } = tube.coped;
  const t = draw.chance(0.7) ? draw.between(-10, 60) : draw.between(0, tube.length);
  const { at } = placeAlong(corners, bendRadius, Math.max(t, 0));
  const size: Triple = [draw.between(60, 300), draw.between(60, 300), draw.between(60, 300)];
  const away = direction(draw);
  const reach = Math.min(...size) / 2 + radius + draw.between(-30, 60);
  return {
    centre: along(at, away, reach),
    size,
    rotation: [draw.between(-3, 3), draw.between(-3, 3), draw.between(-3, 3)],
  };
}
