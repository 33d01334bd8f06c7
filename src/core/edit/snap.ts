/** The multiple of `step` nearest to the value; the value itself where the step is 0. */
export const snap = (value: number, step: number): number => (step > 0 ? Math.round(value / step) * step + 0 : value);
