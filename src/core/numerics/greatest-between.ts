/** The greatest value of a function of one number in an interval. */

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Of a function that rises to it and falls from it between these, by golden section (Kiefer 1953) to `within` of its place. */
export function greatestBetween(height: (at: number) => number, from: number, to: number, within: number): number {
  let [low, high] = [from, to];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [height(a), height(b)];
  while (high - low > within) {
    if (atA > atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = height(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = height(b);
    }
  }
  return Math.max(atA, atB);
}
