/**
 * The flat pattern of one end, for a machine: what is wound on and kept, closed, between cut line and baseline. Millimetres
 * from its lower left corner, printed side up. Layers: CUT is cut, MARK is scored or drawn, TEXT is words. Where nothing
 * reaches a part of the way round there is no closed pattern: the open pieces of line lie on CUT_OPEN.
 */
import { errorsOf, faultInWords } from '../core/checks/faults.ts';
import type { Derived } from '../core/derive.ts';
import { toRadians, wrapHalfTurn } from '../core/geometry/angle.ts';
import type { LengthUnit } from '../core/job/types.ts';
import { cutAt, unroll, type Wrap } from '../core/shop/wrap.ts';
import { shrunk } from './drawing/fit.ts';
import { unknownFace } from './drawing/plain-line.ts';
import { HAIR, line, shape, words } from './drawing/strokes.ts';
import type { Mark, Sheet } from './drawing/types.ts';
import { endMark, fitInWords, lengthInWords, numbered, zeroLabel, type EndOf } from './wrap-words.ts';

const TICK = 4;
const SMALL = 2.8;

/** As a sheet that just holds it. */
export function wrapPattern(frame: Derived, end: EndOf, wrap: Wrap, unit: LengthUnit): Sheet {
  const height = wrap.baseline - wrap.lower;
  return {
    name: `${endMark(end)} ${end.tube.name}`,
    width: wrap.width,
    height,
    marks: [...cutMarks(wrap, height), ...degreeMarks(end, wrap, height), ...patternWords(frame, end, wrap, unit)],
  };
}

function cutMarks(wrap: Wrap, height: number): Mark[] {
  const pieces = wrap.pieces.map((piece) => piece.map((place) => unroll(wrap, place)));
  const corners = [
    { x: wrap.width, y: height },
    { x: 0, y: height },
  ];
  if (wrap.closed) return [shape('CUT', [...pieces[0]!, ...corners], HAIR, null)];
  return [
    ...pieces.filter((piece) => piece.length > 1).map((piece) => line('CUT_OPEN', piece, HAIR)),
    line('MARK', corners, HAIR),
  ];
}

/** The reference from cut line to baseline, ticks at the quarters, and a short one at each tip. */
function degreeMarks(end: EndOf, wrap: Wrap, height: number): Mark[] {
  const quarters = [-270, -180, -90, 0, 90, 180, 270].map((degrees) => toRadians(degrees));
  const inside = quarters.filter((phi) => phi > wrap.left + 0.01 && phi < wrap.left + 2 * Math.PI - 0.01);
  return [
    ...inside.flatMap((phi): Mark[] => {
      const { x } = unroll(wrap, { phi, s: 0 });
      const degree = Math.round((wrapHalfTurn(phi) * 180) / Math.PI);
      const label = String(degree).replace('-', '−');
      const foot = phi === 0 ? (cutAt(wrap, 0) ?? wrap.baseline) - wrap.lower : height - TICK;
      return [
        line(
          'MARK',
          [
            { x, y: foot },
            { x, y: height },
          ],
          HAIR,
        ),
        words('TEXT', x + 1, height - (phi === 0 ? 7.5 : 3), phi === 0 ? zeroLabel(end) : `${label}°`, SMALL),
      ];
    }),
    ...wrap.tips.map((tip) => {
      const { x, y } = unroll(wrap, tip);
      return line(
        'MARK',
        [
          { x, y: y + 1 },
          { x, y: y + 1 + TICK },
        ],
        HAIR,
      );
    }),
  ];
}

/** In the wider part beside the reference line, under the degrees. */
function patternWords(frame: Derived, end: EndOf, wrap: Wrap, unit: LengthUnit): Mark[] {
  const zero = unroll(wrap, { phi: 0, s: 0 }).x;
  const [from, to] = zero >= wrap.width / 2 - 1e-9 ? [0, zero] : [zero, wrap.width];
  const [left, room] = [from + 3, to - from - 6];
  const top = wrap.baseline - wrap.lower;
  const edge = `this edge ${lengthInWords(wrap.baseline - wrap.blankEnd, unit)} from the sawn end`;
  const open = wrap.closed ? [] : ['OPEN: part of the way round nothing is cut'];
  const errors = errorsOf(frame.findings, end.tube.id);
  const faults = errors.length > 0 ? [`! ${faultInWords(errors)}: see the checks`] : [];
  const lines = [...faults, numbered(end.tube), fitInWords(frame, end), edge, ...open];
  const put = (text: string, size: number, y: number, bold: boolean) => {
    const fitted = shrunk(unknownFace, text, room, size, bold, 2);
    return words('TEXT', left, y, fitted.text, fitted.size, { bold });
  };
  return [
    put(endMark(end), 6, top - 10, true),
    ...lines.map((text, i) => put(text, SMALL, top - 13.5 - 3.4 * i, false)),
  ];
}
