/** Words in the name of a measured point that tell where on the car it is: a person names points as they like, and may say otherwise. */

/** At the windscreen's pillar, where the door begins. */
export const AT_A_PILLAR = /\ba[- ]?pillar|front/u;
/** At the pillar behind the door, where a main hoop stands. */
export const AT_B_PILLAR = /\bb[- ]?pillar|hoop/u;

/** All of them are in the name of a windscreen's upper corner, and none of BEHIND. */
export const SCREEN_TOP = [/wind ?s(?:creen|hield)/u, /top|upper/u] as const;
/** The same of its lower corner. */
export const SCREEN_FOOT = [SCREEN_TOP[0], /lower|foot|bottom/u] as const;

/** The rear window is no windscreen, though it may be called a rear one. */
export const BEHIND = /rear|back/u;

/** Whether every one of the words is in the name, and `not` is not. */
export function tells(name: string, words: readonly RegExp[], not?: RegExp): boolean {
  const text = name.toLowerCase();
  return words.every((word) => word.test(text)) && not?.test(text) !== true;
}
