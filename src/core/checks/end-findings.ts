/** What is wrong where a tube ends: cuts that miss, run out, or land where they do not fit. */
import { fitsOn } from '../feet/fits.ts';
import { standsOf } from '../feet/stand.ts';
import { ANGLE_ROUNDING, MEETING_DISTANCE, ROUNDING } from '../geometry/tolerance.ts';
import { distance, dot } from '../geometry/vector.ts';
import type { Bend, Cut, SolvedTube, TubeEnd } from '../solve/types.ts';
import { meetsAgain } from './meets-again.ts';
import type { Questions } from './questions.ts';
import { UNSEEN } from './limits.ts';
import { stripKind, stripThickness } from './strip.ts';
import type { Finding, MeetsNothing } from './types.ts';

export function* endTrouble(tube: SolvedTube, ask: Questions): Generator<Finding> {
  const again = meetsAgain(tube);
  for (const [which, end] of tube.ends.entries()) {
    const label = which === 0 ? 'A' : 'B';
    const base: Base = {
      tube: tube.id,
      end: label,
      ...(end.node !== null && { node: end.node }),
      at: end.position,
      source: 'practice',
    };
    const { spec } = end;

    if (spec.fit === 'auto' && end.fit === 'square' && end.butted.length === 0) {
      yield {
        ...base,
        id: 'end/meets-nothing',
        severity: 'warning',
        sees: seenAt(tube, end, ask),
      };
    }
    yield* mitreTrouble(tube, end, base, ask);
    if (end.plateNormal !== null && end.fit === 'foot' && dot(end.plateNormal, end.direction) < 0) {
      yield { ...base, id: 'foot/upside-down', severity: 'error' };
    }
    if ((end.fit === 'plate' || end.fit === 'foot') && end.tip === null) {
      yield {
        ...base,
        id: 'end/plate-along-tube',
        severity: 'error',
      };
    }
    yield* footTrouble(tube, which as 0 | 1, base);
    for (const cut of end.cuts) {
      if (!cut.reaches) {
        const missed = { ...base, severity: 'error', runTube: cut.against } as const;
        yield end.node === null ? { ...missed, id: 'piece/cutter-misses' } : { ...missed, id: 'end/cutter-misses' };
      } else {
        const elsewhere = elsewhereTrouble(tube, end, cut, base);
        if (elsewhere !== null) yield elsewhere;
        const runTube = ask.landedOn(cut);
        const landed = landingTrouble(cut, base, runTube);
        if (landed !== null) yield landed;
        for (const which of [0, 1] as const) {
          if (end.cuts.some((other) => goesOn(runTube, which, ask.landedOn(other)))) continue;
          const off = overhangTrouble(cut, tube, base, runTube, which);
          if (off !== null) yield off;
        }
      }
    }
    if (end.tip !== null && end.passedBy) {
      // Where a bar is cut in two, the wall that passes by would hold the pieces together.
      if (end.node !== null) yield { ...base, id: 'end/wider-than-run', severity: 'warning' };
      else yield* stripTrouble(tube, end, base);
    }
    if (end.throat !== null && end.throat > tube.developedLength + ROUNDING) {
      yield {
        ...base,
        id: 'end/cut-through',
        severity: 'error',
        throat: end.throat,
        developedLength: tube.developedLength,
      };
    }
    for (const { runTube, depth, at } of again.filter((each) => each.end === which)) {
      yield { ...base, id: 'end/meets-run-again', severity: 'error', runTube, depth, at };
    }
    const straight = Math.max(tube.straights.at(which === 0 ? 0 : -1)!, 0);
    if (tube.bends.length > 0 && end.throat !== null && end.throat > straight + ROUNDING) {
      yield {
        ...base,
        id: 'end/cope-in-own-bend',
        severity: 'warning',
        throat: end.throat,
        straight,
      };
    }
  }
}

function* stripTrouble({ section }: SolvedTube, end: TubeEnd, base: Base): Generator<Finding> {
  const thickness = stripThickness(end);
  const passed = { ...base, runTube: end.cuts[0]!.against, thickness } as const;
  const kind = stripKind(thickness, section.wall);
  if (kind === 'holds') yield { ...passed, id: 'piece/strip-holds', severity: 'error' };
  if (kind === 'filed') yield { ...passed, id: 'piece/strip-to-file', severity: 'warning' };
}

/** A mitre that cannot be, or that the other tube does not make. */
function* mitreTrouble(tube: SolvedTube, end: TubeEnd, base: Base, ask: Questions): Generator<Finding> {
  if (end.spec.fit !== 'mitre') return;
  if (end.unmitred !== null) {
    yield { ...base, id: 'mitre/cannot', severity: 'error', why: end.unmitred, mate: end.spec.with };
    return;
  }
  const mate = ask.nearest(end.butted[0]!, end.position);
  const back = mate.ends.some(({ fit, butted }) => fit === 'mitre' && butted.includes(tube.bar));
  if (!back) yield { ...base, id: 'mitre/one-sided', severity: 'error', mate: mate.id };
}

/** A cut end that does not find its place on its foot. */
function* footTrouble(tube: SolvedTube, which: 0 | 1, base: Base): Generator<Finding> {
  const stand = standsOf(tube).find((each) => each.which === which);
  const fits = stand === undefined ? null : fitsOn(stand);
  if (fits === null) return;
  const { over, takes, intoBend, hole } = fits;
  if (over > UNSEEN) yield { ...base, id: 'foot/over-edge', severity: 'warning', over, takes };
  if (intoBend > UNSEEN) yield { ...base, id: 'foot/in-bend', severity: 'warning', over: intoBend };
  if (hole !== null && hole.by > UNSEEN) {
    yield { ...base, id: 'foot/over-hole', severity: 'warning', hole: hole.number, by: hole.by };
  }
}

/** What a person sees meet an end that is left square all the same. */
function seenAt(tube: SolvedTube, end: TubeEnd, ask: Questions): MeetsNothing['sees'] {
  if (tube.member.mirror && Math.abs(end.position[1]) <= ROUNDING) return 'own-twin';
  const later = end.node === null ? undefined : ask.laterAt(end.node, tube.id);
  return later === undefined ? null : { later: later.id };
}

type Base = Pick<MeetsNothing, 'tube' | 'end' | 'node' | 'at' | 'source'>;

/**
 * A run tube that the tube does not touch at the node, and that cuts it nearer the other end than this one, or past this one by as much:
 * what is left is not the tube that was drawn.
 */
function elsewhereTrouble(tube: SolvedTube, end: TubeEnd, cut: Cut, base: Base): Finding | null {
  const by = distance(end.position, cut.landing);
  if (by <= (tube.section.outerDiameter + cut.sawDiameter) / 2) return null;
  const away = Math.max(end.tip ?? 0, -(end.throat ?? 0));
  if (away <= tube.developedLength / 2) return null;
  return { ...base, id: 'end/cut-elsewhere', severity: 'error', runTube: cut.against, by, away };
}

/** A cope that falls into a bend of its run tube, or near one. */
function landingTrouble(cut: Cut, base: Base, runTube: SolvedTube): Finding | null {
  if (runTube.bends.length === 0) return null;
  const reach = runTube.section.outerDiameter;
  const at = cut.landingAt - (runTube.piece?.from ?? 0);
  const away = (bend: Bend) => Math.max(bend.start - at, at - bend.end);
  let least = Infinity;
  let number = 0;
  for (const [i, each] of runTube.bends.entries()) {
    if (away(each) >= least) continue;
    least = away(each);
    number = i + 1;
  }
  if (least > reach + ROUNDING) return null;
  const landed = { ...base, severity: 'warning', runTube: runTube.id, runTubeBend: number } as const;
  return cut.onBend
    ? { ...landed, id: 'joint/in-bend' }
    : { ...landed, id: 'joint/near-bend', distance: Math.max(least, 0), reach };
}

/** Whether the other tube is butted to this end: the saddle goes on over it. */
const goesOn = (runTube: SolvedTube, which: 0 | 1, other: SolvedTube): boolean =>
  other.ends.some(
    ({ butted, position }) =>
      butted.includes(runTube.bar) && distance(position, runTube.ends[which].position) <= MEETING_DISTANCE,
  );

/**
 * A saddle that runs past this free end of its run tube has nothing under it there; where that end is itself coped, the joint closes.
 */
function overhangTrouble(cut: Cut, branch: SolvedTube, base: Base, runTube: SolvedTube, which: 0 | 1): Finding | null {
  const end = runTube.ends[which];
  if (end.fit === 'cope' || end.butted.length > 0) return null;
  // Along its run tube it has no saddle.
  if (Math.sin(cut.includedAngle) < ANGLE_ROUNDING) return null;
  const half = branch.section.outerDiameter / 2 / Math.sin(cut.includedAngle);
  const at = cut.landingAt - (runTube.piece?.from ?? 0);
  const along = which === 0 ? at : runTube.developedLength - at;
  const over = half - (along - (end.tip ?? 0));
  if (over <= UNSEEN) return null;
  return {
    ...base,
    id: 'joint/off-run-end',
    severity: 'warning',
    runTube: runTube.id,
    runTubeEnd: which === 0 ? 'A' : 'B',
    over,
  };
}
