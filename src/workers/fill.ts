/** Fills an order: the whole of what a worker does, and what tests call in its place. */
import { derive } from '../core/derive.ts';
import { faultLine } from '../core/job/fault.ts';
import { makeFiles, type Supplies } from '../exports/formats.ts';
import { zipBytes } from '../exports/zip.ts';
import type { Answer, Order } from './messages.ts';

/** Tells `say` how it goes, and last the files, or in a sentence why there are none. Never rejects. */
export async function fill(order: Order, supplies: Supplies, say: (answer: Answer) => void): Promise<void> {
  try {
    say({ kind: 'files', files: await filesFor(order, supplies, say) });
  } catch (error) {
    say({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
}

async function filesFor(order: Order, supplies: Supplies, say: (answer: Answer) => void) {
  if (order.kind === 'zip') return [{ fileName: 'all.zip', bytes: zipBytes(order.files) }];
  const derivation = derive(order.job);
  if (!derivation.ok) throw new Error(derivation.faults.map(faultLine).join('; '));
  return makeFiles(derivation.value, order.products, order.setting, supplies, async (product, done, total) =>
    say({ kind: 'going', product, done, total }),
  );
}
