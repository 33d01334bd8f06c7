/**
 * The bent gusset: one sheet, its free edge the outside of a fold. From the one face round a right angle of the given inside radius to a strip square to the faces, and
 * round another right angle to the other face; where the width leaves no strip, the two are one half round. The ends of the fold are cut to the tubes too.
 *
 * All is found on the middle of the sheet's thickness. A place of it is told by u, along the free edge from leg 1; by p, how far it lies in from the free edge, square to it;
 * and by its height z over the corner's plane. Unfolded, faces and strip keep their size, and a right angle takes pi/2 (R + k t): the arc of the fibre
 * that keeps its length, k t out from the inside. k is typed, or that of DIN 6935, as for the plates of feet.
 */
import { kFactor } from '../feet/bend-allowance.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Gusset } from '../job/kinds/gusset.ts';
import type { Corner } from './corner.ts';
import { linesThrough, type Edge, type Place2 } from './edges.ts';
import { faceAt, type Face } from './face.ts';
import { freeEdge } from './flat.ts';

export type BentGusset = Extract<Gusset, { readonly kind: 'bent' }>;

/** How far out from the inside the fibre lies that keeps its length, as a share of the thickness: as typed, else by DIN 6935; 0 to 0.5. */
export const foldFibre = ({ kFactor: typed, radius, thickness }: BentGusset): number =>
  typed ?? kFactor(radius, thickness);

/** A bend of the press: where it begins, its middle, where it ends; each from leg 1 to leg 2 on the flat sheet. */
export interface FoldLine {
  readonly turns: 90 | 180;
  readonly begins: readonly [Place2, Place2];
  readonly middle: readonly [Place2, Place2];
  readonly ends: readonly [Place2, Place2];
}

/** Across the sheet: how far in from the free edge, how high, and how far from the middle on the flat sheet; mm. */
export interface Station {
  readonly p: number;
  readonly z: number;
  readonly flat: number;
  /** Unit, out of the middle of the sheet to its outside: along p and along z. */
  readonly out: readonly [number, number];
  /** Where a tube ends the sheet there: u on leg 1 and on leg 2. */
  readonly ends: readonly [number, number];
}

export interface Folded {
  /** Midway between the corners of the two faces: what the legs count from. */
  readonly midway: Place2;
  /** Where u and p count from, on the corner's plane: the free edge's start, unit along it, unit inwards. */
  readonly origin: Place2;
  readonly along: Place2;
  readonly inwards: Place2;
  /** Lower and upper face. */
  readonly faces: readonly [Face, Face];
  /** From where the lower face ends to where the upper one begins. */
  readonly stations: readonly Station[];
  /** From the free edge to where the faces are flat, mm. */
  readonly depth: number;
}

/** Longest chord of the fold's ends across the strip, mm, and so many chords to a right angle: of tubes up to 60 mm they lie within 0.02 mm of the curve. */
const STRIP_CHORD = 0.5;
const CHORDS = 48;

/** Null where the width stands past a tube. The legs are counted from midway between the two faces' corners, which lie over one another where the axes meet. */
export function folded(corner: Corner, gusset: BentGusset): Folded | null {
  const { thickness: t, radius, width, relief } = gusset;
  const high = (width - t) / 2;
  const [lower, upper] = [faceAt(corner, relief, -high), faceAt(corner, relief, high)];
  if (lower === null || upper === null) return null;
  const midway: Place2 = [(lower.corner[0] + upper.corner[0]) / 2, (lower.corner[1] + upper.corner[1]) / 2];
  const [from, to] = freeEdge(midway, corner.angle, gusset);
  const span = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Place2 = [(to[0] - from[0]) / span, (to[1] - from[1]) / span];
  const inwards: Place2 = [-along[1], along[0]];
  const [c, s] = [Math.cos(corner.angle), Math.sin(corner.angle)];
  const endsAt = (p: number, z: number): readonly [number, number] => {
    const [a, b] = faceAt(corner, relief, z)!.off;
    const [x, y] = [from[0] + p * inwards[0], from[1] + p * inwards[1]];
    return [(a - y) / along[1], (b - (x * s - y * c)) / (along[0] * s - along[1] * c)];
  };
  const middle = radius + t / 2;
  const half = width / 2 - t - radius;
  const allowance = (Math.PI / 2) * (radius + foldFibre(gusset) * t);
  const place = (p: number, z: number, flat: number, out: readonly [number, number]): Station => ({
    p,
    z,
    flat,
    out,
    ends: endsAt(p, z),
  });
  const round = Array.from({ length: CHORDS + 1 }, (_, i) => {
    const turn = ((Math.PI / 2) * i) / CHORDS;
    const [out, up] = [-Math.cos(turn), Math.sin(turn)];
    return place(radius + t + middle * out, half + middle * up, half + (allowance * i) / CHORDS, [out, up]);
  });
  const steps = Math.ceil((2 * half) / STRIP_CHORD);
  const strip = Array.from({ length: Math.max(0, steps - 1) }, (_, i) => {
    const z = -half + (2 * half * (i + 1)) / steps;
    return place(t / 2, z, z, [-1, 0]);
  });
  const under = round.toReversed().map(({ p, z, flat, out }) => place(p, 0 - z, 0 - flat, [out[0], 0 - out[1]]));
  // Without a strip the two right angles meet in one place.
  const above = half > ROUNDING ? round : round.slice(1);
  return {
    midway,
    origin: from,
    along,
    inwards,
    faces: [lower, upper],
    stations: [...under, ...strip, ...above],
    depth: radius + t,
  };
}

/** A place on the corner's plane as [u, p]. */
export function onFold({ origin, along, inwards }: Folded, [x, y]: Place2): Place2 {
  const [dx, dy] = [x - origin[0], y - origin[1]];
  return [dx * along[0] + dy * along[1], dx * inwards[0] + dy * inwards[1]];
}

/** The same the other way round. */
export const offFold = ({ origin, along, inwards }: Folded, [u, p]: Place2): Place2 => [
  origin[0] + u * along[0] + p * inwards[0],
  origin[1] + u * along[1] + p * inwards[1],
];

/** The flat sheet: x along the free edge, y across the fold from its middle, the upper face above; counter-clockwise, mm. */
export function unfolded(fold: Folded): { readonly edges: readonly Edge[]; readonly bends: readonly FoldLine[] } {
  const { stations, faces } = fold;
  const endsOn = (leg: 0 | 1): Place2[] => stations.map(({ ends, flat }) => [ends[leg], flat]);
  const [one, two] = [endsOn(0).toReversed(), endsOn(1)];
  const edges = [
    ...linesThrough(two),
    ...beyondFold(fold, faces[1], two.at(-1)!, one[0]!, 1),
    ...linesThrough(one),
    ...beyondFold(fold, faces[0], two[0]!, one.at(-1)!, -1),
  ];
  return { edges, bends: bendsOf(fold) };
}

/** A face's edges laid flat, from leg 2 to leg 1 on the upper face (side 1), from leg 1 to leg 2 on the lower one. */
function beyondFold(fold: Folded, face: Face, onTwo: Place2, onOne: Place2, side: 1 | -1): readonly Edge[] {
  const { along, depth } = fold;
  const laid = (place: Place2): Place2 => {
    const [u, p] = onFold(fold, place);
    return [u, onTwo[1] + side * (p - depth)];
  };
  const [one, two] = [laid(face.begins[0]), laid(face.begins[1])];
  const between = face.between === null ? [] : [laidEdge(face.between, laid, Math.atan2(along[1], along[0]), side)];
  return side === 1
    ? [...linesThrough([onTwo, two]), ...between, ...linesThrough([one, onOne])]
    : [...linesThrough([onOne, one]), ...between, ...linesThrough([two, onTwo])];
}

/** An edge turned with the face, and turned over with the lower one, on which it runs the other way round. */
function laidEdge(edge: Edge, laid: (place: Place2) => Place2, turn: number, side: 1 | -1): Edge {
  if (edge.kind === 'line') {
    const [from, to] = [laid(edge.from), laid(edge.to)];
    return side === 1 ? { kind: 'line', from, to } : { kind: 'line', from: to, to: from };
  }
  const [from, to] = [edge.from - turn, edge.to - turn];
  return { ...edge, centre: laid(edge.centre), ...(side === 1 ? { from, to } : { from: -to, to: -from }) };
}

function bendsOf({ stations }: Folded): readonly FoldLine[] {
  const lineAt = (i: number): FoldLine['middle'] => {
    const { ends, flat } = stations.at(i)!;
    return [
      [ends[0], flat],
      [ends[1], flat],
    ];
  };
  const bend = (turns: FoldLine['turns'], first: number, by: number): FoldLine => ({
    turns,
    begins: lineAt(first),
    middle: lineAt(first + by / 2),
    ends: lineAt(first + by),
  });
  if (stations.length === 2 * CHORDS + 1) return [bend(180, 0, 2 * CHORDS)];
  return [bend(90, 0, CHORDS), bend(90, stations.length - 1 - CHORDS, CHORDS)];
}
