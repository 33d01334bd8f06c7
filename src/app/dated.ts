/** A moment as a person reads it: day and minute, in the words of their own language. */
export const dated = (time: number): string =>
  new Date(time).toLocaleString(undefined, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
  });
