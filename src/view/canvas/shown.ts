/** What of the job is drawn as places, and where it stands: measured points, body lines, nodes. */
import type { Derived } from '../../core/derive.ts';
import { equal, type Vec3 } from '../../core/geometry/vector.ts';
import { bareId, isPrimed, primed, type NodeRef, type PointRef } from '../../core/job/reference.ts';
import type { Job } from '../../core/job/types.ts';
import { envelopeBox, placeAmong } from '../../core/solve/envelope-box.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Selection, Station } from '../../store/types.ts';
import type { Pickable, Spot } from './pick.ts';

/** A measured point's place, or its mirror image's; undefined for an id that the job does not hold. */
export function pointPlace(job: Job, reference: PointRef): Vec3 | undefined {
  return placeAmong(job.points, reference) ?? undefined;
}

/** The box of each envelope. */
export const boxesOfJob = (job: Job): Pickable['envelopes'] =>
  job.envelopes.map((envelope) => ({ id: envelope.id, box: envelopeBox(job.points, envelope) }));

/** Each body line as its chain of places. */
export const bodyChains = (job: Job): readonly (readonly Vec3[])[] =>
  job.bodyLines.map((line) =>
    line.points.map((reference) => pointPlace(job, reference)).filter((place) => place !== undefined),
  );

/** The nodes that a tube runs through; a twin runs through the mirror images. */
const nodesOf = (tube: SolvedTube): readonly NodeRef[] =>
  tube.twinOf === null ? tube.member.path : tube.member.path.map(primed);

/** Measured points, and the mirror image of one that is selected. */
export function pointSpots(job: Job, selection: Selection | null): readonly Spot[] {
  const spots = job.points.map((point): Spot => ({ selection: { kind: 'point', id: point.id }, at: point.position }));
  if (selection?.kind === 'point' && isPrimed(selection.id)) {
    const at = pointPlace(job, selection.id);
    if (at !== undefined) spots.push({ selection, at });
  }
  return spots;
}

/** All nodes at the Frame station, else those of the selected tube, and a selected one. Each place once. */
export function nodeSpots(derived: Derived, station: Station, selection: Selection | null): readonly Spot[] {
  const wanted = new Set<NodeRef>();
  if (selection?.kind === 'node') wanted.add(selection.id);
  const selected = selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;
  for (const node of selected === undefined ? [] : nodesOf(selected)) wanted.add(node);
  if (station === 'frame') {
    for (const node of derived.job.nodes) wanted.add(node.id);
    for (const tube of derived.tubes) for (const node of nodesOf(tube)) wanted.add(node);
  }
  const spots: Spot[] = [];
  for (const id of wanted) {
    const at = derived.nodes.get(id);
    if (at === undefined) continue;
    // On the centre plane a node is its own image.
    const bare = derived.nodes.get(bareId(id));
    if (isPrimed(id) && wanted.has(bareId(id)) && bare !== undefined && equal(bare, at)) continue;
    spots.push({ selection: { kind: 'node', id }, at });
  }
  return spots;
}
