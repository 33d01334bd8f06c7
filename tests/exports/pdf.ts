/** PDF as pdf.js reads it: pages and what stands where on them, in mm from the lower left corner. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Printed {
  readonly text: string;
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly width: number;
  /** Height of the letter's body. */
  readonly size: number;
  /** Which way it runs, radians anticlockwise from the right. */
  readonly turn: number;
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly Printed[];
  /** Names of its typefaces, each with whether it is embedded; none unless asked for. */
  readonly faces: readonly { readonly name: string; readonly embedded: boolean }[];
  readonly annotations: number;
}

const MM = 25.4 / 72;

/**
 * Each graphics state that pdf.js saves is an object with the one before as its prototype. V8 keeps lists of such objects and goes through
 * them until they are collected: a document of thirty pages takes a second to read, the seventh after it without a collection ten.
 */
setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
const PAGES_BETWEEN = 20;
let uncollected = 0;

/** Every page of the document; text that is one mark on paper may come in several pieces. */
export async function readPdf(
  bytes: Uint8Array,
  withFaces = false,
): Promise<{ pages: readonly ReadPage[]; scripts: boolean; title: string }> {
  // Its own copy: pdf.js takes the bytes away.
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    // One page after the other.
    pages.push(await readPage(await document.getPage(number), withFaces));
  }
  const scripts = (await document.getJSActions()) !== null || (await document.getOpenAction()) !== null;
  const { info } = await document.getMetadata();
  await task.destroy();
  uncollected += pages.length;
  if (uncollected >= PAGES_BETWEEN) {
    collect();
    uncollected = 0;
  }
  return { pages, scripts, title: String((info as Record<string, unknown>).Title) };
}

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>['promise']>['getPage']>>;

async function readPage(page: Page, withFaces: boolean): Promise<ReadPage> {
  const { items } = await page.getTextContent({ disableNormalization: true });
  const texts = items.flatMap((item) =>
    'str' in item && item.str.trim() !== ''
      ? [
          {
            text: item.str,
            x: item.transform[4] * MM,
            y: item.transform[5] * MM,
            width: item.width * MM,
            size: Math.hypot(item.transform[2], item.transform[3]) * MM,
            turn: Math.atan2(item.transform[1], item.transform[0]),
          },
        ]
      : [],
  );
  // Typefaces are read only with what is drawn with them.
  if (withFaces) await page.getOperatorList();
  const named = new Set(withFaces ? items.flatMap((item) => ('fontName' in item ? [item.fontName] : [])) : []);
  const faces = [...named].map((name) => {
    const face = page.commonObjs.get(name) as { name: string; missingFile?: boolean; data?: unknown };
    return { name: face.name, embedded: face.missingFile !== true };
  });
  const [left, low, right, high] = page.view as [number, number, number, number];
  return {
    width: (right - left) * MM,
    height: (high - low) * MM,
    texts,
    faces,
    annotations: (await page.getAnnotations()).length,
  };
}
