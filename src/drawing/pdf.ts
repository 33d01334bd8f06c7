/**
 * Sheets as one PDF, in vectors, with the two typefaces embedded as far as they are used. It holds no script, no link and no
 * date: the same sheets are the same bytes. A finished page is written out before the next is begun.
 */
import type { Going } from './going.ts';
import { inOrderSeen, type Typefaces } from './lettering.ts';
import { chorded, isCircle } from './move.ts';
import type { Arc, Grey, Line, Mark, Pen, Place2, Sheet, Words } from './types.ts';

const POINTS_PER_MM = 72 / 25.4;

/** A JPEG on a sheet: its upper left corner, and how large, mm. */
export interface Image {
  /** Baseline or progressive, of one colour or three. */
  readonly bytes: Uint8Array;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet with pictures that lie under its marks. */
export interface PictureSheet extends Sheet {
  readonly images?: readonly Image[];
}

/**
 * The document's bytes. `groups` are made one after the other, `going` is awaited before each and after the last; if it
 * rejects, this rejects with the same. Distances hold to 0.001 mm.
 */
export async function writePdf(
  title: string,
  { settable, open }: Typefaces,
  groups: readonly (() => readonly PictureSheet[])[],
  going: Going,
): Promise<Uint8Array> {
  const document = open(title);
  const chunks: Uint8Array[] = [];
  document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise((resolve, reject) => document.on('end', resolve).on('error', reject));
  for (const [done, group] of groups.entries()) {
    // Each group waits for the one before it, so that the page can breathe.
    await going(done, groups.length);
    for (const sheet of group()) drawSheet(document, sheet, settable);
  }
  await going(groups.length, groups.length);
  document.end();
  await ended;
  return joined(chunks);
}

type Document = PDFKit.PDFDocument;

function drawSheet(
  document: Document,
  { width, height, marks, images = [] }: PictureSheet,
  settable: (text: string) => string,
): void {
  document.addPage({ size: [width * POINTS_PER_MM, height * POINTS_PER_MM], margin: 0 });
  document.lineJoin('round');
  const at = ({ x, y }: Place2): [number, number] => [x * POINTS_PER_MM, (height - y) * POINTS_PER_MM];
  for (const { bytes, left, top, ...size } of images) {
    const [x, y] = at({ x: left, y: top });
    document.image(bytes as unknown as ArrayBuffer, x, y, {
      // its types leave out what it takes
      width: size.width * POINTS_PER_MM,
      height: size.height * POINTS_PER_MM,
    });
  }
  for (const mark of marks) drawMark(document, mark, at, settable);
}

function drawMark(
  document: Document,
  mark: Mark,
  at: (place: Place2) => [number, number],
  settable: (text: string) => string,
): void {
  switch (mark.kind) {
    case 'line':
      drawLine(document, mark, at);
      return;
    case 'arc':
      drawArc(document, mark, at);
      return;
    case 'words':
      drawWords(document, { ...mark, text: inOrderSeen(settable(mark.text)) }, at(mark.at));
  }
}

function drawLine(
  document: Document,
  { places, closed, pen, fill }: Line,
  at: (place: Place2) => [number, number],
): void {
  if (places.length < 2 || (pen === null && fill === null)) return;
  places.forEach((place, i) => (i === 0 ? document.moveTo(...at(place)) : document.lineTo(...at(place))));
  if (closed) document.closePath();
  if (pen !== null) takePen(document, pen);
  if (fill !== null) document.fillColor(shade(fill));
  if (pen !== null && fill !== null) document.fillAndStroke();
  else if (pen !== null) document.stroke();
  else document.fill();
}

function drawArc(document: Document, arc: Arc, at: (place: Place2) => [number, number]): void {
  if (!isCircle(arc)) return drawLine(document, chorded(arc), at);
  takePen(document, arc.pen);
  document.circle(...at(arc.centre), arc.radius * POINTS_PER_MM).stroke();
}

function drawWords(
  document: Document,
  { text, size, anchor, turn, bold, grey }: Words,
  [x, y]: [number, number],
): void {
  if (text === '') return;
  document
    .font(bold ? 'bold' : 'regular')
    .fontSize(size * POINTS_PER_MM)
    .fillColor(shade(grey));
  const back = { start: 0, middle: 0.5, end: 1 }[anchor] * document.widthOfString(text);
  document.text(text, x - back * Math.cos(turn), y + back * Math.sin(turn), {
    lineBreak: false,
    baseline: 'alphabetic',
    ...(turn === 0 ? {} : { rotation: (turn * 180) / Math.PI }),
  });
}

function takePen(document: Document, { width, grey, dash }: Pen): void {
  document.lineWidth(width * POINTS_PER_MM).strokeColor(shade(grey));
  if (dash === undefined) document.undash();
  else document.dash(dash.map((length) => length * POINTS_PER_MM) as unknown as number, {}); // its types know one dash only
}

/** Black ink alone: a colour of three would print in colour, and out of register. */
const shade = (grey: Grey): [number, number, number, number] => [0, 0, 0, Math.round((1 - grey) * 100)];

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
