/**
 * The flat pattern of one end, for a machine: what is wound on and kept, closed, between cut line and baseline. Millimetres
 * from its lower left corner, printed side up. Layers: CUT is cut, MARK is scored or drawn, TEXT is words. Where nothing
 * reaches a part of the way round there is no closed pattern: the open pieces of line lie on CUT_OPEN.
 */
import { errorsOf, faultInWords } from '../../core/checks/faults.ts';
import type { Derived } from '../../core/derive.ts';
import { toRadians, wrapHalfTurn } from '../../core/geometry/angle.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { cutAt, unroll, widerSide, type Wrap } from '../../core/cope/wrap.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import { unknownFace } from '../../drawing/unknown-face.ts';
import { HAIR, line, shape, words } from '../../drawing/strokes.ts';
import type { Mark, Sheet } from '../../drawing/types.ts';
import { numbered } from '../../core/words/ends.ts';
import { endMark, fitInWords, lengthInWords, sawnEnd, zeroLabel, type EndOf } from '../shared/wrap-words.ts';

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
      const label = phi === 0 ? zeroLabel(end) : `${String(degree).replace('-', '−')}°`;
      const foot = phi === 0 ? (cutAt(wrap, 0) ?? wrap.baseline) - wrap.lower : height - TICK;
      const beyond = x + 1 + unknownFace.width(label, SMALL, false) > wrap.width;
      return [
        line(
          'MARK',
          [
            { x, y: foot },
            { x, y: height },
          ],
          HAIR,
        ),
        words('TEXT', beyond ? x - 1 : x + 1, height - (phi === 0 ? 7.5 : 3), label, SMALL, {
          anchor: beyond ? 'end' : 'start',
        }),
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
  const [from, to] = widerSide(wrap);
  const [left, space] = [from + 3, to - from - 6];
  const top = wrap.baseline - wrap.lower;
  const edge = `this edge ${lengthInWords(wrap.baseline - wrap.blankEnd, unit)} from ${sawnEnd(frame, end)}`;
  const open = wrap.closed ? [] : ['OPEN: part of the way round nothing is cut'];
  const errors = errorsOf(frame.findings, end.tube.id);
  const faults = errors.length > 0 ? [`! ${faultInWords(errors)}: see the checks`] : [];
  const lines = [
    ...[...faults, edge, 'printed side out', ...open].flatMap((text) => wrapped(unknownFace, text, space, SMALL)),
    shrunk(unknownFace, numbered(end.tube), space, SMALL, false, SMALL).text,
    ...wrapped(unknownFace, fitInWords(frame, end), space, SMALL, false, 3),
  ];
  return [
    words('TEXT', left, top - 10, endMark(end), 6, { bold: true }),
    ...lines.map((text, i) => words('TEXT', left, top - 13.5 - 3.4 * i, text, SMALL)),
  ];
}
