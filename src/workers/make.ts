/** The worker that makes all files but solids. */
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import { makeFiles, type Supplies } from '../exports/products/formats.ts';
import { unwatched } from '../drawing/going.ts';
import { fetched } from './fetched.ts';
import { listen } from './listen.ts';
import { solverForFiles } from './solver.ts';

const supplies: Supplies = {
  async fonts() {
    const [regularBytes, boldBytes] = await Promise.all([fetched(regular, 'typeface'), fetched(bold, 'typeface')]);
    return { regular: regularBytes, bold: boldBytes };
  },
  kernel: () => Promise.reject(new Error('Solids are made by a worker of their own.')),
  solver: solverForFiles,
};

listen(async (derived, request, making) => {
  if (request.kind === 'make') return makeFiles(derived, request.products, request.setting, supplies, making);
  const { scanSectionPdf } = await import('../exports/layout/scan-section-pdf.ts');
  return [await scanSectionPdf(derived, request.tube, request.cuts, await supplies.fonts(), request.print, unwatched)];
});
