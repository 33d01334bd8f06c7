/**
 * Tables for a spreadsheet, RFC 4180 (comma, CRLF, UTF-8). Millimetres, degrees and kilograms at full precision, the
 * unit in each heading. In a job shown in inches every length has a second column, in inches to the fourth decimal, for
 * reading: what is exact stands in millimetres.
 *
 * A spreadsheet runs a cell that begins like a formula, and a job file may come from a stranger: such text gets an
 * apostrophe in front. All text is quoted, so that a program which splits at semicolons finds no formula within a name
 * either. Numbers stay bare numbers, negative ones too.
 */
import { heatOf } from '../../core/stock/heat.ts';
import papaparse from 'papaparse';
import { errorsOf } from '../../core/checks/faults.ts';
import type { Derived } from '../../core/derive.ts';
import { angleBetween, signedAngle, toDegrees } from '../../core/geometry/angle.ts';
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';
import { dot, length as length3, rejectFrom, scale } from '../../core/geometry/vector.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { tapeList } from '../../core/marks/tape.ts';
import { beyondNode } from '../../core/solve/amount.ts';
import { feedOf, type Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { MM_PER_INCH, type LengthUnit } from '../../core/units/length.ts';
import { fabrication, type FabricationCut, type FabricationEnd, type FabricationTube } from './fabrication.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { ORDER_COLUMNS, orderRows } from './order-csv.ts';
import { STOCK_COLUMNS, stockRows } from './stock-csv.ts';
import { length, other, type Cell, type Column } from './columns.ts';
import type { TextFile } from '../shared/text.ts';

/** Text that a spreadsheet takes for a formula: = + - @ (full-width ones too), after blanks, characters that are not seen, or none. */
const FORMULA = /^[\s\p{Cf}]*[=+\-@＝＋－＠]/u;

/** tubes.csv, bends.csv, xyz.csv and copes.csv. */
export function csvFiles(derived: Derived): readonly TextFile[] {
  const { job } = derived;
  const { tubes } = fabrication(derived);
  return [tubesCsv(derived, tubes), bendsCsv(derived, tubes), xyzCsv(job, tubes), copesCsv(job, tubes)];
}

/** stock.csv: a row a part, stick by stick. */
export const stockCsv = (derived: Derived, plans: readonly SectionPlan[]): TextFile =>
  table('stock.csv', derived.job, stockRows(derived, plans), STOCK_COLUMNS);

/** order.csv: a row a thing to get. */
export const orderCsv = (derived: Derived, plans: readonly PlanOf[]): TextFile =>
  table('order.csv', derived.job, orderRows(derived, plans), ORDER_COLUMNS);

/** One row a tube. */
function tubesCsv(derived: Derived, tubes: readonly FabricationTube[]): TextFile {
  const { job, byId, findings } = derived;
  const gripOf = ({ id }: FabricationTube) => feedOf(job, byId.get(id)!).grip;
  const sections = new Map(job.sections.map((section) => [section.id, section]));
  const sectionOf = (tube: FabricationTube) => sections.get(tube.section)!;
  return table('tubes.csv', job, tubes, [
    other('number', (tube) => tube.number),
    other('id', (tube) => tube.id),
    other('name', (tube) => tube.name),
    other('role', (tube) => tube.role),
    other('section', (tube) => sectionOf(tube).name),
    length('outer_diameter', (tube) => sectionOf(tube).outerDiameter),
    length('wall', (tube) => sectionOf(tube).wall),
    other('material', (tube) => sectionOf(tube).material),
    other('batch', ({ id }) => heatOf(job, byId.get(id)!) ?? null),
    other('die', (tube) => tube.die),
    other('bends', (tube) => tube.bends.length),
    length('cut_to', (tube) => tube.cutLength),
    length('grip_a', (tube) => gripOf(tube)[0]),
    length('grip_b', (tube) => gripOf(tube)[1]),
    length('blank', (tube) => tube.blankLength),
    length('developed', (tube) => tube.developedLength),
    length('sharp_corner', (tube) => tube.sharpCornerLength),
    other('mass_kg', (tube) => tube.mass),
    other('twin_of', (tube) => tube.twinOf),
    other('errors', ({ id }) => errorsOf(findings, id).length),
  ]);
}

interface BendRow {
  readonly tube: FabricationTube;
  readonly at: number;
  readonly clamped: Clamped;
}

/** How a bend is clamped, in the order and with the grip that the tube's sheet has. */
interface Clamped {
  readonly front: 'A' | 'B';
  readonly tapeFrom: Feed['from'];
  /** As the tape shows it, mm. */
  readonly onTape: number;
  readonly fromNodeA: number;
  readonly blankEndToNodeA: number;
}

function clampedOf(job: Job, tube: SolvedTube): readonly Clamped[] {
  const feed = feedOf(job, tube);
  const blankEndToNodeA = beyondNode(tube.ends[0]) + feed.grip[0];
  const byBend = (from: Feed['from']) =>
    tapeList(tube, { ...feed, from, mark: 'clamp' })!.steps.toSorted((one, other) => one.bend - other.bend);
  const [onTape, fromA] = [byBend(feed.from), byBend('A')];
  return onTape.map(({ front, marks }, i) => ({
    front,
    tapeFrom: feed.from,
    onTape: marks[0]!.exact,
    fromNodeA: fromA[i]!.marks[0]!.exact - blankEndToNodeA,
    blankEndToNodeA,
  }));
}

/** The LRA table: one row a bend, in feed order from end A. */
function bendsCsv({ job, byId }: Derived, tubes: readonly FabricationTube[]): TextFile {
  const rows = tubes.flatMap((tube) =>
    clampedOf(job, byId.get(tube.id)!).map((clamped, at): BendRow => ({ tube, at, clamped })),
  );
  const bend = ({ tube, at }: BendRow) => tube.bends[at]!;
  // A table is read by people: what the law asks is left out where the log does not bear it.
  const borne =
    <T>(of: (row: BendRow) => T) =>
    (row: BendRow): T | null =>
      bend(row).pullToIs === 'first-pull' ? null : of(row);
  return table('bends.csv', job, rows, [
    other('number', ({ tube }) => tube.number),
    other('tube', ({ tube }) => tube.id),
    other('name', ({ tube }) => tube.name),
    other('bend', ({ at }) => at + 1),
    length('straight_before', ({ tube, at }) => tube.straights[at]!),
    other('rotation_deg', (row) => bend(row).rotation),
    other('angle_deg', (row) => bend(row).angle),
    other('pull_to_deg', (row) => bend(row).pullTo),
    other('pull_to_is', (row) => bend(row).pullToIs),
    other(
      'machine_angle_deg',
      borne((row) => bend(row).machineAngle),
    ),
    other(
      'machine_angle_from',
      borne((row) => bend(row).machineAngleFrom),
    ),
    other(
      'machine_angle_within_deg',
      borne((row) => bend(row).machineAngleWithin),
    ),
    length('radius', (row) => bend(row).radius),
    length('arc', (row) => bend(row).arc),
    length('blank_end_to_node_a', ({ clamped }) => clamped.blankEndToNodeA),
    length('start_from_node_a', (row) => bend(row).start),
    length('end_from_node_a', (row) => bend(row).end),
    other('end_in_front', ({ clamped }) => clamped.front),
    length('clamp_mark_from_node_a', ({ clamped }) => clamped.fromNodeA),
    other('tape_from', ({ clamped }) => clamped.tapeFrom),
    length('clamp_mark_on_tape', ({ clamped }) => clamped.onTape),
    length('straight_after', ({ tube, at }) => tube.straights[at + 1]!),
  ]);
}

/** The XYZ table: one row a corner point, ends included, in feed order from end A; car axes. */
function xyzCsv(job: Job, tubes: readonly FabricationTube[]): TextFile {
  const rows = tubes.flatMap((tube) => tube.corners.map((corner, at) => ({ tube, corner, at })));
  return table('xyz.csv', job, rows, [
    other('number', ({ tube }) => tube.number),
    other('tube', ({ tube }) => tube.id),
    other('name', ({ tube }) => tube.name),
    other('corner', ({ at }) => at + 1),
    length('x', ({ corner }) => corner[0]),
    length('y', ({ corner }) => corner[1]),
    length('z', ({ corner }) => corner[2]),
  ]);
}

interface CopeRow {
  readonly tube: FabricationTube;
  readonly side: 'A' | 'B';
  readonly end: FabricationEnd;
  readonly cut: FabricationCut | null;
  /** How that cut is made. */
  readonly notch: NonNullable<FabricationEnd['notching']>['notches'][number] | null;
}

/** One row a cut; an end without a cut (plate, square) has one row with the cut's cells empty. */
function copesCsv(job: Job, tubes: readonly FabricationTube[]): TextFile {
  const nameOf = new Map(tubes.map(({ id, name }) => [id, name]));
  const rows = tubes.flatMap((tube) => [...copeRows(tube, 'A', tube.ends[0]), ...copeRows(tube, 'B', tube.ends[1])]);
  return table('copes.csv', job, rows, [
    other('number', ({ tube }) => tube.number),
    other('tube', ({ tube }) => tube.id),
    other('name', ({ tube }) => tube.name),
    other('end', ({ side }) => side),
    other('node', ({ end }) => end.node),
    other('fit', ({ end }) => end.fit),
    other('against', ({ cut }) => cut?.against ?? null),
    other('against_name', ({ cut }) => (cut === null ? null : nameOf.get(cut.against)!)),
    other('included_angle_deg', ({ cut }) => cut?.includedAngle ?? null),
    other('off_square_deg', ({ cut }) => cut?.offSquare ?? null),
    other('clocking_deg', ({ cut }) => cut?.clocking ?? null),
    other('zero_line', ({ tube, side }) => zeroLine(tube, side)),
    other('plate_tilt_deg', ({ end }) => plateCut(end)?.tilt ?? null),
    other('plate_longest_deg', ({ end }) => plateCut(end)?.longest ?? null),
    length('axis_offset', ({ cut }) => cut?.axisOffset ?? null),
    length('saw_diameter', ({ cut }) => cut?.sawDiameter ?? null),
    length('saw_depth', ({ cut }) => cut?.sawDepth ?? null),
    other('on_bend', ({ cut }) => cut?.onBend ?? null),
    length('tip', ({ end }) => end.tip),
    length('throat', ({ end }) => end.throat),
    length('allowance', ({ end }) => end.allowance),
    other('way', ({ notch }) => notch?.way ?? null),
    other('why_wrap', ({ notch }) => notch?.why ?? null),
    length('saw_taken', ({ notch }) => notch?.saw ?? null),
    other('set_off_square_deg', ({ notch }) => notch?.set ?? null),
    length('centre_from_sawn_end', ({ notch }) => notch?.centre ?? null),
    length('saw_travel', ({ notch }) => notch?.depth ?? null),
    length('gap_left', ({ end }) => end.notching?.gap ?? null),
  ]);
}

/** What angles about the tube are counted from, right-hand about the direction into the tube. */
function zeroLine({ bends, ends }: FabricationTube, side: 'A' | 'B'): string {
  if (bends.length > 0) return `inside of bend ${side === 'A' ? 1 : bends.length}`;
  if (ends[0].cuts.length > 0) return 'acute side of the first cut at end A';
  return ends[1].cuts.length > 0 ? 'acute side of the first cut at end B' : 'upper side';
}

/** The plane cut of a plate: how far off square the saw is set, and where about the tube its longest point lies; degrees. */
function plateCut({ plateNormal, direction, reference }: FabricationEnd): { tilt: number; longest: number } | null {
  if (plateNormal === null) return null;
  const inward = scale(plateNormal, dot(plateNormal, direction) < 0 ? -1 : 1);
  const longest = rejectFrom(inward, direction);
  const isSquare = length3(longest) < ANGLE_ROUNDING * length3(inward);
  return {
    tilt: toDegrees(angleBetween(inward, direction)),
    longest: isSquare ? 0 : toDegrees(signedAngle(reference, longest, direction)),
  };
}

function copeRows(tube: FabricationTube, side: 'A' | 'B', end: FabricationEnd): CopeRow[] {
  const cuts = end.cuts.length > 0 ? end.cuts : [null];
  return cuts.map((cut, i) => ({ tube, side, end, cut, notch: end.notching?.notches[i] ?? null }));
}

function table<Row>(fileName: string, job: Job, rows: readonly Row[], columns: readonly Column<Row>[]): TextFile {
  const written = columns.flatMap((column) => inUnits(column, job.lengthUnit));
  const lines = [
    written.map(({ heading }) => heading),
    ...rows.map((row) => written.map(({ cell }) => asPlainText(cell(row)))),
  ];
  const text = papaparse.unparse(lines, { escapeFormulae: FORMULA, quotes: (cell) => typeof cell === 'string' });
  return { fileName, text: `${text}\r\n` };
}

/** Text on one line, without control characters, as long as names are shown: some readers split a row at any of them. */
const asPlainText = (cell: Cell): Cell =>
  typeof cell === 'string' ? shownName(cell.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')) : cell;

/** A length becomes a column in mm and, in a job shown in inches, one in inches beside it. */
function inUnits<Row>(column: Column<Row>, unit: LengthUnit): Column<Row>[] {
  if (column.kind === 'other') return [column];
  const inMm = { ...column, heading: `${column.heading}_mm` };
  if (unit === 'mm') return [inMm];
  const inInches = (row: Row) => {
    const mm = column.cell(row);
    return typeof mm === 'number' ? Number((mm / MM_PER_INCH).toFixed(4)) : null;
  };
  return [inMm, { ...column, heading: `${column.heading}_in`, cell: inInches }];
}
