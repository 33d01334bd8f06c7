/** Room for the driver's head. */
import type { Judge } from '../types.ts';

export const headRoom: Judge<'head-room'> = () => [{ unknown: { id: 'no-driver' }, concerns: [], at: null }];
