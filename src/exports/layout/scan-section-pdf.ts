/**
 * Where a scan is cut by the plane of a flat tube, at full size round that tube: to be laid on the floor under the bent tube, and to see what is left between
 * steel and body. On sheets to be joined, as layout.pdf is.
 */
import { WHO_DECIDES } from '../../core/words/cautions.ts';
import { numbered } from '../../core/words/ends.ts';
import type { Derived } from '../../core/derive.ts';
import { FIRST_MARKING } from '../../core/job/kinds/marking.ts';
import { shownName } from '../../core/job/shown.ts';
import { layFlat, type FlatPlace } from '../../core/run/lay-flat.ts';
import { clipped } from '../../drawing/clip.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import type { Going } from '../../drawing/going.ts';
import { lettering, type Fonts } from '../../drawing/lettering.ts';
import { writePdf } from '../../drawing/pdf.ts';
import { cross, line } from '../../drawing/strokes.ts';
import type { Line, Pen, Sheet } from '../../drawing/types.ts';
import type { ExportFile, PrintSettings } from '../shared/files.ts';
import { pagesOn, spaceOn } from '../shared/paper.ts';
import { layoutDrawing } from './layout-drawing.ts';
import { JOINED, tilePages } from './layout-pages.ts';

/** What is cut of one scan, in the tube's plane as layFlat lays it. */
export interface ScanCut {
  readonly name: string;
  /** mm: the scan's. */
  readonly accuracy: number;
  readonly curves: readonly (readonly FlatPlace[])[];
  /** Of a cloud. */
  readonly dots: readonly FlatPlace[];
}

/** mm round the tube's outside that are drawn of the scan: beyond, it would only cost paper. */
const ROUND = 150;

const SCAN: Pen = { width: 0.5, grey: 0.4 };
/** mm of each arm. */
const DOT = 1;

/** Rejects with a sentence where the tube is not there, or does not lie flat. */
export async function scanSectionPdf(
  derived: Derived,
  tubeId: string,
  cuts: readonly ScanCut[],
  fonts: Fonts,
  settings: PrintSettings,
  going: Going,
): Promise<ExportFile> {
  const { job, findings, byId } = derived;
  const tube = byId.get(tubeId);
  const flat = tube === undefined ? null : layFlat(tube);
  if (tube === undefined || flat === null) throw new Error('The tube does not lie in one plane.');
  const { left, right, bottom, top } = flat.outside;
  const room = { left: left - ROUND, right: right + ROUND, bottom: bottom - ROUND, top: top + ROUND };
  const lines = cuts.flatMap(({ curves, dots }): Line[] => [
    ...curves.map((places) => line('SCAN', places, SCAN)),
    ...dots.flatMap((at) => cross('SCAN', at, DOT)),
  ]);
  const { fine } = job.marking ?? FIRST_MARKING;
  const drawing = layoutDrawing(tube, flat, findings, job.lengthUnit, fine, false, clipped(lines, room));
  const face = lettering(fonts);
  const names = cuts.map(({ name, accuracy }) => `${shownName(name)}, to ${lengthFigure(accuracy, job.lengthUnit)}`);
  const how = `${JOINED} Grey is where the tube's plane cuts the scan (${names.join('; ')}), up to ${ROUND} mm round the tube. Check it with a tape on the car.`;
  const pages = tilePages(face, drawing, spaceOn(settings));
  const page = pagesOn(settings, face, how, WHO_DECIDES);
  const groups = pages.map(({ name, marks }, i) => (): Sheet[] => {
    const title = `Scan in the plane of ${name} · ${job.name}`;
    return [page({ title, count: `page ${i + 1} of ${pages.length}` }, marks())];
  });
  const bytes = await writePdf(`Scan in the plane of ${numbered(tube)}`, face, groups, going);
  return { fileName: 'scan-section.pdf', bytes };
}
