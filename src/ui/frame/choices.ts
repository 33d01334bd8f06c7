/** Lists to choose from, made from the job's records, and the words for what is chosen. */
import { batchesOnce } from '../../core/job/batch.ts';
import { shownName } from '../../core/job/shown.ts';
import type { EndFit } from '../../core/job/kinds/end.ts';
import type { Axis } from '../../core/geometry/vector.ts';
import type { OnMember } from '../../core/job/places/on.ts';
import type { NodeId } from '../../core/job/reference.ts';
import type { Way } from '../../core/shape/ways.ts';
import type { Job } from '../../core/job/types.ts';
import type { Choice } from '../fields/Fields.tsx';
import { withImages } from '../kit/names.ts';

export const choicesOf = (records: readonly { readonly id: string; readonly name: string }[]): Choice[] =>
  records.map((record) => ({ value: record.id, label: shownName(record.name) || record.id }));

/** Every tube that a node may sit on or an end may be coped to: members, and twins of mirrored ones. */
export const tubeChoices = (job: Job, except?: string): Choice[] =>
  job.members.flatMap(({ id, name, mirror }) => [
    ...(id === except ? [] : [{ value: id, label: mirror ? `${shownName(name)}, the one drawn` : shownName(name) }]),
    ...(mirror ? [{ value: `${id}'`, label: `${shownName(name)}, its mirror image` }] : []),
  ]);

export const WAY_NAMES: Readonly<Record<Way, string>> = {
  fixed: 'at fixed figures',
  point: 'on a point',
  clear: 'off the trim by a gap',
  on: 'on a tube',
  until: 'on a tube at a height',
  crossing: 'where a line crosses a tube',
  between: 'between nodes',
  ray: 'along a line',
  'lined-up': 'in line with others',
};

export const WAYS = Object.keys(WAY_NAMES) as readonly Way[];

export const wayChoices: readonly Choice[] = WAYS.map((way) => ({ value: way, label: WAY_NAMES[way] }));

/** The three coordinates, as a line or a tube comes to them. */
export const COMES_TO: readonly (Choice & { readonly value: Axis })[] = [
  { value: 'x', label: 'along' },
  { value: 'y', label: 'offset' },
  { value: 'z', label: 'height' },
];

/** What a coordinate may be taken from: a number of its own, or a node or a point, by the words of sourceOf (places.ts). */
export const sourceChoices = (job: Pick<Job, 'nodes' | 'points'>, except?: NodeId): Choice[] => [
  { value: '', label: 'a number' },
  ...withImages(job.nodes.filter(({ id }) => id !== except)).map(({ value, label }) => ({
    value: `node ${value}`,
    label: `node ${label}`,
  })),
  ...withImages(job.points).map(({ value, label }) => ({ value: `point ${value}`, label: `point ${label}` })),
];

const FIT_NAMES: Readonly<Record<EndFit['fit'], string>> = {
  auto: 'to what it meets',
  cope: 'to chosen tubes',
  plate: 'flat on a plate',
  foot: 'on a foot',
  mitre: 'to a mitre',
  square: 'cut off square',
};

/** The same in a table's cell. */
export const FIT_SHORT: Readonly<Record<EndFit['fit'], string>> = {
  auto: 'fitted',
  cope: 'coped',
  plate: 'plate',
  foot: 'foot',
  mitre: 'mitre',
  square: 'square',
};

/** A foot can be chosen once the job has one; a new one can be put there at any time. */
export const fitChoices = ({ feet }: Pick<Job, 'feet'>): readonly Choice[] => [
  ...(Object.keys(FIT_NAMES) as EndFit['fit'][])
    .filter((fit) => fit !== 'foot' || feet.length > 0)
    .map((fit) => ({ value: fit, label: FIT_NAMES[fit] })),
  { value: 'new-plate', label: 'on a new foot plate' },
  { value: 'new-box', label: 'on a new foot box' },
];

/** Every batch that a pull, a member or a certificate names, once. */
export const batchesIn = ({ pulls, members, certificates }: Job): readonly string[] =>
  batchesOnce([...pulls, ...members, ...certificates]);

/** On a tube, so far from an end or a bend. */
export type AlongTube = Extract<OnMember, { readonly distance: number }>;

/** On a tube, where that comes to a coordinate. */
export type UntilOnTube = Extract<OnMember, { readonly nth: number }>;

/** Where an `on` node is measured from, as one choice: "start", "end", or "2 middle" for the middle of bend 2. */
export const originOf = (at: AlongTube): string => (at.from === undefined ? `${at.bend} ${at.where}` : at.from);

export function originChoices(bends: number): Choice[] {
  const ofBends = Array.from({ length: bends }, (_, index) =>
    (['start', 'middle', 'end'] as const).map((where) => ({
      value: `${index + 1} ${where}`,
      label: `${where} of bend ${index + 1}`,
    })),
  );
  return [{ value: 'start', label: 'end A' }, { value: 'end', label: 'end B' }, ...ofBends.flat()];
}
