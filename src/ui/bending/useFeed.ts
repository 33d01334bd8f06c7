/** How a tube is fed, by the job: what every length to cut, every mark and every drawing of the blank goes by. */
import { feedOf, type Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useDocument } from '../../store/page.ts';

export const useFeed = (tube: SolvedTube): Feed => useDocument((state) => feedOf(state.job, tube));
