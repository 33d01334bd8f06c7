/**
 * The worker that makes solids. It is a file of its own so that it alone may do what the kernel's bindings do when they start, put
 * together functions from text (scripts/policy.mjs). The kernel is loaded only now.
 */
import initialise from 'replicad-opencascadejs';
import wasm from 'replicad-opencascadejs/wasm?url';
import { startKernel } from '../exports/solids/kernel.ts';
import { stepFile } from '../exports/solids/step.ts';
import { fetched } from './fetched.ts';
import { listen } from './listen.ts';

listen(async (derived, _, making) => {
  const kernel = await startKernel(initialise, await fetched(wasm, 'part that makes solids'));
  return [await stepFile(derived, kernel, (done, total) => making('cage.step', done, total))];
});
