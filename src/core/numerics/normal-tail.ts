/** The far tail of the normal distribution. */

/** Terms of the continued fraction: from 2 deviations on they leave less than 1e-12 of the tail. */
const TERMS = 60;

/** The chance that a normal number of deviation 1 is greater than z, z from 2 on; relative error below 1e-11. Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.14. */
export function normalTail(z: number): number {
  let below = z;
  for (let term = TERMS; term >= 1; term--) below = z + term / below;
  return density(z) / below;
}

/** The z that a normal number is greater than with this chance, from 1e-300 to 0.02; Newton's steps on the logarithm of the tail, which is nearly a parabola. */
export function tailQuantile(chance: number): number {
  let z = Math.sqrt(-2 * Math.log(chance));
  for (let step = 0; step < 20; step++) {
    const tail = normalTail(z);
    z += (Math.log(tail) - Math.log(chance)) * (tail / density(z));
  }
  return z;
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
