/** What makers need beside the job, in the browser: files of the build, fetched when they are first asked for. */
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import regular from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import wasm from 'replicad-opencascadejs/wasm?url';
import type { Supplies } from '../exports/formats.ts';
import { startKernel } from '../exports/solids/kernel.ts';

export const supplies: Supplies = {
  async fonts() {
    const [regularBytes, boldBytes] = await Promise.all([fetched(regular, 'typeface'), fetched(bold, 'typeface')]);
    return { regular: regularBytes, bold: boldBytes };
  },
  async kernel() {
    const [{ default: initialise }, bytes] = await Promise.all([
      import('replicad-opencascadejs'),
      fetched(wasm, 'part that makes solids'),
    ]);
    return startKernel(initialise, bytes);
  },
};

async function fetched(url: string, what: string): Promise<Uint8Array> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new Error(`The ${what} could not be loaded. It needs the network once; after that it works without.`);
  }
  return new Uint8Array(await response.arrayBuffer());
}
