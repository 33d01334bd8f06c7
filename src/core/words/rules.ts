/**
 * Rule sheets in words: what an article asks, what came of it and why. "Met" says that what is drawn, or was made, lies within a figure that somebody typed; whether
 * a car may start is for the rule book and its inspector.
 */
import { areaInWords, figureInWords, secondMomentInWords } from './rule-figures.ts';
import { comparedLength, lengthOnTape } from './lengths.ts';
import { capital, listed } from './lists.ts';
import type { RuleAnswer, RuleCheck, RuleKind, RuleMark } from '../job/kinds/rule-check.ts';
import { shownName } from '../job/shown.ts';
import type { Misfit, ToPad, Verdict, VerdictWord } from '../rules/types.ts';
import { tubeName } from '../solve/names.ts';
import type { Frame } from '../solve/types.ts';
import type { LengthUnit } from '../units/length.ts';
import { massInWords } from '../units/mass.ts';

export const VERDICT_WORDS: Readonly<Record<VerdictWord, string>> = {
  met: 'met',
  'not-met': 'not met',
  'not-checked': 'not checked',
};

/** How sure a figure is. */
export const MARK_WORDS: Readonly<Record<RuleMark, string>> = {
  read: 'read in a copy of the book',
  quoted: 'from a text that quotes the book',
  memory: 'from memory: look it up',
  own: 'typed by the shop',
};

/** On every page that shows verdicts. */
export const RULES_CHANGE =
  'Rules change every year: hold the edition named here against this year’s book. The book and its inspector decide; nothing here is an approval.';

/** What kinds of article there are, for whoever chooses one. */
export const RULE_KIND_WORDS: Readonly<Record<RuleKind, string>> = {
  section: 'Size of tube',
  'one-piece': 'In one piece',
  'bend-radius': 'Radius or roundness of bends',
  'bend-count': 'Number and angle of bends',
  straight: 'Straight, or how long it runs free',
  tilt: 'How it leans',
  reach: 'Where it begins',
  present: 'Has to be there',
  plate: 'Plates and bolts',
  support: 'Bent tubes held where they stand out',
  harness: 'Harness bar and straps',
  'inside-width': 'Width inside the hoop',
  'head-room': 'Head room',
  'gap-window': 'Distance between tubes',
  ask: 'A question for a person',
};

/** "main hoop" of main-hoop. */
export const roleInWords = (role: string): string => shownName(role).trim().replaceAll(/[-_]+/gu, ' ');

/** "main hoop and rear stay"; all tubes where none is named. */
export const rolesInWords = (roles: readonly string[]): string =>
  roles.length === 0 ? 'every tube' : listed(roles.map(roleInWords));

/** "at least 30°", "30° to 60°"; nothing where no figure was typed. */
export function limitsInWords(
  { least, most, strictly }: Pick<RuleCheck, 'least' | 'most' | 'strictly'>,
  show: (value: number) => string,
): string {
  if (least !== undefined && most !== undefined)
    return least === most ? `exactly ${show(least)}` : `${show(least)} to ${show(most)}`;
  if (least !== undefined) return `${strictly ? 'more than' : 'at least'} ${show(least)}`;
  return most === undefined ? '' : `${strictly ? 'less than' : 'at most'} ${show(most)}`;
}

/** What the article asks, whatever its own text: "Rear stay: leans, counted from the vertical, at least 30°." */
export function askedInWords(check: RuleCheck, unit: LengthUnit): string {
  if (check.kind === 'ask') return 'A person has to look.';
  const limits = limitsInWords(check, (value) => figureInWords(value, check, unit));
  const what = [whatInWords(check, unit), isYesOrNo(check) || isOfPadding(check) ? '' : limits]
    .filter((each) => each !== '')
    .join(' ');
  const aim = check.aim === undefined ? '' : `; about ${figureInWords(check.aim, check, unit)} advised`;
  return `${capital(`${whoInWords(check)}${what}${massesInWords(check, unit)}${aim}`)}.`;
}

/** It is so or it is not: no figure tells more. */
const isYesOrNo = ({ kind, of, most = 0 }: RuleCheck): boolean =>
  (kind === 'one-piece' && most <= 1) || (kind === 'straight' && of === 'bends' && most === 0);

const isOfPadding = ({ kind, of }: RuleCheck): boolean => kind === 'head-room' && of === 'padding';

function whoInWords({ kind, of, roles, only }: RuleCheck): string {
  if (kind === 'head-room' || kind === 'harness') return '';
  if (kind === 'present' && roles.length === 0) return of === 'feet' || of === 'gussets' ? 'the cage: ' : 'in all: ';
  return only === undefined ? `${rolesInWords(roles)}: ` : `${rolesInWords(roles)}, ${only}: `;
}

function whatInWords(check: RuleCheck, unit: LengthUnit): string {
  const onto = rolesInWords(check.onto ?? []);
  const end = check.end === undefined ? 'ends' : `${check.end} end`;
  switch (check.kind) {
    case 'section':
      return sizesInWords(check, unit);
    case 'one-piece':
      return isYesOrNo(check) ? 'in one piece' : 'pieces';
    case 'bend-radius':
      return {
        diameters: 'centreline radius of its bends, in diameters of the tube,',
        radius: 'centreline radius of its bends',
        roundness: 'least over greatest diameter at its bends',
      }[check.of];
    case 'bend-count':
      return { count: 'bends', sum: 'its bends together', each: 'each bend' }[check.of];
    case 'straight':
      return check.of === 'bends' ? 'straight' : 'from joint to joint';
    case 'tilt': {
      const way = check.runs === undefined ? '' : `runs ${check.runs}; `;
      const from = check.from === 'level' ? 'from level' : 'from the vertical';
      return `${way}${check.of === 'joint' ? `angle to ${onto}` : `${check.of === 'plane' ? 'the plane of its bends leans' : 'from end to end it leans'}, counted ${from},`}`;
    }
    case 'reach':
      return {
        foot: `${end} from the foot of ${onto}`,
        joint: `${end} from the end of ${onto}`,
        corner: `${end} from a corner of ${onto}`,
        'below-top': `${end} below the top of ${onto}`,
        opening: `${end} in the door’s opening, as a share of its height,`,
      }[check.of];
    case 'present':
      return {
        bars: 'bars there',
        'each-side': 'bars there on each side',
        feet: 'feet',
        gussets: 'gussets',
      }[check.of];
    case 'plate':
      return {
        area: AREA_ASKED[check.box ?? 'unasked'],
        thickness: 'its feet are thick',
        bolts: 'bolt holes in each foot',
        hole: 'each bolt hole across',
      }[check.of];
    case 'support':
      return 'held where it stands out farthest, by a tube that leans out of the plane of its bends';
    case 'harness':
      return check.of === 'height'
        ? 'top of the harness bar above the shoulders'
        : 'straps from the shoulders, upward counted plus,';
    case 'inside-width':
      return check.of === 'feet' ? 'inside, between its feet' : 'inside, where the legs stand nearest';
    case 'head-room':
      return {
        box: 'from the helmet’s box',
        'line-front': 'helmet under the line from the hoop’s top to the top of the front',
        'line-stay': 'helmet under the line from the hoop’s top to the foot of the stay',
        behind: 'behind the helmet',
        circle: `from a ball of ${comparedLength(check.diameter ?? 300, unit)} round the head`,
        padding: `tubes within ${comparedLength(Math.max(check.least ?? 0, check.most ?? 0), unit)} of a helmet: padded`,
      }[check.of];
    case 'gap-window':
      return `${check.of === 'axes' ? 'centreline' : 'surface'} to the nearest ${onto}`;
    case 'ask':
      return '';
  }
}

/** By what a box counts with. */
const AREA_ASKED = {
  unasked: 'plate area of its feet',
  covers: 'plate area of its feet, of a box what it covers,',
  touches: 'plate area of its feet, of a box the foot of its walls,',
} as const;

/** "tube of 45 x 2.5 mm or 50 x 2 mm at least". */
function sizesInWords(check: RuleCheck, unit: LengthUnit): string {
  const { sizes = [], area, secondMoment, outerDiameter, wall, allowance } = check;
  const show = (mm: number): string => comparedLength(mm, unit);
  const rows = sizes.map((size) => `${show(size.outerDiameter)} x ${show(size.wall)}`);
  const least = [
    outerDiameter === undefined ? '' : `${show(outerDiameter)} across`,
    wall === undefined ? '' : `wall ${show(wall)}`,
    area === undefined ? '' : areaInWords(area, unit),
    secondMoment === undefined ? '' : `second moment ${secondMomentInWords(secondMoment, unit)}`,
  ].filter((each) => each !== '');
  const off = allowance === undefined ? '' : `; a wall may be ${show(allowance)} less`;
  const all = [rows.join(' or '), listed(least)].filter((each) => each !== '');
  return all.length === 0 ? 'size of tube' : `tube of at least ${all.join(', and ')}${off}`;
}

function massesInWords({ massFrom, massUpTo }: RuleCheck, unit: LengthUnit): string {
  const from = massFrom === undefined ? '' : ` over ${massInWords(massFrom, unit)}`;
  const to = massUpTo === undefined ? '' : ` up to ${massInWords(massUpTo, unit)}`;
  return from + to === '' ? '' : `, in cars of${from}${from !== '' && to !== '' ? ' and' : ''}${to}`;
}

/** What came of it: "1.0 in, Main hoop; at least 1.2 in is asked: 0.2 in short." */
export function verdictInWords(verdict: Verdict, frame: Frame): string {
  const unit = frame.job.lengthUnit;
  const { value, limit, margin, bound, because } = verdict;
  if (because.id !== 'measured' && because.id !== 'from-memory') return becauseInWords(verdict, frame);
  if (value === null || limit === null || margin === null) return '';
  const show = (figure: number): string => figureInWords(figure, verdict, unit);
  // What is counted has no one place.
  const isPlaced = verdict.concerns.length > 0 && verdict.check.kind !== 'present';
  const where = isPlaced ? `, ${whereInWords(verdict, frame)}` : '';
  if (verdict.check.kind === 'plate' && verdict.check.of === 'hole' && value === 0)
    return `No bolt holes${where}; ${limitsInWords(verdict.check, show)} across is asked.`;
  if (isYesOrNo(verdict.check) && verdict.verdict === 'met') return `Yes: ${allInWords(verdict, frame)}.`;
  const limits = limitsInWords({ [bound ?? 'least']: limit, ...(verdict.check.strictly && { strictly: true }) }, show);
  const asked = `${show(value)}${nounOf(verdict.check, value)}${where}; ${limits} is asked${eitherOf(verdict.check, unit)}`;
  if (because.id === 'from-memory') return `${asked}, but that figure is from memory: look it up.`;
  if (verdict.verdict === 'not-met') return `${asked}: ${show(-margin)} ${bound === 'least' ? 'short' : 'over'}.`;
  return margin === 0 ? `${asked}: just that.` : `${asked}: ${show(margin)} to spare.`;
}

/** Of several sizes that do, all: the figure beside it is of the one that the tube comes nearest to. */
const eitherOf = (check: RuleCheck, unit: LengthUnit): string =>
  (check.sizes ?? []).length > 1 ? ` (${sizesInWords(check, unit)})` : '';

/** What is counted, where a bare number would not say. */
const nounOf = ({ kind, of }: RuleCheck, value: number): string =>
  kind === 'plate' && of === 'bolts' ? ` ${value === 1 ? 'hole' : 'holes'} per foot` : '';

const MOST_NAMED = 3;

/** Who was looked at where all are within. */
const allInWords = ({ concerns }: Verdict, frame: Frame): string =>
  concerns.length === 1 ? tubeName(frame, concerns[0]!) : `all ${concerns.length} tubes`;

/** What of each kind is measured one by one, where that is not tubes. */
const MEASURED_ONE_BY_ONE: Partial<Readonly<Record<RuleKind, string>>> = {
  'head-room': 'helmets',
  harness: 'straps',
  'bend-radius': 'bends',
  plate: 'feet',
};

/** "2 helmets", "7 tubes"; null where it was one thing, or all of one tube, whose name says more. */
function severalInWords(count: number, tubes: number, kind: RuleKind): string | null {
  const noun = MEASURED_ONE_BY_ONE[kind];
  const isByDriver = kind === 'head-room' || kind === 'harness';
  if (noun !== undefined && (isByDriver ? count > 1 : tubes > 1)) return `${count} ${noun}`;
  return tubes > 1 ? `${tubes} tubes` : null;
}

function whereInWords({ concerns, verdict, bend, bound, count, check }: Verdict, frame: Frame): string {
  const names = concerns.slice(0, verdict === 'not-met' ? MOST_NAMED : 1).map((id) => tubeName(frame, id));
  const more = concerns.length - names.length;
  const at = bend === null ? '' : `bend ${bend} of `;
  if (verdict !== 'not-met') {
    const several = severalInWords(count, concerns.length, check.kind);
    return several === null ? `${at}${names[0]!}` : `the ${bound === 'most' ? 'greatest' : 'least'} of ${several}`;
  }
  return more > 0 ? `${at}${names.join(', ')} and ${more} more` : `${at}${listed(names)}`;
}

function becauseInWords(verdict: Verdict, frame: Frame): string {
  const { because } = verdict;
  const unit = frame.job.lengthUnit;
  const names = listed(verdict.concerns.slice(0, MOST_NAMED).map((id) => tubeName(frame, id)));
  const more = verdict.concerns.length > MOST_NAMED ? ` and ${verdict.concerns.length - MOST_NAMED} more` : '';
  const who = `${names}${more}`;
  switch (because.id) {
    case 'runs-otherwise':
      return `${who} does not run ${because.way} from its upper end.`;
    case 'unsupported':
      return `No tube is coped to ${who} where it stands out farthest.`;
    case 'none-there':
      return `There is none.`;
    case 'nobody':
      return because.roles.length === 0
        ? 'There is no tube that it is about.'
        : `No tube is named ${orInWords(because.roles)}: give one that role, or draw it.`;
    case 'unnamed':
      return `Without a role: ${who}. One of them may be meant: say what each is.`;
    case 'misnamed':
      return `${who}: named ${roleInWords(roleOf(verdict, frame))}, but ${MISFITS[because.misfit]}. Mend the drawing or the role.`;
    case 'no-figure':
      return 'No figure has been typed for it.';
    case 'no-mass':
      return 'It goes by the car’s mass, and nobody has said that.';
    case 'other-mass':
      return `It is not for a car of ${massInWords(because.mass, unit)}.`;
    case 'not-answered':
      return 'Nobody has answered it.';
    case 'no-driver':
      return 'No driver has been measured: add one under Room for the driver.';
    case 'no-point':
      return because.point === 'shoulders'
        ? 'The driver’s shoulders have not been measured.'
        : 'The top of the helmet has not been measured.';
    case 'nothing-there':
      return because.roles.length === 0
        ? 'There is no tube to measure to.'
        : `No tube is named ${orInWords(because.roles)}, to measure to.`;
    case 'no-bends':
      return 'None of these tubes is bent.';
    case 'no-joint':
      return `${who} is not coped to a tube named ${orInWords(because.roles)}.`;
    case 'no-foot':
      return `No end of ${who === '' ? 'these tubes' : who} stands on a foot.`;
    case 'foot-without-size':
      return `${who} is cut to a plate of which no size is known: give the end a foot.`;
    case 'box':
      return `${who} stands on the walls of a box: it covers ${areaInWords(because.covers, unit)} of the car and touches it with ${areaInWords(because.touches, unit)}. Which counts as a plate the book has to say; then set it in the article.`;
    case 'not-flat':
      return `${who} does not lie flat, so its plane has no one lean.`;
    case 'roundness-not-measured':
      return `The diameters over the bends of ${who} have not been measured.`;
    case 'to-pad':
      return `${lengthOnTape(lengthToPad(because.stretches), unit)} on ${tubesCounted(verdict.concerns.length)} lies within ${comparedLength(because.reach, unit)} of a helmet: whether that is padded nobody can see here.`;
    case 'nothing-behind':
      return 'No part of these tubes lies behind the helmet.';
    case 'not-behind':
      return `${who} does not run behind the driver’s shoulder.`;
    case 'no-opening':
      return 'The door’s sill and the rail at the B-pillar have not both been measured.';
    case 'answered':
      return answerInWords(because.answer);
    case 'measured':
    case 'from-memory':
      return '';
  }
}

/** "Answered by the scrutineer on 2026-03-02: seen at the car." What was answered is said beside it. */
export function answerInWords({ by, on, note }: RuleAnswer): string {
  const parts = [by === '' ? 'Answered' : `Answered by ${shownName(by)}`, on === '' ? '' : `on ${shownName(on)}`];
  return `${parts.filter((part) => part !== '').join(' ')}${note === '' ? '' : `: ${shownName(note)}`}.`;
}

/** "The inspector’s word: met. Answered by Lee on 2026-03-02." of an article that is measured all the same. */
export const inspectorsWord = (answer: RuleAnswer): string =>
  `The inspector’s word: ${VERDICT_WORDS[answer.says]}. ${answerInWords(answer)}`;

/** Of the belts of a driver, left and right: "Left: strap 4.2° above level, the bar’s top 12.0 mm over the shoulder." */
export function beltInWords(
  side: 'Left' | 'Right',
  belt: { readonly angle: number; readonly height: number } | null,
  unit: LengthUnit,
): string {
  if (belt === null) return `${side}: no harness bar behind the shoulder.`;
  const { angle, height } = belt;
  return `${side}: strap ${figureInWords(Math.abs(angle), { quantity: 'angle' }, unit)} ${angle < 0 ? 'below' : 'above'} level, the bar’s top ${comparedLength(Math.abs(height), unit)} ${height < 0 ? 'under' : 'over'} the shoulder.`;
}

/** How much is to be bought, mm. */
export const lengthToPad = (stretches: readonly ToPad[]): number =>
  stretches.reduce((sum, { from, to }) => sum + to - from, 0);

const tubesCounted = (count: number): string => `${count} ${count === 1 ? 'tube' : 'tubes'}`;

const orInWords = (roles: readonly string[]): string => roles.map(roleInWords).join(' or ');

const roleOf = ({ concerns }: Verdict, { byId }: Frame): string => byId.get(concerns[0] ?? '')?.member.role ?? '';

const MISFITS: Readonly<Record<Misfit, string>> = {
  'does-not-cross': 'it does not go across the car',
  crosses: 'it goes across the car',
  straight: 'it is straight',
  'not-from-hoop': 'neither end is at the hoop',
  'not-rearward': 'it does not run rearward from the hoop',
  'not-forward': 'it does not run forward from its upper end',
  'not-level': 'it is steeper than 20 degrees',
  'not-in-hoop': 'not both of its ends are at the hoop',
  'not-along': 'it runs across the car more than along it',
};
