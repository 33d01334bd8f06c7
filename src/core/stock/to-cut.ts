/** What a job's plan is made of: its tubes and spares, and the sticks that it has, section by section. */
import type { Job } from '../job/types.ts';
import { batchKey } from '../job/batch.ts';
import { sameData } from '../job/equal.ts';
import { batchOf } from '../job/kinds/stick.ts';
import { FIRST_KERF } from '../job/kinds/stock.ts';
import type { BegunStick } from '../job/kinds/begun.ts';
import type { SectionId } from '../job/reference.ts';
import { isHoopRole } from '../job/role.ts';
import { remembered } from '../remembered.ts';
import { feedOf } from '../solve/feed.ts';
import type { Frame } from '../solve/types.ts';
import type { Part, Sawing, StickSort } from './types.ts';

/** What one section's plan is made of; plain data, the same for the same. */
export interface ToCut {
  readonly section: SectionId;
  readonly parts: readonly Part[];
  readonly sticks: readonly StickSort[];
  /** How long the sticks are that its tube is bought in, mm; null where nobody said. */
  readonly bought: number | null;
  readonly sawing: Sawing;
  /** Of its plan that is being sawn what is still to come. */
  readonly begun: readonly BegunStick[];
  /** Ids of the tubes that are hoops: these are sawn first. */
  readonly hoops: readonly string[];
}

type OfJob = Pick<Frame, 'job' | 'tubes'>;

/** Of the frame that was asked about last. */
let last: readonly ToCut[] = [];

/** Each section of which something is to be cut, what is made being cut already, in the order of the job; nothing where the job has no sticks at all. What is as in the frame before is the same record, so that what was planned of it holds. */
export const toCut = remembered((frame: OfJob): readonly ToCut[] => {
  last = toCutAnew(frame).map((each) => last.find((before) => sameData(before, each)) ?? each);
  return last;
});

function toCutAnew({ job, tubes }: OfJob): readonly ToCut[] {
  if (job.stickSorts.length === 0) return [];
  const made = new Set(job.made.map(({ tube }) => tube));
  return job.sections.flatMap(({ id: section, stick: bought = null }): readonly ToCut[] => {
    const ofSection = tubes.filter((tube) => tube.section.id === section && !made.has(tube.id));
    const hoops = ofSection.filter(({ member }) => isHoopRole(member.role)).map(({ id }) => id);
    const ofTubes = ofSection.map((tube): Part => ({
      id: tube.id,
      spare: null,
      length: feedOf(job, tube).cutLength,
      batch: batchOf(tube.member),
    }));
    const spelt = inOneSpelling();
    const sticks = sticksOf(job, section).map(spelt);
    const parts = [...ofTubes, ...sparesOf(job, section)].map(spelt);
    const begun = (job.stock?.begun ?? []).filter(({ stick }) => sticks.some(({ id }) => id === stick));
    return parts.length === 0 ? [] : [{ section, parts, sticks, bought, sawing: sawingOf(job), begun, hoops }];
  });
}

/** Batches are compared by their text from here on: of each as it was typed where it was first met, and that is with the sticks. */
function inOneSpelling(): <Named extends { readonly batch: string | null }>(each: Named) => Named {
  const spelling = new Map<string | null, string | null>();
  return (each) => {
    const key = batchKey(each.batch);
    if (!spelling.has(key)) spelling.set(key, each.batch);
    const batch = spelling.get(key)!;
    return batch === each.batch ? each : { ...each, batch };
  };
}

/** mm. */
export const sawingOf = ({ stock = {} }: Pick<Job, 'stock'>): Sawing => ({
  kerf: stock.kerf ?? FIRST_KERF,
  squareOff: stock.squareOff ?? 0,
});

const sticksOf = ({ stickSorts }: Job, section: SectionId): readonly StickSort[] =>
  stickSorts
    .filter((stick) => stick.section === section)
    .map((stick) => {
      const { id, length, count = Infinity, cost = length } = stick;
      return { id, length, count, cost, batch: batchOf(stick) };
    });

/** A spare is called by the place of its record, and which of them it is, from 0: "spare 0.1". */
const sparesOf = ({ spares }: Job, section: SectionId): readonly Part[] =>
  spares.flatMap((spare, record) =>
    spare.section === section
      ? Array.from({ length: spare.count }, (_, which) => ({
          id: `spare ${record}.${which}`,
          spare: record,
          length: spare.length,
          batch: batchOf(spare),
        }))
      : [],
  );
