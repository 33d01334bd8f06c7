/** tack-up.pdf: what sets the cage up by tape before it is welded; it lies where the welding is done, the sheets at saw and bender. */
import type { Derived } from '../../core/derive.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { contextOf } from './context.ts';
import { tackUpSheets } from './tack-up.ts';

/** A job without a tube has one page that says so. `going` is awaited before and after; if it rejects, so does this. */
export async function tackUpPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> {
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  return {
    fileName: 'tack-up.pdf',
    bytes: await writePdf(derived.job.name, letters, [() => tackUpSheets(context)], going),
  };
}
