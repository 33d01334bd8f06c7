/** measuring.pdf: what is taken to the car to be filled in; it lies on the roof of the car, the sheets at saw and bender. */
import type { Derived } from '../../core/derive.ts';
import type { LayoutName } from '../../core/survey/spots.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { contextOf } from './context.ts';
import { measuringSheets } from './measuring.ts';

/** `layout` absent: what the job means. A job of tubes without measured points has one page that says so. `going` is awaited before and after; if it rejects, so does this. */
export async function measuringPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
  layout?: LayoutName,
): Promise<ExportFile> {
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  return {
    fileName: 'measuring.pdf',
    bytes: await writePdf(derived.job.name, letters, [() => measuringSheets(context, layout)], going),
  };
}
