/**
 * The fabrication file: all that is derived from a job, as data for machines and for other programs. Millimetres,
 * degrees, kilograms, car axes (ISO 8855), full double precision: rounding is for the printed page alone. What cannot
 * be known (a generator line that no cutter reaches) is null. docs/file-formats.md says what each field means.
 */
import { isSeen } from '../../core/checks/seen.ts';
import type { Clearance } from '../../core/checks/clearances.ts';
import type { Finding, Severity } from '../../core/checks/types.ts';
import type { Derived } from '../../core/derive.ts';
import { contactArea, coveredArea, footMass } from '../../core/feet/amount.ts';
import { footCorners, kinkLine } from '../../core/feet/corners.ts';
import { inCar, standsOf, type Stand } from '../../core/feet/stand.ts';
import { LISTED, type TubeGap } from '../../core/gaps/measure-gaps.ts';
import { toDegrees, type Degrees, type Radians } from '../../core/geometry/angle.ts';
import { addScaled, scale, type Vec3 } from '../../core/geometry/vector.ts';
import type { Forecast } from '../../core/forecast/types.ts';
import type { Tools } from '../../core/job/kinds/tools.ts';
import { FIRST_ACCURACY, type Accuracy } from '../../core/job/kinds/accuracy.ts';
import { heightOf } from '../../core/job/kinds/foot.ts';
import { shownName } from '../../core/job/shown.ts';
import type {
  BodyLineId,
  DieId,
  EnvelopeId,
  FootId,
  GussetId,
  NodeRef,
  PointRef,
  SectionId,
  TubeRef,
} from '../../core/job/reference.ts';
import { bendMarks, type BendMarks } from '../../core/marks/marks.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import { feedOf, type Feed } from '../../core/solve/feed.ts';
import type { Bend, Cut, SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import type { SectionPlan } from '../../core/stock/of-job.ts';
import { findingInWords, sourceInWords } from '../../core/words/findings.ts';
import { fabricationTrimGaps, type FabricationTrimGap } from './trim-gaps.ts';
import { fabricationStock, type FabricationStock } from './stock.ts';
import { fabricationRules, type FabricationVerdict } from './rules.ts';
import { fabricationFitting, type FabricationFitting } from './fitting.ts';
import { fabricationGussets, type FabricationGusset } from './gussets.ts';
import { fabricationNotching, type FabricationNotching } from './notching.ts';
import { fabricationTackUp, type FabricationTackUp } from './tack-up.ts';
import type { Adjusted } from '../../core/survey/adjust.ts';
import type { TextFile } from '../shared/text.ts';

export interface FabricationFile {
  readonly format: 'cagewright/fabrication';
  readonly version: 1;
  readonly job: string;
  readonly tubes: readonly FabricationTube[];
  readonly feet: readonly FabricationFoot[];
  readonly gussets: readonly FabricationGusset[];
  readonly clearances: readonly Clearance[];
  readonly gaps: readonly TubeGap[];
  readonly trimGaps: readonly FabricationTrimGap[];
  /** Only where something was measured. */
  readonly survey?: Adjusted;
  /** Absent without rule sheets. */
  readonly rules?: readonly FabricationVerdict[];
  /** Absent where the job has no sticks. */
  readonly stock?: FabricationStock;
  readonly fitting: FabricationFitting;
  readonly tackUp: FabricationTackUp;
  /** Only where it was asked for. */
  readonly forecast?: Forecast & { readonly accuracy: Accuracy };
  readonly findings: readonly FabricationFinding[];
}

export interface FabricationFinding {
  readonly id: Finding['id'];
  readonly severity: Severity;
  readonly tube: TubeRef;
  readonly bend?: number;
  readonly end?: 'A' | 'B';
  readonly node?: NodeRef;
  readonly envelope?: EnvelopeId;
  /** Only where a person has marked it as seen and left it. */
  readonly seen?: boolean;
  readonly gusset?: GussetId;
  /** The other of two tubes that come too near each other. */
  readonly other?: TubeRef;
  /** What of the car a tube is too near to. */
  readonly point?: PointRef;
  readonly bodyLine?: BodyLineId;
  readonly message: string;
  readonly source: string;
  readonly at: Vec3;
}

export interface FabricationTube {
  readonly id: TubeRef;
  /** Inspector's number, in build order. */
  readonly number: number;
  /** As on its sheet and its wraps. */
  readonly revision: string;
  readonly name: string;
  readonly role: string;
  readonly section: SectionId;
  readonly die: DieId | null;
  readonly twinOf: TubeRef | null;
  /** Of one that does not stand as it is drawn: as it was built, or as it was cut. */
  readonly stands?: 'built' | 'cut';
  /** Of a bar in pieces: the bar, and which piece of how many, 1 = from its end A. */
  readonly of?: TubeRef;
  readonly piece?: readonly [number, number];
  readonly corners: readonly Vec3[];
  readonly straights: readonly number[];
  readonly bends: readonly FabricationBend[];
  readonly developedLength: number;
  readonly sharpCornerLength: number;
  readonly blankLength: number;
  /** The blank, and the grip that the tube's order of bending asks for. */
  readonly cutLength: number;
  readonly mass: number;
  readonly ends: readonly [FabricationEnd, FabricationEnd];
}

export interface FabricationBend {
  readonly angle: Degrees;
  readonly rotation: Degrees;
  readonly radius: number;
  readonly arc: number;
  readonly start: number;
  readonly end: number;
  /** On the machine's scale: what a person is given to pull to. */
  readonly pullTo: Degrees;
  readonly pullToIs: 'law' | 'first-pull' | 'estimate';
  /** By the law of the pulls, wherever it leads. Null where there are none and the section's material is not a known steel. */
  readonly machineAngle: Degrees | null;
  readonly machineAngleFrom: BendMarks['machineAngleFrom'];
  /** Half-width of its 95 % interval by the logged pulls alone; null with fewer than three. */
  readonly machineAngleWithin: Degrees | null;
  readonly clampMark: number;
}

export interface FabricationEnd {
  readonly node: NodeRef | null;
  /** Where a bar in pieces is cut: the place that the profile counts from. */
  readonly place?: Vec3;
  readonly fit: TubeEnd['fit'];
  readonly direction: Vec3;
  readonly reference: Vec3;
  readonly cuts: readonly FabricationCut[];
  readonly butted: readonly TubeRef[];
  readonly plateNormal: Vec3 | null;
  readonly foot?: FootId;
  readonly allowance: number;
  readonly profile: readonly (number | null)[];
  readonly tip: number | null;
  readonly throat: number | null;
  /** How it is notched; null at an end that is not coped. */
  readonly notching: FabricationNotching | null;
}

/** A foot under one end of a tube, in the order of the tubes, end A first. */
export interface FabricationFoot {
  readonly tube: TubeRef;
  readonly end: 'A' | 'B';
  readonly foot: FootId;
  /** Of the face on the car. */
  readonly corners: readonly Vec3[];
  /** Both ends of the line on which a bent plate's two planes meet. */
  readonly kink?: readonly [Vec3, Vec3];
  readonly along: Vec3;
  readonly across: Vec3;
  readonly normal: Vec3;
  /** Where the tube stands on the upper face; null where it does not. */
  readonly outline: { readonly centre: Vec3; readonly half: readonly [number, number]; readonly longAxis: Vec3 } | null;
  readonly contactArea: number;
  readonly coveredArea: number;
  readonly mass: number;
}

export interface FabricationCut {
  readonly against: TubeRef;
  readonly includedAngle: Degrees;
  readonly offSquare: Degrees;
  readonly clocking: Degrees;
  readonly axisOffset: number;
  readonly sawDiameter: number;
  readonly sawDepth: number | null;
  readonly onBend: boolean;
}

/** What takes longer than an edit may, and is in the file where it was worked out. */
export interface WorkedOut {
  readonly forecast?: Forecast | null;
  readonly plans?: readonly SectionPlan[] | null;
}

/** The fabrication file as data, fields in the order in which the format lists them. Total: never fails. */
export function fabrication(derived: Derived, { forecast = null, plans = null }: WorkedOut = {}): FabricationFile {
  return {
    format: 'cagewright/fabrication',
    version: 1,
    job: derived.job.name,
    tubes: derived.tubes.map((tube) =>
      fabricationTube(tube, feedOf(derived.job, tube), revisionOf(derived.job, tube), derived.job.tools),
    ),
    feet: derived.tubes.flatMap(standsOf).map(fabricationFoot),
    gussets: fabricationGussets(derived),
    clearances: derived.clearances,
    gaps: derived.gaps.filter(({ distance }) => distance < LISTED),
    trimGaps: fabricationTrimGaps(derived),
    ...(derived.survey !== null && { survey: derived.survey }),
    ...(derived.job.rules.length > 0 && { rules: fabricationRules(derived) }),
    ...(plans !== null && { stock: fabricationStock(plans) }),
    fitting: fabricationFitting(derived),
    tackUp: fabricationTackUp(derived),
    ...(forecast !== null && { forecast: { accuracy: derived.job.accuracy ?? FIRST_ACCURACY, ...forecast } }),
    findings: derived.findings.map((finding) => fabricationFinding(finding, derived)),
  };
}

/** What and how bad, where, then the words. */
function fabricationFinding(finding: Finding, derived: Derived): FabricationFinding {
  const { id, severity, tube, bend, end, node, envelope, at } = finding;
  return {
    id,
    severity,
    tube,
    ...(bend !== undefined && { bend }),
    ...(end !== undefined && { end }),
    ...(node !== undefined && { node }),
    ...(envelope !== undefined && { envelope }),
    ...(isSeen(finding, derived.job.seen) && { seen: true }),
    ...('gusset' in finding && { gusset: finding.gusset }),
    ...('other' in finding && { other: finding.other }),
    ...('point' in finding && { point: finding.point }),
    ...('trim' in finding && { [finding.trim.kind]: finding.trim.id }),
    message: findingInWords(finding, derived),
    source: sourceInWords(finding, derived),
    at,
  };
}

function fabricationTube(
  tube: SolvedTube,
  { cutLength }: Feed,
  revision: string,
  tools: Tools | undefined,
): FabricationTube {
  return {
    id: tube.id,
    number: tube.number,
    revision,
    name: tube.name,
    role: shownName(tube.member.role),
    section: tube.section.id,
    die: tube.die?.id ?? null,
    twinOf: tube.twinOf,
    ...(tube.asDrawn !== null && { stands: tube.held === null ? ('built' as const) : ('cut' as const) }),
    ...(tube.piece !== null && { of: tube.bar, piece: [tube.piece.number, tube.piece.count] as const }),
    corners: tube.corners,
    straights: tube.straights,
    bends: fabricationBends(tube),
    developedLength: tube.developedLength,
    sharpCornerLength: tube.sharpCornerLength,
    blankLength: tube.blankLength,
    cutLength,
    mass: tube.mass,
    ends: [fabricationEnd(tube.ends[0], tools), fabricationEnd(tube.ends[1], tools)],
  };
}

function fabricationBends(tube: SolvedTube): FabricationBend[] {
  const marks = bendMarks(tube);
  return tube.bends.map((bend, i) => fabricationBend(bend, marks[i]!));
}

function fabricationBend(
  bend: Bend,
  { pull, machineAngle, machineAngleFrom, machineAngleWithin, clampMark }: BendMarks,
): FabricationBend {
  return {
    angle: toDegrees(bend.angle),
    rotation: toDegrees(bend.rotation),
    radius: bend.radius,
    arc: bend.arc,
    start: bend.start,
    end: bend.end,
    pullTo: pull.pullTo,
    pullToIs: pull.kind === 'first' ? 'first-pull' : pull.kind,
    machineAngle: degreesOrNull(machineAngle),
    machineAngleFrom,
    machineAngleWithin: degreesOrNull(machineAngleWithin),
    clampMark,
  };
}

const degreesOrNull = (angle: Radians | null): Degrees | null => (angle === null ? null : toDegrees(angle));

function fabricationEnd(end: TubeEnd, tools: Tools | undefined): FabricationEnd {
  return {
    node: end.node,
    ...(end.node === null && { place: end.position }),
    fit: end.fit,
    direction: end.direction,
    reference: end.reference,
    cuts: end.cuts.map(fabricationCut),
    butted: end.butted,
    plateNormal: end.plateNormal,
    ...(end.foot !== null && { foot: end.foot.id }),
    allowance: end.allowance,
    profile: Array.from(end.outer, (s) => (Number.isNaN(s) ? null : s)),
    tip: end.tip,
    throat: end.throat,
    notching: fabricationNotching(end, tools),
  };
}

function fabricationCut(cut: Cut): FabricationCut {
  return {
    against: cut.against,
    includedAngle: toDegrees(cut.includedAngle),
    offSquare: toDegrees(cut.offSquare),
    clocking: toDegrees(cut.clocking),
    axisOffset: cut.axisOffset,
    sawDiameter: cut.sawDiameter,
    sawDepth: cut.sawDepth,
    onBend: cut.onBend,
  };
}

function fabricationFoot(stand: Stand): FabricationFoot {
  const { tube, which, foot, along, across, normal, outline } = stand;
  const kink = kinkLine(stand);
  const [x, y] = outline?.lean ?? [0, 0];
  return {
    tube: tube.id,
    end: which === 0 ? 'A' : 'B',
    foot: foot.id,
    corners: footCorners(stand),
    ...(kink !== null && { kink }),
    along,
    across,
    normal,
    outline: outline && {
      centre: inCar(stand, [...outline.centre, heightOf(foot)]),
      half: outline.half,
      longAxis: addScaled(scale(along, x), across, y),
    },
    contactArea: contactArea(foot),
    coveredArea: coveredArea(foot),
    mass: footMass(foot),
  };
}

/** The fabrication file as text. */
export function fabricationFile(derived: Derived, workedOut: WorkedOut = {}): TextFile {
  return { fileName: 'fabrication.json', text: fabricationJson(derived, workedOut) };
}

/**
 * The same as JSON text, UTF-8, to be read by people too: whatever holds only numbers, words and null stands on one
 * line (a point, a bend, a cut, a profile), all else is indented.
 */
export function fabricationJson(derived: Derived, workedOut: WorkedOut = {}): string {
  return `${jsonLines(fabrication(derived, workedOut), '')}\n`;
}

function jsonLines(value: unknown, indent: string): string {
  if (!isComposite(value)) return spelled(value);
  const isList = Array.isArray(value);
  const [open, close] = isList ? ['[', ']'] : ['{', '}'];
  const fields = Object.entries(value).filter(([, each]) => each !== undefined);
  const isOneLine = fields.every(([, each]) => !isComposite(each));
  const inner = isOneLine ? '' : `${indent}  `;
  const written = fields.map(([key, each]) => (isList ? '' : `${spelled(key)}: `) + jsonLines(each, inner));
  if (isOneLine)
    return isList || written.length === 0 ? `${open}${written.join(', ')}${close}` : `{ ${written.join(', ')} }`;
  return `${open}\n${inner}${written.join(`,\n${inner}`)}\n${indent}${close}`;
}

/**
 * As JSON, with what JSON lets stand but a terminal or an editor obeys written by its number: the controls beyond ASCII, Unicode's line ends,
 * the marks that turn the reading direction.
 */
const spelled = (value: unknown): string => {
  const text = JSON.stringify(value);
  if (typeof value !== 'string') return text;
  return text.replace(
    /[\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
};

const isComposite = (value: unknown): value is object => value !== null && typeof value === 'object';
