/** What is wrong with the figures of a car before a cage is begun in it: places that no hoop or leg can run through. */
import type { Job } from '../../job/types.ts';
import type { Asked } from './asked.ts';
import { withCar } from './car.ts';

export type StartTrouble =
  | 'roof-too-low'
  | 'roof-too-wide'
  | 'belt-too-narrow'
  | 'tower-too-near'
  | 'tower-too-high'
  | 'screen-too-near'
  | 'screen-foot-too-near'
  | 'screen-foot-too-high'
  | 'front-foot-too-high'
  | 'harness-off-hoop'
  | 'gap-too-wide'
  | 'front-too-narrow'
  /** None of these, and yet the job cannot take what comes of it. */
  | 'not-made';

/** mm. Least of a straight between two bends with these, and of what a bar needs (common practice). */
const ROOM = 200;
/** mm. Least between the roof's rails, and between the sides: of what a person sits between (common practice). */
const LEAST_WIDTH = 600;

/** Empty where a cage can be begun; whether one can be made of it is for the job to say. */
export function startTroubles(job: Job, asked: Asked): readonly StartTrouble[] {
  const { car } = withCar(job, asked);
  const [floor, belt, roof, tower] = (['floor-b', 'belt-b', 'roof-b', 'tower'] as const).map((spot) => car[spot]!.at);
  const [x, y, z] = [0, 1, 2] as const;
  const found: StartTrouble[] = [];
  const unless = (is: boolean, trouble: StartTrouble): void => void (is || found.push(trouble));
  unless(belt![z] - floor![z] >= ROOM && roof![z] - belt![z] >= ROOM, 'roof-too-low');
  unless(belt![y] >= LEAST_WIDTH / 2 && floor![y] >= LEAST_WIDTH / 2, 'belt-too-narrow');
  unless(roof![y] <= belt![y] && roof![y] >= LEAST_WIDTH / 2, 'roof-too-wide');
  unless(roof![x] - tower![x] >= ROOM, 'tower-too-near');
  unless(roof![z] - tower![z] >= ROOM, 'tower-too-high');
  const { harnessHeight, gap } = asked.figures;
  const harness = harnessHeight.value;
  unless(!asked.bars.harness || (harness >= ROOM && harness <= roof![z] - floor![z] - ROOM), 'harness-off-hoop');
  const within = (off: number): boolean => roof![z] - off - belt![z] >= ROOM && roof![y] - off >= LEAST_WIDTH / 2;
  unless(within(gap.value) || !within(0), 'gap-too-wide');
  const [top, foot, toe] = (['screen-top', 'screen-foot', 'floor-a'] as const).map((spot) => car[spot]?.at);
  if (top === undefined || foot === undefined || toe === undefined) return found;
  unless(top[x] - roof![x] >= ROOM, 'screen-too-near');
  unless(foot[x] >= top[x] && toe[x] >= top[x], 'screen-foot-too-near');
  unless(Math.min(top[y], foot[y], toe[y]) >= LEAST_WIDTH / 2, 'front-too-narrow');
  unless(top[z] - foot[z] >= ROOM, 'screen-foot-too-high');
  unless(foot[z] - toe[z] >= ROOM, 'front-foot-too-high');
  return found;
}
