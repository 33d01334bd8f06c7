/**
 * Pages of a PDF as an independent reader (pdf.js, in Chromium) draws them at 300 dots an inch, and its text; an SVG as the
 * browser's own parser reads it. Served from the packages, apart from the program.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';

const library = join(import.meta.dirname, '../../node_modules/pdfjs-dist/legacy/build');

export const DOTS_PER_MM = 300 / 25.4;

/** Grey of every dot, 0 black, row by row from the top; places are given in mm from the sheet's upper left corner. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
  readonly text: string;
}

/** An empty page, and pdf.js beside it, at an address of their own. */
export async function openReader(page: Page): Promise<void> {
  await page.route('http://reader.test/**', (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    if (name === '') return route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Reader</title>' });
    if (!/^pdf(\.worker)?\.min\.mjs$/u.test(name)) return route.abort();
    return route.fulfill({ contentType: 'text/javascript', body: readFileSync(join(library, name)) });
  });
  await page.goto('http://reader.test/');
}

interface Reader {
  readonly GlobalWorkerOptions: { workerSrc: string };
  readonly getDocument: (source: { data: Uint8Array; isEvalSupported: boolean }) => { promise: Promise<ReadDocument> };
}
interface ReadDocument {
  readonly numPages: number;
  readonly getPage: (number: number) => Promise<ReadPage>;
}
interface ReadPage {
  readonly getViewport: (setting: { scale: number }) => { width: number; height: number };
  readonly render: (setting: object) => { promise: Promise<void> };
  readonly getTextContent: () => Promise<{ items: { str?: string }[] }>;
}

/** `number` counts from 1; of the pages, how many there are comes with each. */
export async function rasterOf(page: Page, pdf: Uint8Array, number: number): Promise<Raster & { pages: number }> {
  const read = await page.evaluate(
    async ([data, which, scale]) => {
      const address = '/pdf.min.mjs';
      const reader = (await import(address)) as Reader;
      reader.GlobalWorkerOptions.workerSrc = '/pdf.worker.min.mjs';
      const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
      const document_ = await reader.getDocument({ data: bytes, isEvalSupported: false }).promise;
      const sheet = await document_.getPage(which);
      const viewport = sheet.getViewport({ scale });
      const canvas = document.createElement('canvas');
      canvas.width = Math.round(viewport.width);
      canvas.height = Math.round(viewport.height);
      const context = canvas.getContext('2d', { willReadFrequently: true })!;
      await sheet.render({ canvas, canvasContext: context, viewport }).promise;
      const dots = context.getImageData(0, 0, canvas.width, canvas.height).data;
      let grey = '';
      const row = new Uint8Array(canvas.width);
      for (let y = 0; y < canvas.height; y++) {
        for (let x = 0; x < canvas.width; x++) row[x] = dots[4 * (y * canvas.width + x) + 1]!;
        grey += String.fromCharCode(...row);
      }
      const { items } = await sheet.getTextContent();
      return {
        width: canvas.width,
        height: canvas.height,
        grey: btoa(grey),
        text: items.map(({ str }) => str ?? '').join(' '),
        pages: document_.numPages,
      };
    },
    [Buffer.from(pdf).toString('base64'), number, 300 / 72] as const,
  );
  return { ...read, grey: new Uint8Array(Buffer.from(read.grey, 'base64')) };
}

/** Text of every page, one after the other. */
export const textOf = (page: Page, pdf: Uint8Array): Promise<string[]> =>
  page.evaluate(async (data) => {
    const address = '/pdf.min.mjs';
    const reader = (await import(address)) as Reader;
    reader.GlobalWorkerOptions.workerSrc = '/pdf.worker.min.mjs';
    const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
    const document_ = await reader.getDocument({ data: bytes, isEvalSupported: false }).promise;
    const texts: string[] = [];
    for (let number = 1; number <= document_.numPages; number++) {
      // Pages in their order.
      const { items } = await (await document_.getPage(number)).getTextContent();
      texts.push(items.map(({ str }) => str ?? '').join(' '));
    }
    return texts;
  }, Buffer.from(pdf).toString('base64'));

/** A dark stretch: its two edges, where the ink passes half, mm along the row or column. */
export interface Ink {
  readonly from: number;
  readonly to: number;
}

/** What is darker than this is black ink; the grey of hatching is not. */
const BLACK = 100;

const stretches = (length: number, greyAt: (at: number) => number): Ink[] => {
  const found: Ink[] = [];
  let open: number | null = null;
  // Between two dots' middles, where the grey passes the level.
  const edge = (before: number, after: number, at: number): number =>
    (at - 0.5 + (before - BLACK) / (before - after)) / DOTS_PER_MM;
  for (let at = 1; at < length; at++) {
    const [before, here] = [greyAt(at - 1), greyAt(at)];
    if (before >= BLACK && here < BLACK) open = edge(before, here, at);
    if (before < BLACK && here >= BLACK && open !== null) {
      found.push({ from: open, to: edge(before, here, at) });
      open = null;
    }
  }
  return found;
};

/** Black along the row of dots at y mm from the top; `y` is moved to the middle of its dots. */
export const inkAcross = ({ width, grey }: Raster, y: number): Ink[] =>
  stretches(width, (x) => grey[Math.floor(y * DOTS_PER_MM) * width + x]!);

/** The same along a column; the column's own middle is `columnAt`. */
export const inkDown = ({ width, height, grey }: Raster, x: number): Ink[] =>
  stretches(height, (y) => grey[y * width + Math.floor(x * DOTS_PER_MM)]!);

/** Middle of the dots that x mm falls in. */
export const dotMiddle = (mm: number): number => (Math.floor(mm * DOTS_PER_MM) + 0.5) / DOTS_PER_MM;

export const middleOf = ({ from, to }: Ink): number => (from + to) / 2;

/** Stretches at least `least` mm long, the same line counted once though it is several dots thick: its middle, and its ends. */
export function longLines(
  length: number,
  inkAt: (at: number) => Ink[],
  least: number,
): { readonly at: number; readonly from: number; readonly to: number }[] {
  const rows: { first: number; last: number; ink: Ink }[] = [];
  for (let dot = 0; dot < length; dot++) {
    for (const ink of inkAt((dot + 0.5) / DOTS_PER_MM)) {
      if (ink.to - ink.from < least) continue;
      const same = rows.find((row) => row.last === dot - 1 && Math.abs(row.ink.from - ink.from) < 0.5);
      if (same) same.last = dot;
      else rows.push({ first: dot, last: dot, ink });
    }
  }
  return rows.map(({ first, last, ink }) => ({
    at: (first + last + 1) / 2 / DOTS_PER_MM,
    from: ink.from,
    to: ink.to,
  }));
}
