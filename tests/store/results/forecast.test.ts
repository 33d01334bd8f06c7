import { beforeEach, describe, expect, it } from 'vitest';
import { setCutOnCar } from '../../../src/core/edit/members.ts';
import { forecastFit } from '../../../src/core/forecast/forecast.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { forecast } from '../../../src/core/stages/forecast.ts';
import { documentOf, openBrowser, resultsOf, type Tab } from '../memory.ts';

let tab: Tab;

/** A hoop and its stays are enough. */
const few = (job: Job): Job => ({
  ...job,
  members: job.members.slice(0, 2),
  gussets: [],
  nodes: job.nodes.slice(0, 9),
});

beforeEach(async () => {
  tab = await openBrowser().openTab();
  expect(documentOf(tab).edit('Leave a few', few)).toEqual([]);
});

describe('the forecast of fit', () => {
  it('is worked out while somebody looks at it, after what finds something, and only then', () => {
    tab.idle();
    expect(resultsOf(tab).forecast).toBeNull();
    const endLook = tab.results.lookAt(forecast);
    expect(resultsOf(tab).forecast).toBeNull();
    tab.idle();
    expect(resultsOf(tab).forecast).toEqual(forecastFit(documentOf(tab).derived));
    endLook();
    expect(resultsOf(tab).forecast).toBeNull();
    tab.results.lookAt(forecast);
    expect(resultsOf(tab).forecast, 'known already').not.toBeNull();
  });

  it('is never that of another job: an edit takes it away until it is worked out anew, an undo brings it back', () => {
    tab.results.lookAt(forecast);
    tab.idle();
    const before = resultsOf(tab).forecast;
    documentOf(tab).edit('Cut the stays on the car', (job) => setCutOnCar(job, 'stay', true));
    expect(resultsOf(tab).forecast).toBeNull();
    tab.idle();
    const stayOf = () => resultsOf(tab).forecast!.joints.find((joint) => joint.tube === 'stay' && joint.end === 'A')!;
    expect(stayOf().onCar).toBe(true);
    documentOf(tab).undo();
    expect(resultsOf(tab).forecast === null || resultsOf(tab).forecast === before).toBe(true);
    tab.idle();
    expect(resultsOf(tab).forecast).toEqual(before);
  });

  it('adds nothing to the findings', () => {
    tab.idle();
    const { findings } = resultsOf(tab);
    tab.results.lookAt(forecast);
    tab.idle();
    expect(resultsOf(tab).findings).toEqual(findings);
  });
});
