/**
 * The one rounding of money, and of all that a quote multiplies it with: hours, metres, kilograms. Each figure is rounded to two decimals where it is shown, and what is reckoned on goes by what is
 * shown: whoever adds up the page with a pocket calculator comes to its total.
 */

/** To two decimals, half away from zero; of what stands for 1.005 and is a digit less in the machine, too. */
export const rounded = (value: number): number =>
  (Math.sign(value) * Math.round(Number((Math.abs(value) * 100).toPrecision(15)))) / 100;

/** Of figures that are rounded already. */
export const summed = (figures: readonly number[]): number => rounded(figures.reduce((sum, figure) => sum + figure, 0));

/** Of so many percent. */
export const shareOf = (amount: number, percent: number): number => rounded((amount * percent) / 100);
