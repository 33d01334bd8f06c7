/** Where the harness bar lies to the driver's shoulders. */
import type { Judge } from '../types.ts';

export const harness: Judge<'harness'> = () => [{ unknown: { id: 'no-driver' }, concerns: [], at: null }];
