/** Under this, mm, the tape does not show it, and nothing is found. */
export const UNSEEN = 0.5;
