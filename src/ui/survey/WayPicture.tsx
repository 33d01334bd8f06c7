/** What is measured, as a small picture: the points as dots, what is read as a line between ticks. */
import type { ReactNode } from 'react';
import type { Way } from '../../core/survey/ways.ts';

export const WayPicture = ({ way }: { way: Way | 'apart' }): ReactNode => (
  <svg className="way-picture" viewBox="0 0 32 24" aria-hidden="true" focusable="false">
    {PICTURES[way]}
  </svg>
);

const dot = (x: number, y: number): ReactNode => <circle cx={x} cy={y} r="2.4" className="way-dot" />;
const base = (d: string): ReactNode => <path d={d} className="way-base" />;
const read = (d: string): ReactNode => <path d={d} className="way-read" />;

const PICTURES: Readonly<Record<Way | 'apart', ReactNode>> = {
  distance: (
    <>
      {read('M5 19 27 5')}
      {dot(5, 19)}
      {dot(27, 5)}
    </>
  ),
  height: (
    <>
      {base('M4 21H28')}
      {read('M16 21V6')}
      {dot(16, 5)}
    </>
  ),
  offset: (
    <>
      {base('M26 3V21')}
      {read('M26 12H8')}
      {dot(7, 12)}
    </>
  ),
  station: (
    <>
      {base('M5 3V21')}
      {read('M5 17H25')}
      {dot(26, 17)}
      {base('M26 14V7')}
    </>
  ),
  width: (
    <>
      {base('M16 3V21')}
      {read('M5 12H27')}
      {dot(5, 12)}
      {dot(27, 12)}
    </>
  ),
  level: (
    <>
      {base('M7 18H27')}
      {read('M25 18V7')}
      {dot(7, 18)}
      {dot(25, 6)}
    </>
  ),
  slope: (
    <>
      {base('M5 19H28')}
      {base('M5 19 27 7')}
      {read('M17 19A12 12 0 0 0 15.5 13.3')}
      {dot(5, 19)}
      {dot(27, 7)}
    </>
  ),
  apart: (
    <>
      {base('M7 18V4M25 8V4')}
      {read('M7 5H25')}
      {dot(7, 18)}
      {dot(25, 9)}
    </>
  ),
  plumb: (
    <>
      {read('M16 4V19')}
      {dot(16, 4)}
      {dot(16, 20)}
      {base('M9 20H12M20 20H23')}
    </>
  ),
};
