/** The worker for slow stages. */
import { SLOW } from '../core/stages/slow.ts';
import { createStageWork, type Ask } from './stage-work.ts';

const work = createStageWork(SLOW);

addEventListener('message', ({ data }: MessageEvent<Ask>) => postMessage(work(data)));
