/** The worker for slow stages. */
import { WORK } from '../core/stages/work.ts';
import { createStageWork, type Ask } from './stage-work.ts';

const work = createStageWork(WORK);

addEventListener('message', ({ data }: MessageEvent<Ask>) => postMessage(work(data)));
