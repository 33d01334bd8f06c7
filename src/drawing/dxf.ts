/**
 * A drawing as a DXF file (AC1021, which is UTF-8): model space in millimetres at full size, layers by name. Lines of two
 * places are LINE, of more LWPOLYLINE, closed where they are; arcs ARC and CIRCLE; words TEXT. Pens and fills stay behind:
 * how a layer is cut or drawn is set at the machine.
 */
import {
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { isCircle } from './move.ts';
import { plainLine } from '../core/job/plain-line.ts';
import type { Arc, Line, Mark, Sheet, Words } from './types.ts';

/** A layer's name (capitals, figures, underlines) and its colour number: 1 red, 3 green, 5 blue, 7 black or white, 8 grey. */
export interface DxfLayer {
  readonly name: string;
  readonly colour: number;
}

/** Height of a capital by the letter's body, which is what DXF calls a text's height. */
const CAPITAL = 0.72;

/** The file's text. Every layer that a mark names must be among `layers`. */
export function dxfText({ width, height, marks }: Omit<Sheet, 'name'>, layers: readonly DxfLayer[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Cagewright' });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: width, 20: height, 30: 0 });
  for (const { name, colour } of layers) dxf.addLayer(name, colour, 'Continuous');
  for (const mark of marks) put(dxf, mark);
  return dxf.stringify();
}

function put(dxf: DxfWriter, mark: Mark): void {
  if (mark.kind === 'line') putLine(dxf, mark);
  else if (mark.kind === 'arc') putArc(dxf, mark);
  else putWords(dxf, mark);
}

function putLine(dxf: DxfWriter, { places, closed, pen, layer }: Line): void {
  if (pen === null) return;
  const [from, to] = places;
  if (places.length === 2 && !closed) {
    dxf.addLine(point3d(from!.x, from!.y), point3d(to!.x, to!.y), { layerName: layer });
    return;
  }
  const flags = closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
  const vertices = places.map(({ x, y }) => ({ point: point2d(x, y) }));
  dxf.addLWPolyline(vertices, { flags, layerName: layer });
}

function putArc(dxf: DxfWriter, arc: Arc): void {
  const { centre, radius, from, to, layer } = arc;
  const middle = point3d(centre.x, centre.y);
  if (isCircle(arc)) dxf.addCircle(middle, radius, { layerName: layer });
  else dxf.addArc(middle, radius, degrees(from), degrees(to), { layerName: layer });
}

const degrees = (angle: number): number => ((((angle * 180) / Math.PI) % 360) + 360) % 360;

const ALIGNMENT = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

function putWords(dxf: DxfWriter, { at, text, size, anchor, turn, layer }: Words): void {
  const place = point3d(at.x, at.y);
  dxf.addText(place, size * CAPITAL, plain(text), {
    layerName: layer,
    rotation: (turn * 180) / Math.PI,
    ...(anchor !== 'start' && {
      horizontalAlignment: ALIGNMENT[anchor],
      verticalAlignment: TextVerticalAlignment.BaseLine,
      secondAlignmentPoint: place,
    }),
  });
}

/** In DXF text, two per cent signs, a caret and a backslash before U or M are commands; a typed name must stay a name. */
const plain = (text: string): string =>
  plainLine(text)
    .replace(/%(?=%)/gu, '% ')
    .replaceAll('^', '^ ')
    .replace(/\\(?=[UuMm]\+)/gu, '\\ ');
