/** Fills an order: the whole of what a worker does, and what tests call in its place. */
import { derive, type Derived } from '../core/derive.ts';
import { faultLine } from '../core/job/fault.ts';
import { withSlowFindings } from '../core/stages/slow.ts';
import type { ExportFile } from '../exports/shared/files.ts';
import type { Making } from '../exports/order/formats.ts';
import { zipBytes } from '../exports/order/zip.ts';
import type { Answer, MakeOrder, Order } from './messages.ts';

/** Makes what an order names; see makeFiles. */
export type Make = (derived: Derived, order: MakeOrder, making: Making) => Promise<readonly ExportFile[]>;

/** Reports to `say` how it goes, and last the files, or in a sentence why there are none. Never rejects. */
export async function fill(order: Order, make: Make, say: (answer: Answer) => void): Promise<void> {
  try {
    say({ kind: 'files', files: await filesFor(order, make, say) });
  } catch (error) {
    say({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
}

async function filesFor(order: Order, make: Make, say: (answer: Answer) => void): Promise<readonly ExportFile[]> {
  if (order.kind === 'zip') return [{ fileName: 'all.zip', bytes: zipBytes(order.files) }];
  const derivation = derive(order.job);
  if (!derivation.ok) throw new Error(derivation.faults.map(faultLine).join('; '));
  return make(withSlowFindings(derivation.value), order, async (product, done, total) =>
    say({ kind: 'going', product, done, total }),
  );
}
