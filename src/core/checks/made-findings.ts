/**
 * Tubes that are made beside the frame as it is now: where a tube that stands as built leaves the nodes of its path, where what is cut does not fit
 * any more, and by how much. None while nothing is made.
 */
import { distance, type Vec3 } from '../geometry/vector.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { isPrimed, primed, type NodeRef, type TubeRef } from '../job/reference.ts';
import { beyondNode } from '../solve/amount.ts';
import { heldEnds, heldSection } from '../solve/held.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { offFeet } from './foot-place.ts';
import { FITS, misfits } from './misfit.ts';
import { seatTrouble } from './seat-findings.ts';
import type { EndMisfit, MadeFinding, OffNode, OtherBends, SawnShort } from './made-types.ts';

/** In build order. */
export function* madeTrouble(frame: Frame): Generator<MadeFinding> {
  const { job } = frame;
  if (job.made.length === 0 && !job.bent.some(({ stands }) => stands)) return;
  for (const tube of frame.tubes) {
    yield* otherBends(tube, frame);
    if (tube.asDrawn === null) continue;
    yield* seatTrouble(tube, frame);
    const feet = [...offFeet(tube, frame)];
    yield* feet;
    yield* offNodes(tube, frame, new Set(feet.map(({ node }) => node)));
    if (tube.held === null) yield* sawnShort(tube, frame);
    else yield* endMisfits(tube, tube.asDrawn);
  }
}

function* otherBends(tube: SolvedTube, { job }: Frame): Generator<OtherBends> {
  if (tube.asDrawn !== null) return;
  const run = job.bent.find((each) => each.tube === tube.id && each.stands);
  const made = job.made.find((each) => each.tube === tube.id);
  if (run === undefined && made === undefined) return;
  const was = made?.held.radii.length ?? run!.drawn?.angles.length ?? run!.order.length;
  // One that stands as drawn for what was read of it is no other tube.
  if (was === tube.bends.length) return;
  const base = { severity: 'error', source: 'practice', tube: tube.id, at: tube.corners[0]! } as const;
  yield { ...base, id: 'made/other-bends', was, now: tube.bends.length };
}

/** Of a bar made whole: a piece that stands leaves no node of its own but at the bar's ends. */
function* offNodes(tube: SolvedTube, frame: Frame, saidOfFeet: ReadonlySet<NodeRef>): Generator<OffNode> {
  if (tube.piece !== null) return;
  const twin = isPrimed(tube.id);
  const drawn = tube.asDrawn!;
  for (const named of tube.member.path) {
    const node: NodeRef = twin ? primed(named) : named;
    const place = frame.nodes.get(node)!;
    const corner = drawn.corners.findIndex((each) => distance(each, place) <= ROUNDING);
    // A node that the tube goes straight through is no corner of it.
    if (corner === -1) continue;
    const at = tube.corners[corner]!;
    const off = distance(at, place);
    if (off <= FITS) continue;
    const others = endingAt(node, tube.id, frame);
    // What a tube that is held misses is said of its ends.
    if (others.length === 0 && (tube.held !== null || saidOfFeet.has(node))) continue;
    const severity = others.length > 0 ? 'warning' : 'note';
    yield { id: 'made/off-node', severity, source: 'practice', tube: tube.id, node, at, distance: off, others };
  }
}

/** Other tubes whose path goes by the node. */
const endingAt = (node: NodeRef, than: TubeRef, { tubes }: Frame): readonly TubeRef[] =>
  tubes
    .filter(
      ({ id, bar, member, piece }) =>
        bar !== than &&
        (piece === null || piece.number === 1) &&
        member.path.some((named) => (isPrimed(id) ? primed(named) : named) === node),
    )
    .map(({ id }) => id);

function* endMisfits(tube: SolvedTube, wanted: SolvedTube): Generator<EndMisfit> {
  for (const [which, misfit] of misfits(tube, wanted).entries()) {
    if (misfit === null) continue;
    const { position: at, allowance: left } = tube.ends[which as 0 | 1];
    const [long, gap] = [misfit.long, Math.max(0, misfit.gap - left)];
    if (Math.abs(long) <= FITS && gap <= FITS) continue;
    const severity = gap > FITS || left === 0 ? 'warning' : 'note';
    const end = which === 0 ? 'A' : 'B';
    yield {
      id: 'made/end-misfit',
      severity,
      source: 'practice',
      tube: tube.id,
      end,
      at,
      long,
      gap,
      left,
      turned: misfit.turned,
    };
  }
}

/** Of a tube that stands as it was bent and is not notched yet: whether its blank, as it was cut, reaches what it is notched to. */
function* sawnShort(tube: SolvedTube, { job }: Frame): Generator<SawnShort> {
  const made = job.made.find((each) => each.tube === tube.id);
  if (made === undefined) return;
  const asked = tube.ends.map(({ node, spec, foot }) => ({ node, spec, foot }));
  const section = heldSection(made.held, tube.section);
  const then = heldEnds({ made, motion: null }, section, isPrimed(tube.id), [asked[0]!, asked[1]!]);
  for (const which of [0, 1] as const) {
    const missing = -(tube.ends[which].tip ?? 0) - beyondNode(then[which]);
    if (missing <= FITS) continue;
    const at: Vec3 = tube.ends[which].position;
    const end = which === 0 ? 'A' : 'B';
    yield { id: 'made/sawn-short', severity: 'warning', source: 'practice', tube: tube.id, end, at, missing };
  }
}
