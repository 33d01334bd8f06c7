/** Where the tips and the throat of every coped end land on the run tube: a table after the templates, so that a line can be struck there. */
import { landingOf, type Landing } from '../../core/cope/landing.ts';
import type { SurfacePlace } from '../../core/cope/cut-pieces.ts';
import { inSpace, type Wrap } from '../../core/cope/wrap.ts';
import type { Derived } from '../../core/derive.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import { FAINT, line, words } from '../../drawing/strokes.ts';
import type { Mark } from '../../drawing/types.ts';
import { numbered } from '../../core/words/ends.ts';
import { landingParts } from '../../core/words/landing.ts';
import { endMark, type EndOf } from '../shared/wrap-words.ts';
import { READ, wholeDegrees } from './wrap-surface.ts';

export interface Landed {
  readonly end: EndOf;
  /** "Tip at −90°". */
  readonly name: string;
  readonly landing: Landing;
}

export interface Page {
  /** The ends on it; of a template that takes several sheets, which one. */
  readonly name: string;
  readonly marks: readonly Mark[];
}

/** Of one end: its tips, then its throat; none at an end that is cut to no tube. */
export function landingsOf(frame: Derived, end: EndOf, wrap: Wrap): Landed[] {
  const { tube, which } = end;
  const placed = (name: string, place: SurfacePlace): Landed[] => {
    const landing = landingOf(frame, tube, which, inSpace(tube, which, place));
    return landing === null ? [] : [{ end, name: `${name} at ${wholeDegrees(place.phi)}`, landing }];
  };
  return [...wrap.tips.flatMap((tip) => placed('Tip', tip)), ...placed('Throat', wrap.throat)];
}

const LEADING = 4.3;
/** From the left of the page's room, mm. */
const COLUMNS = [0, 11, 34, 73, 93, 125, 149] as const;
const HEADS = ['End', 'Place on it', 'lands on', 'along it', 'turned', 'from', 'along it, from that'];

/** As many rows on a page as there is room for, those of one end together; `notes` follow on the last page, or on one of their own. */
export function landingPages(
  face: Lettering,
  landed: readonly Landed[],
  notes: readonly string[],
  space: Box2,
  unit: LengthUnit,
): Page[] {
  const most = Math.floor((space.top - space.bottom - HEAD) / LEADING);
  const pages: Landed[][] = [];
  for (const [i, each] of landed.entries()) {
    const first = i === 0 || landed[i - 1]!.end !== each.end;
    const together = first ? landed.filter(({ end }) => end === each.end).length : 0;
    const page = pages.at(-1);
    if (page === undefined || page.length + together > most || page.length >= most) pages.push([each]);
    else page.push(each);
  }
  const tables = pages.map((rows) => ({
    name: 'where tips and throats land',
    marks: [...heads(space), ...rows.flatMap((row, i) => rowMarks(face, row, rows[i - 1], space, i, unit))],
  }));
  if (notes.length === 0) return tables;
  const lines = notes.flatMap((text) => wrapped(face, text, space.right - space.left, NOTE));
  const used = pages.length === 0 ? 0 : HEAD + LEADING * pages.at(-1)!.length + 2;
  const fits = used + NOTE_LEADING * lines.length <= space.top - space.bottom;
  const from = fits ? space.top - used : space.top;
  const marks = lines.map((text, i) => words('page', space.left, from - 5 - NOTE_LEADING * i, text, NOTE));
  const last = tables.at(-1);
  return last !== undefined && fits
    ? [...tables.slice(0, -1), { ...last, marks: [...last.marks, ...marks] }]
    : [...tables, { name: 'no template', marks }];
}

const NOTE = 4;
const NOTE_LEADING = 5.5;
const HEAD = 18;
const AS_READ = [
  'Along it: on the run tube’s centreline from its finished tip A. Turned: as you look along the run tube from its end A.',
  'Past its A, past its B: in the bend, from its side towards A or B.',
] as const;

const heads = ({ left, right, top }: Box2): Mark[] => [
  ...AS_READ.map((text, i) => words('page', left, top - 4 - LEADING * i, text, READ)),
  ...HEADS.map((text, i) => words('page', left + COLUMNS[i]!, top - 15, text, READ, { bold: true })),
  line(
    'page',
    [
      { x: left, y: top - 16.6 },
      { x: right, y: top - 16.6 },
    ],
    FAINT,
  ),
];

function rowMarks(
  face: Lettering,
  { end, name, landing }: Landed,
  before: Landed | undefined,
  { left, right, top }: Box2,
  row: number,
  unit: LengthUnit,
): Mark[] {
  const y = top - HEAD - LEADING * (row + 0.75);
  const { along, turned, from, place } = landingParts(landing, unit);
  const starts = before?.end !== end;
  const cells = [starts ? endMark(end) : '', name, numbered(landing.runTube), along, turned, from, place];
  return [
    ...(starts && row > 0
      ? [
          line(
            'page',
            [
              { x: left, y: y + 3.2 },
              { x: right, y: y + 3.2 },
            ],
            FAINT,
          ),
        ]
      : []),
    ...cells.flatMap((text, i) => {
      if (text === '') return [];
      const wide = (COLUMNS[i + 1] ?? right - left) - COLUMNS[i]! - 2;
      const set = shrunk(face, text, wide, READ, i === 0, 2.6);
      return [words('page', left + COLUMNS[i]!, y, set.text, set.size, { bold: i === 0 })];
    }),
  ];
}
