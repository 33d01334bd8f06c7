/** A job whose plan the own search does not prove: eighty brackets of eight lengths, made of sticks of four sorts. */

/** Lengths in mm, and how many of each. */
export const BRACKETS = [
  [1172.8, 10],
  [1739.2, 17],
  [1549, 6],
  [2615.9, 10],
  [1726.8, 15],
  [1618.5, 7],
  [1846, 10],
  [2320.2, 5],
] as const;

/** By the own search these cost more; the solver comes to this, and proves it. */
export const BRACKETS_COST = 1459;

export const BRACKET_STICKS = [
  { id: 'a', length: 6096, cost: 61 },
  { id: 'b', length: 7315.2, cost: 75 },
  { id: 'c', length: 3048, cost: 33, count: 3 },
  { id: 'd', length: 1400, cost: 0, count: 1 },
] as const;

export const BRACKET_SAWING = { kerf: 2.5, squareOff: 10 } as const;

/** The text of a job with them beside its own tubes, which have no sticks. */
export function cheaperBySolver(text: string): string {
  const job = JSON.parse(text) as { readonly sections: readonly object[] };
  const section = { id: 'bracket', name: 'Brackets', outerDiameter: 25.4, wall: 2.1, material: 'DOM 1020' };
  const sticks = BRACKET_STICKS.map((stick) => ({ ...stick, section: section.id }));
  const spares = BRACKETS.map(([length, count]) => ({ section: section.id, length, count }));
  return JSON.stringify({ ...job, sections: [...job.sections, section], stock: { ...BRACKET_SAWING, sticks, spares } });
}
