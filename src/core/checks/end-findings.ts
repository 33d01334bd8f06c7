/** What is wrong where a tube ends: cuts that miss, run out, or land where they do not fit. */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Bend, Cut, SolvedTube, TubeEnd } from '../solve/types.ts';
import type { Around } from './around.ts';
import { PRACTICE, UNSEEN, type Show } from './show.ts';
import type { Finding } from './types.ts';

export function* endTrouble(tube: SolvedTube, around: Around, show: Show): Generator<Finding> {
  for (const [which, end] of tube.ends.entries()) {
    const label = which === 0 ? 'A' : 'B';
    const base = { tube: tube.id, end: label, node: end.node, at: end.position, source: PRACTICE } as const;
    const name = `${tube.name}, end ${label}`;
    const spec = tube.member.ends[which]!;

    if (spec.fit === 'auto' && end.fit === 'square' && end.butted.length === 0) {
      yield {
        ...base,
        id: 'end/meets-nothing',
        severity: 'warning',
        message: `${name} meets no tube${meetsOwnTwin(tube, end, around)}`,
      };
    }
    if (end.fit === 'plate' && end.tip === null) {
      yield {
        ...base,
        id: 'end/plate-along-tube',
        severity: 'error',
        message: `${name}: the plate lies along the tube and never cuts it. Give the plate's normal another direction.`,
      };
    }
    for (const cut of end.cuts) {
      if (!cut.reaches) {
        const run = around.tube(cut.against);
        yield {
          ...base,
          id: 'end/cutter-misses',
          severity: 'error',
          message: `${name}: the cope against ${run.name} does not reach this tube. Move the node onto it, or take it out of the end's list.`,
        };
      } else {
        yield* landingTrouble(cut, base, name, around, show);
        yield* overhangTrouble(cut, tube, base, name, around, show);
      }
    }
    if (end.tip !== null && end.passedBy) {
      yield {
        ...base,
        id: 'end/wider-than-run',
        severity: 'warning',
        message: `${name}: part of this tube's wall passes by what it is coped to. Move the node nearer the run's axis, or cope the other tube to this one.`,
      };
    }
    if (end.throat !== null && end.throat > tube.developedLength + ROUNDING) {
      yield {
        ...base,
        id: 'end/cut-through',
        severity: 'error',
        message: `${name}: the cut is ${show(end.throat)} deep and the tube ${show(tube.developedLength)} long, so it runs out at the other end. Move the node, or give the end another fit.`,
      };
    }
    const straight = Math.max(tube.straights.at(which === 0 ? 0 : -1)!, 0);
    if (tube.bends.length > 0 && end.throat !== null && end.throat > straight + ROUNDING) {
      yield {
        ...base,
        id: 'end/cope-in-own-bend',
        severity: 'warning',
        message: `${name}: the cope is ${show(end.throat)} deep and the straight there ${show(straight)}, so the cut runs into this tube's own bend. Fit it by hand, or move the bend away.`,
      };
    }
  }
}

/** Why an end that a person sees meeting something is left square, and what would mend it. */
function meetsOwnTwin(tube: SolvedTube, end: TubeEnd, around: Around): string {
  const twin = tube.member.mirror && Math.abs(end.position[1]) <= ROUNDING;
  if (twin)
    return ' but its own twin, and is cut square. For a mitre on the centre plane give it a plate with normal 0, 1, 0.';
  const later = around.laterAt(end.node, tube.number);
  if (later !== undefined)
    return ` built before it, and is cut square; ${later.name} ends there but is built later. If this is a foot, give it a plate; else move this member down the build order, or name what it is coped to.`;
  return ' and is cut square. Put it on a tube, or give it a plate.';
}

function* landingTrouble(
  cut: Cut,
  base: Pick<Finding, 'tube' | 'end' | 'node' | 'at' | 'source'>,
  name: string,
  around: Around,
  show: Show,
): Generator<Finding> {
  const run = around.tube(cut.against);
  const reach = run.section.outerDiameter;
  const away = (bend: Bend) => Math.max(bend.start - cut.landingAt, cut.landingAt - bend.end);
  let least = Infinity;
  let number = 0;
  for (const [i, each] of run.bends.entries()) {
    if (away(each) >= least) continue;
    least = away(each);
    number = i + 1;
  }
  if (least > reach + ROUNDING) return;
  const bend = `bend ${number} of ${run.name}`;
  const place = cut.onBend
    ? `lands in ${bend}`
    : `lands ${show(Math.max(least, 0))} from ${bend}, less than one diameter (${show(reach)})`;
  yield {
    ...base,
    id: cut.onBend ? 'joint/in-bend' : 'joint/near-bend',
    severity: 'warning',
    message: `${name} ${place}. The cope is cut for it; a saw set for straight tube does not fit there. Move the node along the tube if the rule book wants joints clear of bends.`,
  };
}

/** A saddle that runs past a free end of its run has nothing under it there; where that end is itself coped, the joint closes. */
function* overhangTrouble(
  cut: Cut,
  branch: SolvedTube,
  base: Pick<Finding, 'tube' | 'end' | 'node' | 'at' | 'source'>,
  name: string,
  around: Around,
  show: Show,
): Generator<Finding> {
  const run = around.tube(cut.against);
  const half = branch.section.outerDiameter / 2 / Math.sin(cut.includedAngle);
  const toEnds = [cut.landingAt, run.developedLength - cut.landingAt];
  for (const [i, along] of toEnds.entries()) {
    const end = run.ends[i]!;
    const over = half - (along - (end.tip ?? 0));
    if (end.fit === 'cope' || end.butted.length > 0 || over <= UNSEEN) continue;
    yield {
      ...base,
      id: 'joint/off-run-end',
      severity: 'warning',
      message: `${name}: its saddle runs ${show(over)} past end ${i === 0 ? 'A' : 'B'} of ${run.name}, where there is nothing to weld to. Move the node along ${run.name} by that much or more.`,
    };
  }
}
