/** Days, as they stand in files and on paper. */

/** The day where the shop is, by its own clock: "2026-03-02" (ISO 8601). */
export const dayOf = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-');

/** Whether it is written so; of the days of its month no more than that there are two figures. */
export const isDay = (text: string): boolean => /^\d{4}-\d\d-\d\d$/u.test(text);
