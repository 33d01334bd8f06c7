/** The welds to tick, and where a hole or a gauge has room. */
import { asksForPlace, holePlace } from '../../core/dossier/hole-places.ts';
import { weldList } from '../../core/dossier/weld-list.ts';
import {
  HOLES_ARE,
  holePlaceInWords,
  JOINTS_ARE,
  NO_ROOM,
  weldedTubes,
  weldInWords,
  whereWelded,
} from '../../core/words/dossier.ts';
import { numbered } from '../../core/words/ends.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';

export const TICKS: readonly Column[] = [
  { name: 'Tacked', share: 0.075, tick: true },
  { name: 'Welded', share: 0.075, tick: true },
  { name: 'Looked at', share: 0.09, tick: true },
];

const COLUMNS: readonly Column[] = [
  { name: 'Joint', share: 0.06, bold: true },
  { name: 'Tubes', share: 0.12, bold: true },
  { name: 'How the end is cut', share: 0.32 },
  { name: 'Where', share: 0.26 },
  ...TICKS,
];

export function jointsPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const all = weldList(derived);
  const welds = all.filter(({ kind }) => kind !== 'none');
  const loose = all.filter(({ kind }) => kind === 'none').map(weldedTubes);
  const rows = welds.map((weld, i) => [
    String(i + 1),
    weldedTubes(weld),
    weldInWords(derived, weld),
    whereWelded(derived, weld, unit),
  ]);
  const near = derived.gaps.map(({ tubes, distance }) => {
    const [a, b] = tubes.map((id) => derived.byId.get(id)!.number);
    return `${a} and ${b} ${distance < 0 ? `run ${lengthInWords(-distance, unit)} into each other` : `come within ${lengthInWords(distance, unit)}`}`;
  });
  return [
    opened(
      context,
      'Joints',
      [JOINTS_ARE],
      rows.length === 0 ? said(context, 'No end meets anything.') : table(context, COLUMNS, rows),
    ),
    said(
      context,
      ...(loose.length === 0 ? [] : [`Cut square, and on no other tube: ${loose.join(', ')}.`]),
      ...(near.length === 0 ? [] : [`Tubes that are not joined and come near: ${near.join('; ')}.`]),
    ),
  ];
}

const HOLES: readonly Column[] = [
  { name: 'Tube', share: 0.26, bold: true },
  { name: 'A place with room', share: 0.58 },
  { name: 'Clear', share: 0.16, figures: true },
];

export function holesPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const tubes = derived.tubes.filter(asksForPlace);
  const rows = tubes.map((tube) => {
    const place = holePlace(derived, tube);
    return place === null
      ? [numbered(tube), NO_ROOM, '–']
      : [numbered(tube), holePlaceInWords(tube, place, unit), `± ${lengthInWords(place.clear, unit)}`];
  });
  return [
    opened(
      context,
      'Places for a hole or a gauge',
      [HOLES_ARE],
      rows.length === 0
        ? said(context, 'No tube has the role of a hoop, a rear stay or a front leg.')
        : table(context, HOLES, rows),
    ),
  ];
}
