/**
 * How text is set on paper: what the typeface has no sign for becomes a box that is seen, and widths are measured with the
 * typeface itself, so that what is laid out is what is printed. Text comes from job files: it may hold anything.
 */
import PdfDocument from 'pdfkit';
import { remembered } from '../core/remembered.ts';

/** TrueType files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface Lettering {
  /** The text as it can be set: on one line, with stand-ins. What is settable is left as it is. */
  readonly settable: (text: string) => string;
  /** Width of the text as it is set, mm; `size` is the height of the letter's body. */
  readonly width: (text: string, size: number, bold: boolean) => number;
}

/** Two typefaces that have been read. */
export interface Typefaces extends Lettering {
  /** A document without pages yet, which sets with the same typefaces, under the names 'regular' and 'bold'. */
  readonly open: (title: string) => PDFKit.PDFDocument;
}

const STAND_IN = '□';
const NO_DATE = new Date(0);

/** Signs that are not seen and would only turn others round or join them. */
const UNSEEN = /[\p{Cf}\p{Variation_Selector}]/gu;
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]|[\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** The two typefaces, to measure with and to set one file. */
export function lettering(fonts: Fonts): Typefaces {
  const { settable, width } = measuring(fonts);
  return { settable, width, open: (title) => openDocument(fonts, settable(title)) };
}

/**
 * Typefaces that are read to measure with, and the words that they have measured, are kept as long as the files: to lay a word out is
 * a third of what paper costs, and the next file has most words of the last. A file is set in typefaces that are read anew, since
 * what a typeface notes of the letters it has met goes into the file, and the same job is to give the same bytes.
 */
const measuring = remembered((fonts: Fonts): Lettering => {
  const document = openDocument(fonts, '');
  const faces = { regular: faceOf(document, 'regular'), bold: faceOf(document, 'bold') };
  const has = (codePoint: number): boolean =>
    faces.regular.hasGlyphForCodePoint(codePoint) && faces.bold.hasGlyphForCodePoint(codePoint);
  const settable = (text: string): string => {
    if (/^[ -~]*$/u.test(text)) return text;
    const oneLine = text.replace(UNSEEN, '').replace(/[\s\p{Cc}]+/gu, ' ');
    return Array.from(oneLine, (sign) => (has(sign.codePointAt(0)!) ? sign : STAND_IN)).join('');
  };
  const width = (text: string, size: number, bold: boolean): number =>
    document
      .font(bold ? 'bold' : 'regular')
      .fontSize(size)
      .widthOfString(inOrderSeen(settable(text)));
  return { settable, width };
});

/** A typeface that has been read. */
interface Face {
  hasGlyphForCodePoint(codePoint: number): boolean;
}

function openDocument({ regular, bold }: Fonts, title: string): PDFKit.PDFDocument {
  const document = new PdfDocument({
    // No built-in typeface: those hold no fractions, and are not embedded.
    font: null as unknown as string,
    autoFirstPage: false,
    margin: 0,
    info: { Title: title, Creator: 'Cagewright', CreationDate: NO_DATE },
  });
  // The library wants a date, and would print it: the same job is to give the same bytes.
  Object.defineProperty(document.info, 'CreationDate', { value: NO_DATE, enumerable: false });
  document.registerFont('regular', regular);
  document.registerFont('bold', bold);
  return document;
}

/** The library keeps it in a field which its types leave out. */
const faceOf = (document: PDFKit.PDFDocument, name: string): Face =>
  (document.font(name) as unknown as { readonly _font: { readonly font: Face } })._font.font;

/**
 * One line in the order in which it is seen from left to right. Letters within a right-to-left word are turned by the
 * typeface's own layout, and with them the blank behind it, which gets another one; words that follow one another are turned here.
 */
export function inOrderSeen(line: string): string {
  if (!RIGHT_TO_LEFT.test(line)) return line;
  const laid: string[] = [];
  let run: string[] = [];
  for (const word of line.split(' ')) {
    if (RIGHT_TO_LEFT.test(word)) run.unshift(`${word} `);
    else {
      laid.push(...run, word);
      run = [];
    }
  }
  return [...laid, ...run].join(' ');
}
