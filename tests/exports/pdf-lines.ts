/** The lines of a PDF as pdf.js reads them: each a row of places, in mm from the page's lower left corner. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Drawn = readonly (readonly [x: number, y: number])[];
type Six = readonly [number, number, number, number, number, number];

const MM = 25.4 / 72;
/** a, then b: as PDF 32000-1, 8.3.3 multiplies. */
const after = (a: Six, b: Six): Six => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];

/** Page by page; a curve counts with its end alone, what is closed comes back to where it began. */
export async function linesOfPdf(bytes: Uint8Array): Promise<readonly (readonly Drawn[])[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true });
  const document = await task.promise;
  const pages: Drawn[][] = [];
  for (let number = 1; number <= document.numPages; number++) {
    // One page after the other.
    const { fnArray, argsArray } = await (await document.getPage(number)).getOperatorList();
    pages.push(linesOf(fnArray, argsArray));
  }
  await task.destroy();
  return pages;
}

function linesOf(names: readonly number[], args: readonly (readonly unknown[])[]): Drawn[] {
  const lines: Drawn[] = [];
  const kept: Six[] = [];
  let matrix: Six = [1, 0, 0, 1, 0, 0];
  names.forEach((name, i) => {
    if (name === OPS.save) kept.push(matrix);
    else if (name === OPS.restore) matrix = kept.pop()!;
    else if (name === OPS.transform) matrix = after(args[i] as unknown as Six, matrix);
    else if (name === OPS.constructPath) {
      const numbers = Array.from(Object.values((args[i]![1] as readonly Record<string, number>[])[0] ?? {}));
      lines.push(...traced(numbers, matrix));
    }
  });
  return lines;
}

/** 0 moves, 1 draws a line, 2 a curve of three places, 3 one of two, 4 closes. */
function traced(numbers: readonly number[], [a, b, c, d, e, f]: Six): Drawn[] {
  const lines: [number, number][][] = [];
  for (let i = 0; i < numbers.length;) {
    const kind = numbers[i]!;
    if (kind === 4) {
      lines.at(-1)!.push(lines.at(-1)![0]!);
      i += 1;
      continue;
    }
    const count = [1, 1, 3, 2][kind]!;
    const [x, y] = [numbers[i + 2 * count - 1]!, numbers[i + 2 * count]!];
    const place: [number, number] = [(a * x + c * y + e) * MM, (b * x + d * y + f) * MM];
    if (kind === 0) lines.push([place]);
    else lines.at(-1)!.push(place);
    i += 1 + 2 * count;
  }
  return lines;
}
