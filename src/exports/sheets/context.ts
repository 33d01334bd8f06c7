/** What every part of a sheet is drawn from. */
import type { Derived } from '../../core/derive.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import type { PrintSettings } from '../shared/files.ts';
import { contentWidth, paperOf, type Paper } from './page.ts';

export interface Context {
  readonly derived: Derived;
  readonly unit: LengthUnit;
  readonly letters: Lettering;
  readonly paper: Paper;
  /** Width of the page between its margins. */
  readonly width: number;
  /** When it is printed, as 2026-03-02; absent: nobody says. */
  readonly day?: string;
  /** Of the page that prints it; absent: there is none. */
  readonly address?: string;
}

export function contextOf(derived: Derived, letters: Lettering, settings: PrintSettings): Context {
  const paper = paperOf(settings);
  return {
    derived,
    unit: derived.job.lengthUnit,
    letters,
    paper,
    width: contentWidth(paper),
    ...(settings.day !== undefined && { day: settings.day }),
    ...(settings.address !== undefined && { address: settings.address }),
  };
}
