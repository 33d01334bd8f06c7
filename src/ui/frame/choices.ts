/** Lists to choose from, made from the job's records, and the words for what is chosen. */
import { shownName } from '../../core/job/shown.ts';
import type { EndFit } from '../../core/job/kinds/end.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Job } from '../../core/job/types.ts';
import type { Choice } from '../fields/Fields.tsx';
import { sectionInWords } from '../../core/job/sizes.ts';

export const choicesOf = (records: readonly { readonly id: string; readonly name: string }[]): Choice[] =>
  records.map((record) => ({ value: record.id, label: shownName(record.name) || record.id }));

/** By name, and by size where the name does not say it. */
export const sectionChoices = ({ sections, lengthUnit }: Pick<Job, 'sections' | 'lengthUnit'>): Choice[] =>
  sections.map((section) => ({ value: section.id, label: sectionInWords(section, lengthUnit) }));

/** Every tube that a node may sit on or an end may be coped to: members, and twins of mirrored ones. */
export const tubeChoices = (job: Job, except?: string): Choice[] =>
  job.members.flatMap(({ id, name, mirror }) => [
    ...(id === except ? [] : [{ value: id, label: mirror ? `${shownName(name)}, the one drawn` : shownName(name) }]),
    ...(mirror ? [{ value: `${id}'`, label: `${shownName(name)}, its mirror image` }] : []),
  ]);

export const KIND_NAMES: Readonly<Record<Place['kind'], string>> = {
  fixed: 'at a place',
  point: 'on a point',
  on: 'on a tube',
  between: 'between nodes',
  ray: 'along a line',
};

export const KINDS = Object.keys(KIND_NAMES) as readonly Place['kind'][];

export const kindChoices: readonly Choice[] = KINDS.map((kind) => ({ value: kind, label: KIND_NAMES[kind] }));

export const ofKind = (nodes: readonly FrameNode[], kind: Place['kind']): FrameNode[] =>
  nodes.filter((node) => node.at.kind === kind);

const FIT_NAMES: Readonly<Record<EndFit['fit'], string>> = {
  auto: 'to what it meets',
  cope: 'to chosen tubes',
  plate: 'flat on a plate',
  foot: 'on a foot',
  mitre: 'to a mitre',
  square: 'square',
};

/** A foot can be chosen once the job has one. */
export const fitChoices = ({ feet }: Pick<Job, 'feet'>): readonly Choice[] =>
  (Object.keys(FIT_NAMES) as EndFit['fit'][])
    .filter((fit) => fit !== 'foot' || feet.length > 0)
    .map((fit) => ({ value: fit, label: FIT_NAMES[fit] }));

/** Words that inspectors and rule books use for a member's part in the cage; any other word may be typed. */
export const ROLES: readonly string[] = [
  'main-hoop',
  'rear-stay',
  'front-leg',
  'roof-side',
  'header',
  'dash-bar',
  'door-bar',
  'diagonal',
  'harness-bar',
  'sill-bar',
  'roof-diagonal',
  'gusset',
];

/** Every batch that a pull or a member names, once. */
export const batchesIn = ({ pulls, members }: Job): readonly string[] => [
  ...new Set([...pulls, ...members].flatMap(({ batch }) => (batch === undefined ? [] : [batch]))),
];

/** Where an `on` node is measured from, as one choice: "start", "end", or "2 middle" for the middle of bend 2. */
export const originOf = (at: Extract<Place, { kind: 'on' }>): string =>
  at.from === undefined ? `${at.bend} ${at.where}` : at.from;

export function originChoices(bends: number): Choice[] {
  const ofBends = Array.from({ length: bends }, (_, index) =>
    (['start', 'middle', 'end'] as const).map((where) => ({
      value: `${index + 1} ${where}`,
      label: `${where} of bend ${index + 1}`,
    })),
  );
  return [{ value: 'start', label: 'end A' }, { value: 'end', label: 'end B' }, ...ofBends.flat()];
}
