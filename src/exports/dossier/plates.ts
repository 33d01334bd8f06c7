/** What the cage stands on the car with, and its gussets. */
import { contactArea, coveredArea } from '../../core/feet/amount.ts';
import { standsOf } from '../../core/feet/stand.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { gussetsOf, isMade } from '../../core/gusset/gussets.ts';
import type { Foot } from '../../core/job/kinds/foot.ts';
import { tubeNearest } from '../../core/solve/bar-tubes.ts';
import { formatLength } from '../../core/units/length.ts';
import { holesInWords } from '../../core/words/dossier.ts';
import { areaInWords, sizeInWords } from '../../core/words/feet.ts';
import { whyNoGusset } from '../../core/words/gussets.ts';
import { tubeName } from '../../core/solve/names.ts';
import { gussetName } from '../shared/stand-name.ts';
import { endMark } from '../shared/wrap-words.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { TICKS } from './joints.ts';
import { opened, said } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';

const FEET: readonly Column[] = [
  { name: 'Foot', share: 0.2, bold: true },
  { name: 'Under', share: 0.1 },
  { name: 'Size', share: 0.17 },
  { name: 'Thickness', share: 0.12 },
  { name: 'Covers', share: 0.11, figures: true },
  { name: 'Touches the car', share: 0.12, figures: true },
  { name: 'Holes for bolts', share: 0.18 },
];

const FEET_ARE =
  'A plate covers what it touches: its size less its holes. A box covers its whole size and touches the car with the foot of its walls alone; which of the two counts as a plate the rule book says. Holes: how many, of which diameter; each takes a bolt. Bolts, nuts and plates behind are not in the job.';

export function feetPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const stands = derived.tubes.flatMap(standsOf);
  const rows = derived.job.feet.flatMap((foot, i) => {
    const on = stands.filter((stand) => stand.foot.id === foot.id);
    if (on.length === 0) return [];
    return [
      [
        `F${i + 1} ${foot.name}`,
        on.map(endMark).join(', '),
        `${foot.kind}, ${sizeInWords(foot.size, unit)}${foot.kind === 'box' ? `, ${shown(context, foot.height)} high` : ''}`,
        thickness(context, foot),
        areaInWords(coveredArea(foot), unit),
        areaInWords(contactArea(foot), unit),
        holesInWords(foot, unit),
      ],
    ];
  });
  return [
    opened(
      context,
      'Plates and boxes',
      rows.length === 0 ? [] : [FEET_ARE],
      rows.length === 0 ? said(context, 'No end stands on a foot of the job.') : table(context, FEET, rows),
    ),
  ];
}

const shown = ({ unit }: Context, mm: number): string => `${formatLength(mm, unit).text} ${unit}`;

const thickness = (context: Context, foot: Foot): string =>
  foot.kind === 'box' && foot.wall !== undefined && foot.wall !== foot.thickness
    ? `${shown(context, foot.thickness)}, walls ${shown(context, foot.wall)}`
    : shown(context, foot.thickness);

const GUSSETS: readonly Column[] = [
  { name: 'Gusset', share: 0.22, bold: true },
  { name: 'Between', share: 0.14 },
  { name: 'Legs', share: 0.2 },
  { name: 'Sheet', share: 0.2 },
  ...TICKS,
];

export function gussetsPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const sets = gussetsOf(derived);
  const rows = sets.flatMap((set) => {
    const { gusset, ways, made, place } = set;
    if (!isMade(made)) return [];
    const [x, y] = extentOf(made.sheet.edges);
    const numbers = ways.map(({ bar }) => tubeNearest(derived.byId, bar, place).number);
    return [
      [
        gussetName(set),
        [...new Set(numbers)].join(' and '),
        gusset.between.map(({ leg }) => shown(context, leg)).join(' and '),
        `${gusset.kind}, ${sizeInWords([x[1] - x[0], y[1] - y[0]], unit)}, ${shown(context, gusset.thickness)} thick`,
      ],
    ];
  });
  const not = sets.flatMap((set) =>
    isMade(set.made)
      ? []
      : [`${gussetName(set)} is left out: ${whyNoGusset(set.made, unit, (bar) => tubeName(derived, bar))}`],
  );
  return [
    opened(
      context,
      'Gussets',
      [],
      rows.length === 0 ? said(context, 'The job has no gusset that can be made.') : table(context, GUSSETS, rows),
    ),
    ...(not.length === 0 ? [] : [said(context, ...not)]),
  ];
}
