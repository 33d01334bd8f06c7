/**
 * The place of a piece of a path nearest to a point, in closed form and in plain numbers that are lent: a search asks this ten thousand
 * times. Who keeps the answer asks nearestOnPiece (path.ts).
 */
import type { Piece } from './path.ts';
import type { Vec3 } from './vector.ts';

/** The last answer. */
export const foot = {
  /** mm from the point, and developed length along the path. */
  apart: 0,
  at: 0,
  /** The place itself, and the unit tangent there. */
  x: 0,
  y: 0,
  z: 0,
  tx: 0,
  ty: 0,
  tz: 0,
};

/** Sets `foot` for the point p. */
export function setFoot(piece: Piece, p: Vec3): void {
  if (piece.kind === 'line') {
    const { from, startTangent: t } = piece;
    const along = (p[0] - from[0]) * t[0] + (p[1] - from[1]) * t[1] + (p[2] - from[2]) * t[2];
    setOnLine(p, from, t, along < 0 ? 0 : along > piece.length ? piece.length : along, piece.at);
    return;
  }
  const { centre: o, from, startTangent: t, radius } = piece;
  const px = p[0] - o[0];
  const py = p[1] - o[1];
  const pz = p[2] - o[2];
  const cx = (from[0] - o[0]) / radius;
  const cy = (from[1] - o[1]) / radius;
  const cz = (from[2] - o[2]) / radius;
  const x = px * cx + py * cy + pz * cz;
  const y = px * t[0] + py * t[1] + pz * t[2];
  const turned = Math.atan2(y, x);
  if (turned < 0 || turned > piece.angle) {
    const { to, endTangent } = piece;
    if (squareOf(p, from) <= squareOf(p, to)) setOnLine(p, from, t, 0, piece.at);
    else setOnLine(p, to, endTangent, 0, piece.at + piece.length);
    return;
  }
  const aside = Math.sqrt(x * x + y * y);
  // On the ring's own axis all places are as near; its start is taken.
  const c = aside > 0 ? x / aside : 1;
  const s = aside > 0 ? y / aside : 0;
  foot.at = piece.at + turned * radius;
  foot.x = o[0] + radius * (c * cx + s * t[0]);
  foot.y = o[1] + radius * (c * cy + s * t[1]);
  foot.z = o[2] + radius * (c * cz + s * t[2]);
  foot.tx = c * t[0] - s * cx;
  foot.ty = c * t[1] - s * cy;
  foot.tz = c * t[2] - s * cz;
  setApart(p);
}

function setOnLine(p: Vec3, from: Vec3, t: Vec3, along: number, at: number): void {
  foot.at = at + along;
  foot.x = from[0] + along * t[0];
  foot.y = from[1] + along * t[1];
  foot.z = from[2] + along * t[2];
  foot.tx = t[0];
  foot.ty = t[1];
  foot.tz = t[2];
  setApart(p);
}

function setApart(p: Vec3): void {
  const x = p[0] - foot.x;
  const y = p[1] - foot.y;
  const z = p[2] - foot.z;
  foot.apart = Math.sqrt(x * x + y * y + z * z);
}

function squareOf(p: Vec3, q: Vec3): number {
  const x = p[0] - q[0];
  const y = p[1] - q[1];
  const z = p[2] - q[2];
  return x * x + y * y + z * z;
}

/** Sets `foot` for the point p and the nearest of the pieces. */
export function setFootOf(pieces: readonly Piece[], p: Vec3): void {
  setFoot(pieces[0]!, p);
  if (pieces.length === 1) return;
  let nearest = 0;
  let least = foot.apart;
  for (let i = 1; i < pieces.length; i++) {
    setFoot(pieces[i]!, p);
    if (foot.apart >= least) continue;
    least = foot.apart;
    nearest = i;
  }
  if (nearest < pieces.length - 1) setFoot(pieces[nearest]!, p);
}

/** The least distance of p from any of the pieces, mm. */
export function distanceTo(pieces: readonly Piece[], p: Vec3): number {
  let least = Infinity;
  for (const piece of pieces) {
    setFoot(piece, p);
    if (foot.apart < least) least = foot.apart;
  }
  return least;
}
