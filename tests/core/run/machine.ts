/**
 * A tube bent on a machine made of nothing but rigid motions: laid along x with the end in front towards -x, turned as it is
 * given, and what is behind the bend swung round. Every bend is made in the level plane, about +z. What comes out is where each
 * end is as seen from the other.
 */
import type { TapeStep } from '../../../src/core/marks/tape.ts';
import type { EndFrame } from './bent.ts';

type V = readonly [number, number, number];
const plus = (a: V, b: V, k = 1): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const inner = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: V, b: V): V => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A place on the stock: how far from node A, where it is now, the direction A to B and a line drawn along the tube. */
interface Station {
  readonly s: number;
  readonly p: V;
  readonly t: V;
  readonly line: V;
  /** Of the bend that ends or begins here, for travel from A to B. */
  normal?: V;
}

type Motion = (v: V) => V;

/** Takes the axes (t, line, t x line) at `from` to the axes at `to`; directions and places. */
function motionBetween(from: Station, to: { p: V; t: V; line: V }): { place: Motion; direction: Motion } {
  const side = outer(from.t, from.line);
  const newSide = outer(to.t, to.line);
  const direction: Motion = (v) =>
    plus(plus(plus([0, 0, 0], to.t, inner(v, from.t)), to.line, inner(v, from.line)), newSide, inner(v, side));
  return { direction, place: (p) => plus(to.p, direction(plus(p, from.p, -1))) };
}

const moved = (station: Station, { place, direction }: { place: Motion; direction: Motion }): Station => ({
  s: station.s,
  p: place(station.p),
  t: direction(station.t),
  line: direction(station.line),
  ...(station.normal && { normal: direction(station.normal) }),
});

export interface Bending extends Pick<TapeStep, 'bend' | 'front' | 'rotationFrom'> {
  /** Of the bend's start, the tangent nearer the end in front; mm from node A. */
  readonly start: number;
  readonly angle: number;
  readonly radius: number;
  /** How far the tube is turned, right-hand about +x, from where bend `rotationFrom` lies as if just made. */
  readonly turnAboutX: number;
}

export function bendOnMachine(length: number, steps: readonly Bending[]): { A: EndFrame; B: EndFrame } {
  const tangents = steps.map(({ start, angle, radius, front, bend }) => {
    const rear = start + (front === 'A' ? 1 : -1) * angle * radius;
    return { bend, near: Math.min(start, rear), far: Math.max(start, rear) };
  });
  const places = [0, length, ...tangents.flatMap(({ near, far }) => [near, far])].toSorted((a, b) => a - b);
  let tube: Station[] = places.map((s) => ({ s, p: [s, 0, 0], t: [1, 0, 0], line: [0, 0, 1] }));
  const at = (s: number) => tube.find((station) => station.s === s)!;

  for (const { bend, front, start, angle, radius, rotationFrom, turnAboutX } of steps) {
    const { near, far } = tangents.find((each) => each.bend === bend)!;
    const forward = front === 'A';
    const [first, rear] = forward ? [near, far] : [far, near];
    const here = at(first);
    expectNear(first, start);
    // Away from the end in front runs along +x.
    let line: V = [0, 0, 1];
    if (rotationFrom !== null) {
      const other = tangents.find((each) => each.bend === rotationFrom)!;
      const normal = at(rotationFrom < bend ? other.far : other.near).normal!;
      const asFed: V = forward ? normal : [-normal[0], -normal[1], -normal[2]];
      // Where the line on the tube stands when asFed points up, the tube along x; then it is turned.
      const away: V = forward ? here.t : [-here.t[0], -here.t[1], -here.t[2]];
      const lineFromNormal = Math.atan2(inner(outer(asFed, here.line), away), inner(asFed, here.line));
      const turned = lineFromNormal + turnAboutX;
      line = [0, -Math.sin(turned), Math.cos(turned)];
    }
    const laid = motionBetween(here, { p: [0, 0, 0], t: forward ? [1, 0, 0] : [-1, 0, 0], line });
    tube = tube.map((station) => moved(station, laid));
    at(first).normal = [0, 0, forward ? 1 : -1];
    at(rear).normal = [0, 0, forward ? 1 : -1];
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const swing: Motion = ([x, y, z]) => [c * x - s * y, s * x + c * y, z];
    const arc = radius * angle;
    const swung = {
      direction: swing,
      place: (p: V): V => plus([radius * s, radius * (1 - c), 0], swing(plus(p, [arc, 0, 0], -1))),
    };
    tube = tube.map((station) =>
      (forward ? station.s >= far - 1e-9 : station.s <= near + 1e-9) ? moved(station, swung) : station,
    );
  }
  const [a, b] = [at(0), at(length)];
  const byPlace = tangents.toSorted((one, other) => one.near - other.near);
  return {
    A: { position: a.p, direction: a.t, normal: at(byPlace[0]!.near).normal! },
    B: { position: b.p, direction: [-b.t[0], -b.t[1], -b.t[2]], normal: at(byPlace.at(-1)!.far).normal! },
  };
}

function expectNear(a: number, b: number): void {
  if (Math.abs(a - b) > 1e-9) throw new Error(`${a} is not ${b}`);
}
