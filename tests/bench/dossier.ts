/** How long the dossier takes from the job's text, with ten photos as large as a telephone's are when they are kept. */
import { readFileSync } from 'node:fs';
import { unwatched } from '../../src/drawing/going.ts';
import { sumOf } from '../../src/core/scan/sum.ts';
import { dossierPdf } from '../../src/exports/dossier/dossier.ts';
import { plainPrint } from '../../src/exports/shared/files.ts';
import { withSlowFindings } from '../../src/core/stages/work.ts';
import { derive } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { demoText } from '../command-line.ts';
import { otherJpeg } from '../core/photo/small-jpeg.ts';
import { uniformFrom } from '../reference/oracles/seeded.ts';
import { timingOf, type Timing } from './clock.ts';

/** Bytes of a picture of 1600 by 1200. */
const LARGE = 300_000;

/** A picture with more behind its head: what is printed is not decoded. */
function large(which: number): Uint8Array {
  const small = otherJpeg(which);
  const next = uniformFrom(which);
  const more = Uint8Array.from({ length: LARGE }, () => Math.floor(next() * 255));
  return new Uint8Array([...small.subarray(0, -2), ...more, ...small.subarray(-2)]);
}

const face = (name: string): Uint8Array => readFileSync(`node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`);

/** Milliseconds in Node. */
export async function timeDossier(): Promise<Timing> {
  const pictures = Array.from({ length: 10 }, (_, i) => large(i));
  const photos = pictures.map((bytes, i) => ({ id: `photo${i}`, name: `View ${i}`, sum: sumOf(bytes) }));
  const text = JSON.stringify({ ...JSON.parse(demoText()), photos });
  const bySum = new Map(photos.map(({ sum }, i) => [sum, pictures[i]!]));
  const fonts = { regular: face('DejaVuSansCondensed'), bold: face('DejaVuSansCondensed-Bold') };
  const times: number[] = [];
  for (let run = 0; run < 5; run++) {
    const start = performance.now();
    const parsed = parseJob(text);
    if (!parsed.ok) throw new Error('the demo is a job');
    const derivation = derive(parsed.job);
    if (!derivation.ok) throw new Error('the demo can be derived');
    await dossierPdf(withSlowFindings(derivation.value), fonts, plainPrint, unwatched, bySum);
    times.push(performance.now() - start);
  }
  return timingOf(times);
}
