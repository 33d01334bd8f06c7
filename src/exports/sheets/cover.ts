/**
 * The cover: the key drawing with every tube numbered, then the table of tubes with its totals, what was found, what was not checked,
 * and the cautions.
 */
import { grouped, type Group } from '../../core/checks/grouped.ts';
import type { Derived } from '../../core/derive.ts';
import { alsoInWords } from '../../core/words/groups.ts';
import { totalMassInWords } from '../../core/units/mass.ts';
import { CAUTIONS, NOT_CHECKED, WHO_DECIDES } from '../../core/words/cautions.ts';
import { FRONT, ISOMETRIC, SIDE, TOP, type Extent, type View } from '../../drawing/projection.ts';
import { jobRevision } from '../../core/solve/revision.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { wrapped } from '../../drawing/fit.ts';
import { moved } from '../../drawing/move.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { foot, FOOT_HEIGHT, NO_TUBE } from './cautions.ts';
import type { Context } from './context.ts';
import { signedFinding } from './findings.ts';
import { FIRM, SMALL, stroke, text } from '../../drawing/ink.ts';
import { extentInView, keyView } from './key-drawing.ts';
import { contentHeight, contentWidth, fillPages, gap, paragraph, part, type Block, type Part } from './page.ts';
import { tubeTable } from './tube-table.ts';

const AGAIN_SIZE = 4.6;
const AGAIN_HEIGHT = AGAIN_SIZE * 1.3 + 3;
/** Kept free round each view for its balloons, mm. */
const AIR = 9;
const BETWEEN = 4;
const CAPTION = 5;
const NOTE_LINES = 2;
const NOTE_HEIGHT = NOTE_LINES * SMALL * 1.3 + 1;
/** From so many tubes on, the isometric view has a page of its own. */
const MANY = 60;

export function coverSheets(context: Context): Sheet[] {
  const { derived, letters, width, paper } = context;
  const heading = title(context);
  const drawing = keyDrawing(context, heading.height);
  const lists: Part[] = [
    ...tubeTable(context),
    headed(
      context,
      'Found',
      derived.findings.length === 0
        ? [NOTHING]
        : grouped(derived.findings, derived).map((each) => groupInWords(each, derived)),
    ),
    headed(
      context,
      'Not checked here',
      NOT_CHECKED.map(([what, why]) => `${what} ${why}`),
    ),
    headed(context, WHO_DECIDES, CAUTIONS),
  ];
  const again = paragraph(letters, derived.job.name, width, {
    size: AGAIN_SIZE,
    bold: true,
    most: 1,
    after: 3,
  });
  return fillPages(
    paper,
    'Cover',
    [part(heading), ...drawing.map((block) => part(block)), ...lists],
    again,
    foot(context, 'Key drawing and tube table', jobRevision(derived)),
  );
}

/** Once for a tube and its mirror image, and for all that end at one joint, as on the screen. */
export function groupInWords(group: Group, derived: Derived): string {
  const also = alsoInWords(group, derived);
  return `${signedFinding(group.first, derived)}${also === null ? '' : ` ${also}`}`;
}

export const NOTHING = 'Nothing was found. That means only that these few checks found nothing; it is no approval.';

/** Whether the table's order and its numbers go together. */
const numbering = ({ tubes }: Context['derived']): string =>
  tubes.every(({ number }, index) => number === index + 1)
    ? 'numbered in build order'
    : 'in build order, numbers given once';

export function title({ derived, letters, unit, width }: Context): Block {
  const lines = wrapped(letters, derived.job.name || 'Job without a name', width, 8, true, 2);
  const count = derived.tubes.length;
  const mass = derived.tubes.reduce((sum, tube) => sum + tube.mass, 0);
  const inUnit = unit === 'in' ? 'inches' : 'millimetres';
  return {
    height: lines.length * 9.5 + 9,
    draw: (left, top) => [
      ...lines.map((line, i) => text(left, top - 7 - i * 9.5, line, { size: 8, bold: true })),
      text(
        left,
        top - lines.length * 9.5 - 3.6,
        `${count} ${count === 1 ? 'tube' : 'tubes'}, ${totalMassInWords(mass, unit)} · lengths in ${inUnit} · ${numbering(derived)}`,
        { size: 4 },
      ),
      stroke(
        [
          { x: left, y: top - lines.length * 9.5 - 6.4 },
          { x: left + width, y: top - lines.length * 9.5 - 6.4 },
        ],
        FIRM,
      ),
    ],
  };
}

function headed({ letters, width }: Context, heading: string, rows: readonly string[]): Part {
  return {
    heading: paragraph(letters, heading, width, { size: 4.6, bold: true, after: 1.5 }),
    rows: [...rows.map((row) => paragraph(letters, row, width, { after: 1 })), gap(3)],
  };
}

interface Space {
  readonly left: number;
  /** Below the drawing's upper edge, negative. */
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The isometric view over the three others, which share one scale and line up; in a frame of many tubes it has a page of its own.
 */
export function keyDrawing({ derived: { tubes }, letters, paper }: Context, used: number): readonly Block[] {
  const width = contentWidth(paper);
  const page = contentHeight(paper) - FOOT_HEIGHT - NOTE_HEIGHT;
  if (tubes.length === 0) return [paragraph(letters, NO_TUBE, width)];
  const apart = tubes.length > MANY;
  const height = apart ? page - AGAIN_HEIGHT : page - used;
  const [side, front, top] = [SIDE, FRONT, TOP].map((view) => extentInView(tubes, view)) as [Extent, Extent, Extent];
  const scale = Math.min(
    (width - BETWEEN - 4 * AIR) / (wide(side) + wide(front)),
    ((apart ? 1 : 0.56) * height - BETWEEN - 2 * (2 * AIR + CAPTION)) / (high(side) + high(top)),
  );
  const left = wide(front) * scale + 2 * AIR;
  const right = { left: left + BETWEEN, width: width - left - BETWEEN };
  const [upper, lower] = [top, side].map((extent) => high(extent) * scale + 2 * AIR + CAPTION) as [number, number];
  const iso = apart ? page - used : height - upper - lower - BETWEEN;
  const from = apart ? 0 : -iso;
  const fromIso = drawView(
    tubes,
    'Isometric, from the left in front',
    ISOMETRIC,
    { left: 0, top: 0, width, height: iso },
    null,
  );
  const others = [
    drawView(tubes, 'From above', TOP, { ...right, top: from, height: upper }, scale),
    drawView(
      tubes,
      'From the front',
      FRONT,
      { left: 0, top: from - upper - BETWEEN, width: left, height: lower },
      scale,
    ),
    drawView(tubes, 'From the left', SIDE, { ...right, top: from - upper - BETWEEN, height: lower }, scale),
  ];
  const lost = fromIso.unnumbered.filter((number) => others.every(({ unnumbered }) => unnumbered.includes(number)));
  const note = paragraph(letters, keyNote(lost), width, { most: NOTE_LINES });
  const rest = [...others.flatMap(({ marks }) => marks), ...note.draw(0, -height)];
  const block = (marks: readonly Mark[], high: number): Block => ({ height: high, draw: (x, y) => moved(marks, x, y) });
  return apart
    ? [block(fromIso.marks, iso), block(rest, height + NOTE_HEIGHT)]
    : [block([...fromIso.marks, ...rest], height + NOTE_HEIGHT)];
}

const wide = ({ left, right }: Extent): number => right - left;
const high = ({ low, high: top }: Extent): number => top - low;

/** One view in the middle of its space, at the scale given or as large as there is room for. */
function drawView(
  tubes: readonly SolvedTube[],
  name: string,
  view: View,
  space: Space,
  fixed: number | null,
): ReturnType<typeof keyView> {
  const extent = extentInView(tubes, view);
  const fits = Math.min(
    (space.width - 2 * AIR) / Math.max(wide(extent), 1),
    (space.height - 2 * AIR - CAPTION) / Math.max(high(extent), 1),
  );
  const scale = fixed ?? fits;
  const laid = {
    scale,
    x: space.left + space.width / 2 - ((extent.left + extent.right) / 2) * scale,
    y: space.top - (space.height + CAPTION) / 2 - ((extent.low + extent.high) / 2) * scale,
  };
  const bounds = {
    left: space.left,
    right: space.left + space.width,
    high: space.top - CAPTION,
    low: space.top - space.height,
  };
  const { marks, unnumbered } = keyView(tubes, view, laid, bounds);
  return { marks: [...marks, text(space.left, space.top - 3.6, name)], unnumbered };
}

/** How the drawing is read, under it. */
const keyNote = (lost: readonly number[]): string =>
  lost.length === 0
    ? 'Third angle. Front, side and top share one scale; sizes are not to be taken from the drawing. The number of each tube is that of its sheet.'
    : `No room for the numbers ${lost.join(', ')}: see their own sheets.`;
