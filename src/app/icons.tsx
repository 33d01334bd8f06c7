/** Line drawings for the band's keys, on a 20 x 20 field in the text's colour. Always beside or under a spoken name. */
import type { ReactNode } from 'react';

const drawing = (lines: ReactNode): ReactNode => (
  <svg
    className="icon"
    viewBox="0 0 20 20"
    width="20"
    height="20"
    fill="none"
    stroke="currentColor"
    strokeWidth="1.75"
    aria-hidden="true"
  >
    {lines}
  </svg>
);

export const undoIcon = drawing(<path d="M3 8h9a5 5 0 0 1 0 10H8M7 3.5 2.7 8 7 12.5" />);
export const redoIcon = drawing(<path d="M17 8H8a5 5 0 0 0 0 10h4M13 3.5 17.3 8 13 12.5" />);
export const openIcon = drawing(<path d="M10 13V2.5M5.5 7 10 2.5 14.5 7M2.5 12v5.5h15V12" />);
export const saveIcon = drawing(<path d="M10 2.5V13M5.5 8.5 10 13l4.5-4.5M2.5 12v5.5h15V12" />);
export const menuIcon = drawing(<path d="M2.5 5h15M2.5 10h15M2.5 15h15" />);
export const closeIcon = drawing(<path d="m4 4 12 12M16 4 4 16" />);

export const savedIcon = drawing(<path d="m4 11 4 4 8-10" />);
export const savingIcon = drawing(<path d="M3.5 10h2M9 10h2M14.5 10h2" />);

/** The program's sign: a cope, unrolled flat, scribed into layout dye. */
export const sign = (
  <svg className="sign" viewBox="0 0 44 28" width="44" height="28" aria-hidden="true">
    <rect className="sign-dye" width="44" height="28" />
    <path className="sign-rule" d="M11.5 0v28M22 0v28M32.5 0v28" />
    <path className="sign-scribe" d="M0 8c5 0 6.5 13 11.5 13S17.5 8 22 8s5.5 13 10.5 13S39 8 44 8" />
  </svg>
);
