/** The worker that makes all files but solids. */
import { listen } from './listen.ts';

listen();
