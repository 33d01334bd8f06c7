/**
 * The cover: the key drawing with every tube numbered, then the table of tubes with its totals, what was found, what was not checked,
 * and the cautions.
 */
import { CAUTIONS, NOT_CHECKED, WHO_DECIDES } from '../../core/checks/cautions.ts';
import { FRONT, ISOMETRIC, SIDE, TOP, type View } from '../drawing/projection.ts';
import { wrapped } from '../drawing/fit.ts';
import type { Mark, Sheet } from '../drawing/types.ts';
import { foot } from './cautions.ts';
import type { Context } from './context.ts';
import { findingWords } from './findings.ts';
import { FIRM, SMALL, stroke, text } from './ink.ts';
import { extentInView, keyView } from './key-drawing.ts';
import { contentWidth, fillPages, gap, MARGIN, paragraph, part, type Block, type Part } from './page.ts';
import { tubeTable } from './tube-table.ts';

/** Kept free round each view for its balloons, mm. */
const AIR = 9;
const BETWEEN = 4;
const CAPTION = 5;

export function coverSheets(context: Context): Sheet[] {
  const { derived, letters, width, paper } = context;
  const drawing = keyDrawing(context, title(context).height);
  const lists: Part[] = [
    tubeTable(context),
    headed(context, 'Found', derived.findings.length === 0 ? [NOTHING] : derived.findings.map(findingWords)),
    headed(
      context,
      'Not checked here',
      NOT_CHECKED.map(([what, why]) => `${what} ${why}`),
    ),
    headed(context, WHO_DECIDES, CAUTIONS),
  ];
  const again = paragraph(letters, derived.job.name, width, { size: 4.6, bold: true, most: 1, after: 3 });
  return fillPages(
    paper,
    'Cover',
    [part(title(context)), part(drawing), ...lists],
    again,
    foot(context, 'Key drawing and tube table'),
  );
}

const NOTHING = 'Nothing was found. That means only that these few checks found nothing; it is no approval.';

function title({ derived, letters, unit, width }: Context): Block {
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
        `${count} ${count === 1 ? 'tube' : 'tubes'}, ${mass.toFixed(1)} kg · lengths in ${inUnit} · numbered in build order`,
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

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The isometric view over the three others, which share one scale and line up. */
function keyDrawing({ derived: { tubes }, letters, paper }: Context, titled: number): Block {
  const width = contentWidth(paper);
  const height = paper.height - 2 * MARGIN - titled - 11;
  if (tubes.length === 0) return paragraph(letters, 'There is no tube yet.', width);
  const [side, front, top] = [SIDE, FRONT, TOP].map((view) => extentInView(tubes, view));
  const wide = (extent: typeof side) => extent!.right - extent!.left;
  const high = (extent: typeof side) => extent!.high - extent!.low;
  const framed = 2 * AIR;
  const scale = Math.min(
    (width - BETWEEN - 2 * framed) / (wide(side) + wide(front)),
    (height * 0.56 - BETWEEN - 2 * (framed + CAPTION)) / (high(side) + high(top)),
  );
  const [left, right] = [wide(front) * scale + framed, width - wide(front) * scale - framed - BETWEEN];
  const [upper, lower] = [high(top) * scale + framed + CAPTION, high(side) * scale + framed + CAPTION];
  const iso = height - upper - lower - BETWEEN;
  return {
    height,
    draw: (x, y) => {
      const views: readonly (readonly [string, View, Box, number | null])[] = [
        ['Isometric, from the left in front', ISOMETRIC, { left: x, top: y, width, height: iso }, null],
        ['From above', TOP, { left: x + left + BETWEEN, top: y - iso, width: right, height: upper }, scale],
        ['From the front', FRONT, { left: x, top: y - iso - upper - BETWEEN, width: left, height: lower }, scale],
        [
          'From the left',
          SIDE,
          { left: x + left + BETWEEN, top: y - iso - upper - BETWEEN, width: right, height: lower },
          scale,
        ],
      ];
      const drawn = views.map(([name, view, box, fixed]) => {
        const extent = extentInView(tubes, view);
        const own = Math.min((box.width - framed) / wide(extent), (box.height - framed - CAPTION) / high(extent));
        const by = fixed ?? own;
        const middle = { x: box.left + box.width / 2, y: box.top - CAPTION - (box.height - CAPTION) / 2 };
        const laid = {
          scale: by,
          x: middle.x - ((extent.left + extent.right) / 2) * by,
          y: middle.y - ((extent.low + extent.high) / 2) * by,
        };
        const room = {
          left: box.left,
          right: box.left + box.width,
          high: box.top - CAPTION,
          low: box.top - box.height,
        };
        const { marks, unnumbered } = keyView(tubes, view, laid, room);
        return { marks: [...marks, text(box.left, box.top - 3.6, name)], unnumbered };
      });
      const lost = [...new Set(drawn.flatMap(({ unnumbered }) => unnumbered))].filter((number) =>
        drawn.every(({ unnumbered }) => unnumbered.includes(number)),
      );
      const key = paragraph(letters, keyNote(lost), left - 4, { most: Math.floor((upper - 8) / (SMALL * 1.3)) });
      return [...drawn.flatMap(({ marks }): readonly Mark[] => marks), ...key.draw(x, y - iso - CAPTION)];
    },
  };
}

/** How the drawing is read, in the corner that its views leave free. */
const keyNote = (lost: readonly number[]): string =>
  lost.length === 0
    ? 'Third angle. Front, side and top share one scale; sizes are not to be taken from the drawing. The number of each tube is that of its sheet.'
    : `No room for the numbers ${lost.join(', ')}: see their own sheets.`;
