/**
 * The one table from what is wanted to what makes it, for the browser and the command line alike. What is heavy is loaded when
 * it is first asked for.
 */
import { unwatched, type Going } from '../../drawing/going.ts';
import type { Derived } from '../../core/derive.ts';
import type { Forecast } from '../../core/forecast/types.ts';
import type { GetSolver, SectionPlan } from '../../core/stock/of-job.ts';
import type { Product } from './catalogue.ts';
import type { Fonts } from '../../drawing/lettering.ts';
import { plainPrint, type ExportFile, type PrintSettings } from '../shared/files.ts';
import type { TextFile } from '../shared/text.ts';
import type { Kernel } from '../solids/kernel.ts';
import type { LayoutName } from '../../core/survey/spots.ts';
import type { Surface } from '../../core/cope/wrap.ts';

/** What the makers need beside the job, got where the program runs: files of the build there, of the packages here. */
export interface Supplies {
  fonts(): Promise<Fonts>;
  kernel(): Promise<Kernel>;
  /** Asked for only where a cutting plan is not proven without. */
  solver: GetSolver;
}

export interface Setting {
  readonly print: PrintSettings;
  /** What the flat patterns are for: the outer surface, or a wall cut square to it. */
  readonly surface: Surface;
  /** Whether sheets and fabrication file say how the joints will fit: that takes a second or more. */
  readonly forecast: boolean;
  /** Of which cage the places are that the measuring sheet asks for; absent: as the job means it. */
  readonly layout?: LayoutName;
  /** The photos of the job by their sums, as far as they are there. Absent: none is. */
  readonly photos?: ReadonlyMap<string, Uint8Array>;
}

export const plainSetting: Setting = { print: plainPrint, surface: 'outer', forecast: false };

type Maker = (
  derived: Derived,
  setting: Setting,
  supplies: Supplies,
  going: Going,
) => Promise<ExportFile | readonly ExportFile[]>;

const table =
  (fileName: string): Maker =>
  async (derived) =>
    asBytes((await import('../tables/csv.ts')).csvFiles(derived).find((file) => file.fileName === fileName)!);

/** Several files have them, and they are made once. Null: the job has no sticks. */
const planned = new WeakMap<Derived, Promise<readonly SectionPlan[]>>();

async function plansFor(derived: Derived, { solver }: Supplies): Promise<readonly SectionPlan[] | null> {
  if (derived.job.stickSorts.length === 0) return null;
  const plans = planned.get(derived) ?? (await import('../../core/stock/of-job.ts')).plansOf(derived, solver);
  planned.set(derived, plans);
  return plans;
}

/** Two files have it, and it is worked out once. */
const forecasts = new WeakMap<Derived, Forecast>();

async function forecastOf(derived: Derived, { forecast }: Setting): Promise<Forecast | null> {
  if (!forecast) return null;
  const known = forecasts.get(derived) ?? (await import('../../core/forecast/forecast.ts')).forecastFit(derived);
  forecasts.set(derived, known);
  return known;
}

const MAKERS: Readonly<Record<Product, Maker>> = {
  'fabrication.json': async (derived, setting, supplies) =>
    asBytes(
      (await import('../tables/fabrication.ts')).fabricationFile(derived, {
        forecast: await forecastOf(derived, setting),
        plans: await plansFor(derived, supplies),
      }),
    ),
  'sheets.pdf': async (derived, setting, supplies, going) =>
    (await import('../sheets/sheets.ts')).sheetsPdf(
      derived,
      await supplies.fonts(),
      setting.print,
      going,
      await forecastOf(derived, setting),
    ),
  'wraps.pdf': async (derived, { print, surface }, supplies, going) =>
    (await import('../wraps/wraps-pdf.ts')).wrapsPdf(derived, await supplies.fonts(), print, going, surface),
  'layout.pdf': async (derived, { print }, supplies, going) =>
    (await import('../layout/layout-pdf.ts')).layoutPdf(derived, await supplies.fonts(), print, going),
  'tack-up.pdf': async (derived, { print }, supplies, going) =>
    (await import('../sheets/tack-up-pdf.ts')).tackUpPdf(derived, await supplies.fonts(), print, going),
  'measuring.pdf': async (derived, { print, layout }, supplies, going) =>
    (await import('../sheets/measuring-pdf.ts')).measuringPdf(derived, await supplies.fonts(), print, going, layout),
  'cut-list.pdf': async (derived, { print }, supplies, going) =>
    (await import('../sheets/cut-list-pdf.ts')).cutListPdf(
      derived,
      (await plansFor(derived, supplies)) ?? [],
      await supplies.fonts(),
      print,
      going,
    ),
  'feet.pdf': async (derived, { print }, supplies, going) =>
    (await import('../feet/feet-pdf.ts')).feetPdf(derived, await supplies.fonts(), print, going),
  'tubes.csv': table('tubes.csv'),
  'bends.csv': table('bends.csv'),
  'xyz.csv': table('xyz.csv'),
  'copes.csv': table('copes.csv'),
  'stock.csv': async (derived, _, supplies) =>
    asBytes((await import('../tables/csv.ts')).stockCsv(derived, (await plansFor(derived, supplies)) ?? [])),
  'wraps.dxf': async (derived, { surface }, _, going) =>
    (await import('../wraps/wraps.ts')).wrapsDxf(derived, going, surface),
  'layout.dxf': async (derived, _, __, going) => (await import('../layout/layout.ts')).layoutDxf(derived, going),
  'feet.dxf': async (derived, _, __, going) => (await import('../feet/patterns.ts')).feetDxf(derived, going),
  'gussets.dxf': async (derived, _, __, going) => (await import('../gussets/patterns.ts')).gussetsDxf(derived, going),
  feet: async (derived, _, __, going) => (await import('../feet/patterns.ts')).feetSvg(derived, going),
  wraps: async (derived, { surface }, _, going) =>
    (await import('../wraps/wraps.ts')).wrapsSvg(derived, going, surface),
  'cage.step': async (derived, _, supplies, going) =>
    (await import('../solids/step.ts')).stepFile(derived, await supplies.kernel(), going),
  'cage.glb': async (derived, _, __, going) => (await import('../mesh/glb.ts')).glbFile(derived, going),
  'cage.stl': async (derived, _, __, going) => (await import('../mesh/stl.ts')).stlFile(derived, going),
  'dossier.pdf': async (derived, { print, photos = new Map() }, supplies, going) =>
    (await import('../dossier/dossier.ts')).dossierPdf(derived, await supplies.fonts(), print, going, photos),
  'quote.pdf': async (derived, { print }, supplies, going) =>
    (await import('../quote/customer-pdf.ts')).customerPdf(
      derived,
      (await plansFor(derived, supplies)) ?? [],
      await supplies.fonts(),
      print,
      going,
    ),
  'quote-shop.pdf': async (derived, { print }, supplies, going) =>
    (await import('../quote/shop-pdf.ts')).shopPdf(
      derived,
      (await plansFor(derived, supplies)) ?? [],
      await supplies.fonts(),
      print,
      going,
    ),
  'order.pdf': async (derived, { print }, supplies, going) =>
    (await import('../quote/order-pdf.ts')).orderPdf(
      derived,
      (await plansFor(derived, supplies)) ?? [],
      await supplies.fonts(),
      print,
      going,
    ),
  'order.csv': async (derived, _, supplies) =>
    asBytes((await import('../tables/csv.ts')).orderCsv(derived, (await plansFor(derived, supplies)) ?? [])),
};

/** Called with the product that is being made; see Going. */
export type Making = (product: Product, done: number, total: number) => Promise<void>;

/** Makes the products one after the other. Rejects with what a maker rejects with, and with what `making` does. */
export async function makeFiles(
  derived: Derived,
  products: readonly Product[],
  setting: Setting,
  supplies: Supplies,
  making: Making = () => unwatched(0, 0),
): Promise<readonly ExportFile[]> {
  const files: ExportFile[] = [];
  for (const product of products) {
    const going: Going = (done, total) => making(product, done, total);
    await going(0, 1);
    files.push(...[await MAKERS[product](derived, setting, supplies, going)].flat());
  }
  return files;
}

const asBytes = ({ fileName, text }: TextFile): ExportFile => ({
  fileName,
  bytes: new TextEncoder().encode(text),
});
