/** The worker for slow stages. */
import { ALL_WORK } from '../core/compare/work.ts';
import { createStageWork, type Ask } from './stage-work.ts';

const work = createStageWork(ALL_WORK);

addEventListener('message', ({ data }: MessageEvent<Ask>) => postMessage(work(data)));
