/** The bends as they were made: what was measured on them beside the drawing. */
import { toDegrees, toRadians, wrapHalfTurn } from '../../core/geometry/angle.ts';
import type { BentBend, BentTube } from '../../core/job/kinds/bent.ts';
import { pulledTo } from '../../core/job/read-by-hand.ts';
import { toBeBent } from '../../core/run/laid-out.ts';
import { bendRun, isOfOtherBends, type BendRun } from '../../core/run/run.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { decimalLength } from '../../core/units/length.ts';
import { BENDS_ARE } from '../../core/words/dossier.ts';
import { numbered } from '../../core/words/ends.ts';
import { ROTATION_SIGN } from '../../core/words/turns.ts';
import { checkInWords, movedInWords, wayInWords } from '../../core/words/run.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said, under } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';

const COLUMNS: readonly Column[] = [
  { name: 'Bend', share: 0.05, bold: true },
  { name: 'Angle, drawn', share: 0.08, figures: true },
  { name: 'Net, measured', share: 0.1, figures: true, bold: true },
  { name: 'Off', share: 0.07, figures: true },
  { name: 'Pulled', share: 0.08, figures: true },
  { name: 'Turn, drawn', share: 0.08, figures: true },
  { name: 'Turn, measured', share: 0.125, figures: true },
  { name: 'Straight before', share: 0.12, figures: true },
  { name: 'Straight, measured', share: 0.12, figures: true },
  { name: 'Across', share: 0.175, figures: true },
];

export function bentPart(context: Context): readonly Part[] {
  const { derived } = context;
  const bent = derived.tubes.filter(({ bends }) => bends.length > 0);
  if (bent.length === 0) return [opened(context, 'Bends', [], said(context, 'No tube of this cage is bent.'))];
  const [first, ...rest] = bent.map((tube) => tubePart(context, tube));
  return [opened(context, 'Bends', [BENDS_ARE, ROTATION_SIGN], first!), ...rest];
}

function tubePart(context: Context, drawn: SolvedTube): Part {
  const { derived, unit } = context;
  const run = derived.job.bent.find(({ tube }) => tube === drawn.id);
  const tube = toBeBent(drawn, run);
  const progress = run && bendRun(tube, run, feedOf(derived.job, tube));
  const counts = run !== undefined && progress !== undefined && !isOfOtherBends(progress);
  const made = counts ? run.bends : [];
  const rows = tube.bends.map((_, i) =>
    bendRow(
      tube,
      i,
      made.find(({ bend }) => bend === i + 1),
      unit,
    ),
  );
  const last = tube.straights.at(-1)!;
  const endB = ['B', '', '', '', '', '', '', lengthInWords(last, unit), '', ''];
  const list = table(context, COLUMNS, [...rows, endB]);
  const sentences = counts ? asMade(context, tube, run, progress) : [run === undefined ? NOT_BENT : OTHER_BENDS];
  const head = under(context, numbered(tube), ...sentences);
  // A tube's bends stand under its name.
  return { ...list, opening: head };
}

const NOT_BENT = 'No bend run was noted: as drawn.';
const OTHER_BENDS = 'What was noted is of other bends than are drawn now, and is left out.';

function asMade(context: Context, tube: SolvedTube, run: BentTube, { asBent, steps }: BendRun): readonly string[] {
  const { unit } = context;
  if (run.bends.length === 0) return ['Its run was begun; no bend was read yet.'];
  const way = wayInWords(tube.corners.at(-1)!, asBent.endB, unit);
  const checks = steps.flatMap((step) =>
    step.kind === 'check'
      ? step.checks.flatMap(({ predicted, measured }) =>
          measured === null
            ? []
            : [
                `${checkInWords(predicted)} ${lengthInWords(measured, unit)}, reckoned ${lengthInWords(predicted.value, unit)}`,
              ],
        )
      : [],
  );
  return [
    `As bent, with end A held, end B lies ${movedInWords(asBent.endMoves, unit)} from where it is drawn${way === '' ? '' : `: ${way}`}.`,
    ...(run.stands === true ? ['In this dossier the tube stands as it came out.'] : []),
    ...(checks.length === 0 ? [] : [`Measured by tape: ${checks.join('; ')}.`]),
  ];
}

function bendRow(tube: SolvedTube, i: number, made: BentBend | undefined, unit: Context['unit']): readonly string[] {
  const bend = tube.bends[i]!;
  const planned = toDegrees(bend.angle);
  const pulled = pulledTo(made);
  const degrees = (value: number | null | undefined): string => (value == null ? '–' : `${formatAngle(value, 1)}°`);
  const turn = toDegrees(bend.rotation);
  return [
    String(i + 1),
    degrees(planned),
    made === undefined ? '–' : `${degrees(made.net)}${made.fitted === true ? ' t' : ''}`,
    made === undefined ? '–' : signed(made.net - planned),
    degrees(pulled),
    i === 0 ? '' : degrees(turn),
    i === 0
      ? ''
      : made?.rotation === undefined
        ? '–'
        : `${degrees(made.rotation)} (${signed(apart(made.rotation, turn))})`,
    lengthInWords(tube.straights[i]!, unit),
    made?.straight === undefined ? '–' : lengthInWords(made.straight, unit),
    acrossInWords(made?.across, tube.section.outerDiameter, unit),
  ];
}

const apart = (one: number, other: number): number => toDegrees(wrapHalfTurn(toRadians(one - other)));

/** "43.1–45.6, 5.6 %". */
function acrossInWords(across: BentBend['across'], diameter: number, unit: Context['unit']): string {
  if (across === undefined) return '–';
  const [least, greatest] = across.map((mm) => decimalLength(mm, unit, unit === 'in' ? 3 : 1));
  return `${least}–${greatest}, ${(((across[1] - across[0]) / diameter) * 100).toFixed(1)} %`;
}

function signed(degrees: number): string {
  const shown = formatAngle(degrees, 1);
  return `${degrees > 0 && Number(shown) !== 0 ? '+' : ''}${shown}°`;
}
