/**
 * sheets.pdf: a cover, the forecast of fit where it is asked for, then a sheet a tube, in build order, two straight ones on a page where they fit. Black and white, for A4 or Letter, in the job's unit. Everything is
 * drawn from what was derived; the letters are the caller's, since nothing is read here.
 */
import type { Going } from '../../drawing/going.ts';
import type { Forecast } from '../../core/forecast/types.ts';
import type { Derived } from '../../core/derive.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { contextOf } from './context.ts';
import { coverSheets } from './cover.ts';
import { forecastSheets } from './forecast.ts';
import { liesOf } from './locator.ts';
import { tubeSheets } from './tube.ts';

/** `going` is awaited before the cover, before each tube and at the end; if it rejects, so does this. */
export async function sheetsPdf(
  derived: Derived,
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
  forecast: Forecast | null = null,
): Promise<ExportFile> {
  const letters = lettering(fonts);
  const context = contextOf(derived, letters, settings);
  const views = liesOf(derived.tubes);
  const groups = [
    () => coverSheets(context),
    ...(forecast === null ? [] : [() => forecastSheets(context, forecast)]),
    ...tubeSheets(context, views),
  ];
  return { fileName: 'sheets.pdf', bytes: await writePdf(derived.job.name, letters, groups, going) };
}
