/** cut-list.pdf: what lies at the saw. */
import type { Derived } from '../../core/derive.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { contextOf } from './context.ts';
import { cutListSheets } from './cut-list.ts';

/** A job with nothing to cut has one page that says so. `going` is awaited before and after; if it rejects, so does this. */
export async function cutListPdf(
  derived: Derived,
  plans: readonly SectionPlan[],
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> {
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  return {
    fileName: 'cut-list.pdf',
    bytes: await writePdf(derived.job.name, letters, [() => cutListSheets(context, plans)], going),
  };
}
