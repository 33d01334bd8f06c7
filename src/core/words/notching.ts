/**
 * The recipe of a cut at the notcher in the order of doing: rows of a name and a figure, and what is said to them. Figures stay
 * numbers, so that screen and paper set each in its own way and round it alike.
 */
import { deepSide, SQUARE } from '../cope/end-mark.ts';
import { THIN, type Notch, type Notching, type Sawn } from '../cope/notching.ts';
import { toDegrees, type Degrees, type Radians } from '../geometry/angle.ts';
import type { Notcher } from '../job/kinds/notcher.ts';
import type { Tools } from '../job/kinds/tools.ts';
import type { Cut, SolvedTube } from '../solve/types.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { exactText, stepAbove } from '../units/step.ts';
import { UNSEEN } from './ends.ts';
import { bothInWords, markInWords, offsetInWords, throatInWords } from './cope-mark.ts';
import { comparedLength } from './lengths.ts';
import { listed } from './lists.ts';

/** round: a length round the tube's surface, to the 64th of an inch. */
export type RecipeFigure =
  | { readonly kind: 'length' | 'round'; readonly mm: number }
  | { readonly kind: 'words'; readonly words: string };

export interface RecipeRow {
  readonly label: string;
  readonly figure: RecipeFigure;
}

const isSquare = ({ set }: Sawn): boolean => toDegrees(set) < SQUARE;

/**
 * One row each step at the machine, in order and the same in number at every cut; for a cut that no saw makes, where its mark stands
 * alone. The saw's centre is given to the 64th of an inch, for what it is off the tube is short; the depth is rounded up, or a tag would be left.
 */
export function recipeRows(
  tube: SolvedTube,
  { cut, sawn, way }: Notch,
  { notcher }: Notching,
  unit: LengthUnit,
): readonly RecipeRow[] {
  const mark = deepSide(tube, cut);
  const marked: readonly RecipeRow[] = [
    { label: 'Mark, from line', figure: { kind: 'words', words: markInWords(mark) } },
    { label: 'Round the tube', figure: { kind: 'round', mm: mark.round } },
  ];
  if (sawn === null) return marked;
  const { saw, set, centre, depth } = sawn;
  const words = settingInWords(set, notcher);
  return [
    ...marked,
    { label: 'Hole saw', figure: { kind: 'words', words: `${exactText(saw, unit)} ${unit}` } },
    { label: 'Off square', figure: { kind: 'words', words } },
    { label: centreLabel(centre), figure: { kind: 'round', mm: Math.abs(centre) } },
    way === 'flip'
      ? { label: 'Depth, each side', figure: { kind: 'length', mm: stepAbove(depth / 2, unit) } }
      : { label: 'Depth', figure: { kind: 'length', mm: stepAbove(depth, unit) } },
  ];
}

/** As the scale of the machine reads. */
export const settingInWords = (set: Radians, notcher: Notcher | null): string =>
  notcher?.step === undefined ? `${formatAngle(toDegrees(set), 1)}°` : exactAngle(toDegrees(set));

const centreLabel = (centre: number): string =>
  Math.abs(centre) < UNSEEN ? 'Centre at end' : `Centre ${centre > 0 ? 'in from end' : 'beyond end'}`;

/** On which machine, which way the head stands and the mark faces, the same for every cut of the end; null where nothing is sawn. */
function headInWords({ leans, notches, notcher, among }: Notching): string | null {
  const sawn = notches.flatMap((notch) => notch.sawn ?? []);
  if (sawn.length === 0) return null;
  const on = among > 1 ? `On ${notcher!.name}. ` : '';
  if (sawn.every(isSquare)) return `${on}Mark to the drill, head square.`;
  const every = sawn.length > 1 ? ' for every cut of this end' : '';
  switch (leans) {
    case 'over-tube':
      return `${on}Mark to the drill, which leans over the tube${every}.`;
    case 'past-end':
      return `${on}Mark away from the drill, which leans out past the end${every}.`;
    case 'unsaid':
      return `${on}Mark to the drill, which leans over the tube${every}, as drawn. If yours leans out past the end: mark away from it.`;
  }
}

/** How a cut is made, with why where no saw makes it: a sentence. */
export function wayInWords({ way, why, cut, sawn, tooDeep }: Notch, { notcher }: Notching, unit: LengthUnit): string {
  switch (way) {
    case 'nothing':
      return 'Nothing is cut here: the tube runs past without meeting it.';
    case 'one-pass':
      return 'One pass.';
    case 'cut-off-first':
      return 'Saw off what is left long first, then one pass: with it on, the saw is too short. Figures are from the new end.';
    case 'flip':
      return flipInWords(sawn!, notcher, unit);
    case 'either':
      return 'One pass if your saw cuts that deep. If not: half from each side, or the wrap.';
    case 'wrap':
      break;
  }
  const off = `${formatAngle(toDegrees(cut.offSquare), 1)}° off square`;
  switch (why!) {
    case 'bend':
      return 'Use the wrap: it meets a bend.';
    case 'thin':
      return `Use the wrap: no saw at ${THIN}° and less (common practice).`;
    case 'swing':
      return `Use the wrap: ${off}, ${notcher!.name} swings to ${exactAngle(notcher!.greatestOffSquare)}.`;
    case 'offset':
      return `Use the wrap: the axes pass each other by ${formatLength(Math.abs(cut.axisOffset), unit).text} ${unit}, and ${notcher!.name} cuts through the middle only.`;
    case 'saw':
      return `Use the wrap: the shop has no hole saw of ${exactText(cut.sawDiameter, unit)} ${unit} for this run tube.`;
    case 'reach':
      return tooDeepInWords(tooDeep!, unit);
    case 'gap':
      return `Use the wrap: ${off}, too far from what ${notcher?.name ?? 'the notcher'} can be set to.`;
  }
}

/** By how much, and why the other side is no help. */
function tooDeepInWords({ depth, reach }: NonNullable<Notch['tooDeep']>, unit: LengthUnit): string {
  const [goes, cuts] = [stepAbove(depth, unit), reach].map((mm) => `${formatLength(mm, unit).text} ${unit}`);
  const both = depth > 2 * reach ? 'too much from both sides' : 'the head leans one way only';
  return `Use the wrap: it goes ${goes} deep, the saw cuts ${cuts}, ${both}.`;
}

function flipInWords(sawn: Sawn, notcher: Notcher | null, unit: LengthUnit): string {
  const deep = `${formatLength(sawn.reach!, unit).text} ${unit} deep`;
  const saw = sawn.isMeasured ? `the saw cuts only ${deep}` : `most saws cut only ${deep}, measure yours`;
  if (isSquare(sawn))
    return `Half from each side: ${saw}. Then turn the tube half round and go in until it is through.`;
  const oneWay = notcher?.leans === undefined ? ' If it leans one way only: the wrap.' : '';
  return `Half from each side: ${saw}. Then turn the tube half round, lean the head as far the other way, and go in until it is through.${oneWay}`;
}

const exactAngle = (degrees: Degrees): string => `${Number(degrees.toFixed(2))}°`;

/** The angle that a cut has where its setting is another; null where the two show alike. */
function exactInWords({ cut, sawn }: Notch): string | null {
  if (sawn === null) return null;
  const [exact, set] = [cut.offSquare, sawn.set].map((angle) => formatAngle(toDegrees(angle), 1));
  return exact === set ? null : `Exactly ${exact}°.`;
}

/** What settings and saws that are not the exact ones do to the joint; null where that is too little to see. */
const gapInWords = ({ gap }: Notching, unit: LengthUnit): string | null =>
  gap < SHUT ? null : `As set the joint stands off by ${comparedLength(gap, unit)}.`;

/** mm. A gap that shows as none. */
const SHUT = 0.05;

/** Where the saw first touches, to stop by before any metal is gone; null where the mark does not face the drill, or the axes pass. */
function touchInWords({ sawn }: Notch, { leans }: Notching, unit: LengthUnit): string | null {
  if (sawn?.touch == null || leans !== 'over-tube') return null;
  return `First touch: on the mark, ${formatLength(sawn.touch, unit).text} ${unit} from the sawn end, else stop.`;
}

/** At an end of several cuts, of one by its wrap. */
const WRAP_OF_SEVERAL = 'The wrap shows all cuts of this end: draw it, and every centre, before the first cut.';

/** Where one end wants more than one saw; null where one does. */
function sawsInWords({ notches, saws }: Notching, unit: LengthUnit): string | null {
  if (saws.length < 2) return null;
  const each = notches.flatMap(({ sawn }, i) =>
    sawn === null ? [] : [`${exactText(sawn.saw, unit)} ${unit} for cut ${i + 1}`],
  );
  return `${saws.length === 2 ? 'Two' : saws.length} saws: ${listed(each)}.`;
}

/** Why a plain cut this far off square is marked from its wrap; null where the bench saw makes it, or nobody has said how far that goes. */
export function benchSawInWords(over: Radians, tools: Tools | undefined): string | null {
  if (tools?.benchSaw === undefined || toDegrees(over) <= tools.benchSaw + SQUARE) return null;
  return `Use the wrap: the bench saw goes to ${exactAngle(tools.benchSaw)}.`;
}

/** "Left 1 1/8 in long at end A": what is sawn off when the tube is fitted; null where nothing is. */
export const leftLongInWords = ({ ends }: SolvedTube, which: 0 | 1, unit: LengthUnit): string | null =>
  ends[which].allowance < UNSEEN
    ? null
    : `Left ${formatLength(ends[which].allowance, unit).text} ${unit} long at end ${which === 0 ? 'A' : 'B'}`;

/** How the two tubes stand to each other, which no notcher is set to: mixing it up with the setting is the standard slip. */
export const betweenInWords = ({ includedAngle }: Cut): string =>
  `${formatAngle(toDegrees(includedAngle), 1)}° between the tubes.`;

/** All that is said of a cut beside its steps, sentence by sentence, in the block of the cut that it is of. */
export function saidOfCut(
  tube: SolvedTube,
  which: 0 | 1,
  notching: Notching,
  index: number,
  unit: LengthUnit,
): readonly string[] {
  const { notches } = notching;
  const notch = notches[index]!;
  const { cut, sawn, way } = notch;
  const isSawn = notches.map((each) => each.sawn !== null);
  const firstByWrap = notches.findIndex((each) => each.way === 'wrap');
  const { high } = tube.ends[which];
  const offset = offsetInWords(cut);
  const isLast = isSawn.lastIndexOf(true) === index;
  return [
    isSawn.indexOf(true) === index ? headInWords(notching) : null,
    touchInWords(notch, notching, unit),
    exactInWords(notch),
    isLast ? gapInWords(notching, unit) : null,
    isLast ? sawsInWords(notching, unit) : null,
    way === 'wrap' && notches.length > 1 && index === firstByWrap ? WRAP_OF_SEVERAL : null,
    sawn === null ? null : bothInWords(deepSide(tube, cut)),
    offset === null ? null : `${offset} By ${formatLength(Math.abs(cut.axisOffset), unit).text} ${unit}.`,
    index === firstByWrap && high !== null ? throatInWords(tube, which, high.phi) : null,
  ].flatMap((words) => words ?? []);
}

/** What the picture from above shows, for whoever cannot see it. */
export function seenInWords({ sawn, cut }: Notch, { leans, notcher }: Notching): string {
  if (sawn === null) return `The end from the side, as its wrap leaves it: ${betweenInWords(cut)}`;
  const side = leans === 'past-end' ? 'away from' : 'towards';
  return `The tube in the notcher from above, the drill towards you: the mark ${side} it, the head ${settingInWords(sawn.set, notcher)} off square.`;
}
