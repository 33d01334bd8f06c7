/** The worker that puts a scan's section on paper; it is sent one request, and is ended by the page. */
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import { derive } from '../core/derive.ts';
import { faultLine } from '../core/job/fault.ts';
import { scanSectionPdf } from '../exports/layout/scan-section-pdf.ts';
import { unwatched } from '../drawing/going.ts';
import { fetched } from './fetched.ts';
import type { ScanPaperAsk, ScanPaperSaid } from './scan-paper-work.ts';

async function made({ job, tube, cuts, print }: ScanPaperAsk): Promise<ScanPaperSaid> {
  const derivation = derive(job);
  if (!derivation.ok) return { kind: 'failed', why: derivation.faults.map(faultLine).join('; ') };
  const [regularBytes, boldBytes] = await Promise.all([fetched(regular, 'typeface'), fetched(bold, 'typeface')]);
  const fonts = { regular: regularBytes, bold: boldBytes };
  return { kind: 'file', file: await scanSectionPdf(derivation.value, tube, cuts, fonts, print, unwatched) };
}

async function answer(ask: ScanPaperAsk): Promise<ScanPaperSaid> {
  try {
    return await made(ask);
  } catch (error) {
    return { kind: 'failed', why: error instanceof Error ? error.message : String(error) };
  }
}

addEventListener('message', ({ data }: MessageEvent<ScanPaperAsk>) => {
  void answer(data).then((said) => postMessage(said));
});
