/**
 * A sheet as an SVG 1.1 file: millimetres, one user unit each, so that it comes out at full size wherever it is opened. Each
 * layer is a group of its name; lines are paths, text stays text. Nothing in it can run.
 */
import { isCircle } from './move.ts';
import type { Arc, Line, Mark, Pen, Sheet, Words } from './types.ts';
import { plainLine } from '../core/job/plain-line.ts';

const FONTS = "'DejaVu Sans', Verdana, Arial, Helvetica, sans-serif";

/** The file's text, UTF-8. `about` says in a sentence what it is, for whoever cannot see it. */
export function svgText({ name, width, height, marks }: Sheet, about: string): string {
  const layers = [...new Set(marks.map((mark) => mark.layer))];
  const groups = layers.map((layer) => {
    const drawn = marks.filter((mark) => mark.layer === layer).map((mark) => `    ${drawnMark(mark, height)}`);
    return `  <g id="${escaped(layer)}">\n${drawn.join('\n')}\n  </g>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}">`,
    `  <title>${escaped(name)}</title>`,
    `  <desc>${escaped(about)}</desc>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

/** A tenth of a micron: finer than any cutter, and no longer than a line should be. */
const mm = (length: number): string => String(Number(length.toFixed(4)) + 0);

const escaped = (text: string): string =>
  plainLine(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    // Not characters at all, and forbidden in XML.
    .replace(/[\uFFFE\uFFFF]/gu, '\uFFFD');

function drawnMark(mark: Mark, height: number): string {
  if (mark.kind === 'line') return drawnLine(mark, height);
  return mark.kind === 'arc' ? drawnArc(mark, height) : drawnWords(mark, height);
}

function drawnLine({ places, closed, pen, fill }: Line, height: number): string {
  const path = places.map(({ x, y }) => `${mm(x)} ${mm(height - y)}`).join('L');
  return `<path d="M${path}${closed ? 'Z' : ''}" fill="${fill === null ? 'none' : grey(fill)}"${stroke(pen)}/>`;
}

function drawnArc(arc: Arc, height: number): string {
  const { centre, radius, from, to, pen } = arc;
  if (isCircle(arc)) {
    return `<circle cx="${mm(centre.x)}" cy="${mm(height - centre.y)}" r="${mm(radius)}" fill="none"${stroke(pen)}/>`;
  }
  const place = (angle: number): string =>
    `${mm(centre.x + radius * Math.cos(angle))} ${mm(height - centre.y - radius * Math.sin(angle))}`;
  const large = to - from > Math.PI ? 1 : 0;
  return `<path d="M${place(from)}A${mm(radius)} ${mm(radius)} 0 ${large} 0 ${place(to)}" fill="none"${stroke(pen)}/>`;
}

function drawnWords({ at, text, size, anchor, turn, bold, grey: shade }: Words, height: number): string {
  const [x, y] = [mm(at.x), mm(height - at.y)];
  const turned = turn === 0 ? '' : ` transform="rotate(${mm((-turn * 180) / Math.PI)} ${x} ${y})"`;
  const weight = bold ? ' font-weight="bold"' : '';
  return `<text x="${x}" y="${y}" font-family="${FONTS}" font-size="${mm(size)}"${weight} text-anchor="${anchor}" fill="${grey(shade)}"${turned}>${escaped(text)}</text>`;
}

const stroke = (pen: Pen | null): string => {
  if (pen === null) return '';
  const dash = pen.dash === undefined ? '' : ` stroke-dasharray="${pen.dash.map(mm).join(' ')}"`;
  return ` stroke="${grey(pen.grey)}" stroke-width="${mm(pen.width)}"${dash}`;
};

function grey(shade: number): string {
  const part = Math.round(shade * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${part}${part}${part}`;
}
