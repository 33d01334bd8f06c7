/** Fills a request: the whole of what a worker does, and what tests call in its place. */
import { derive, type Derived } from '../core/derive.ts';
import { faultLine } from '../core/job/fault.ts';
import { withSlowFindings } from '../core/stages/work.ts';
import type { ExportFile } from '../exports/shared/files.ts';
import type { Making } from '../exports/products/formats.ts';
import { zipBytes } from '../exports/products/zip.ts';
import type { Answer, MakeRequest, Request, SectionRequest } from './messages.ts';

/** Makes what a request names; see makeFiles. */
export type Make = (
  derived: Derived,
  request: MakeRequest | SectionRequest,
  making: Making,
) => Promise<readonly ExportFile[]>;

/** Reports to `say` how it goes, and last the files, or in a sentence why there are none. Never rejects. */
export async function fill(request: Request, make: Make, say: (answer: Answer) => void): Promise<void> {
  try {
    say({ kind: 'files', files: await filesFor(request, make, say) });
  } catch (error) {
    say({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
}

async function filesFor(request: Request, make: Make, say: (answer: Answer) => void): Promise<readonly ExportFile[]> {
  if (request.kind === 'zip') return [{ fileName: 'all.zip', bytes: zipBytes(request.files) }];
  const derivation = derive(request.job);
  if (!derivation.ok) throw new Error(derivation.faults.map(faultLine).join('; '));
  return make(withSlowFindings(derivation.value), request, async (product, done, total) =>
    say({ kind: 'going', product, done, total }),
  );
}
