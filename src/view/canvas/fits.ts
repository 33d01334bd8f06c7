/** What the two fits are called, on their buttons and in the list of keys. */
export const FIT_ALL = 'Fit the whole frame';
export const FIT_CHOSEN = 'Fit what is selected';
