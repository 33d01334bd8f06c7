/** The worker that makes all files but solids. */
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import { makeFiles, type Supplies } from '../exports/products/formats.ts';
import { fetched } from './fetched.ts';
import { listen } from './listen.ts';

const supplies: Supplies = {
  async fonts() {
    const [regularBytes, boldBytes] = await Promise.all([fetched(regular, 'typeface'), fetched(bold, 'typeface')]);
    return { regular: regularBytes, bold: boldBytes };
  },
  kernel: () => Promise.reject(new Error('Solids are made by a worker of their own.')),
};

listen((derived, { products, setting }, making) => makeFiles(derived, products, setting, supplies, making));
