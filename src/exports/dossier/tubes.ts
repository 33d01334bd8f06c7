/** The tubes, with the heat that each is cut from and the certificates of it. */
import type { Section } from '../../core/job/kinds/section.ts';
import { certificatesOf } from '../../core/job/kinds/certificate.ts';
import { shownName } from '../../core/job/shown.ts';
import { sectionSize } from '../../core/job/sizes.ts';
import { cutLengths } from '../../core/cope/end-cut.ts';
import { heatOf } from '../../core/stock/heat.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { steelInWords } from '../../core/springback/steels.ts';
import { LENGTH_NAMES } from '../../core/words/blank.ts';
import { NO_TUBE } from '../sheets/cautions.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';

const COLUMNS: readonly Column[] = [
  { name: 'No.', share: 0.05, bold: true },
  { name: 'Tube', share: 0.24, bold: true },
  { name: 'Role', share: 0.13 },
  { name: 'Size', share: 0.15 },
  { name: LENGTH_NAMES.tips, share: 0.12, figures: true },
  { name: 'Batch', share: 0.09 },
  { name: 'Certificate', share: 0.22 },
];

const HEATS: readonly Column[] = [
  { name: 'Batch', share: 0.12, bold: true },
  { name: 'Certificate', share: 0.3 },
  { name: 'Of tube', share: 0.18 },
  { name: 'Note', share: 0.2 },
  { name: 'Tubes cut from it', share: 0.2 },
];

export function tubesPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const { tubes } = derived;
  if (tubes.length === 0) return [opened(context, 'Tubes', [], said(context, NO_TUBE))];
  const called = sizesOf(context);
  const certified = (tube: SolvedTube) => certificatesOf(namedIn(context), ofHeat(context, tube));
  const rows = tubes.map((tube) => [
    String(tube.number),
    tube.name,
    tube.member.role.replaceAll('-', ' '),
    called.get(tube.section.id)!,
    lengthInWords(cutLengths(tube).tips, unit),
    shownName(heatOf(derived.job, tube) ?? '–'),
    certified(tube)
      .map(({ certificate }) => shownName(certificate))
      .join('; ') || '–',
  ]);
  return [
    opened(
      context,
      'Tubes',
      [`${LENGTH_NAMES.tips}: as finished, with nothing left long. A dash: not noted in the job. ${steels(context)}`],
      table(context, COLUMNS, rows),
    ),
    ...heats(context),
  ];
}

/** What a certificate has to be of. */
function ofHeat({ derived: { job } }: Context, tube: SolvedTube) {
  const batch = heatOf(job, tube);
  return { section: tube.section.id, ...(batch !== undefined && { batch }) };
}

const usedIn = ({ derived: { tubes, job } }: Context) =>
  job.sections.filter(({ id }) => tubes.some(({ section }) => section.id === id));

/** Sections by their size; where two of one size are used, by their name too. */
function sizesOf(context: Context): ReadonlyMap<string, string> {
  const used = usedIn(context);
  const size = (section: Section): string => sectionSize(section, context.unit);
  const alike = (section: Section): boolean => used.filter((other) => size(other) === size(section)).length > 1;
  return new Map(
    used.map((section) => [section.id, alike(section) ? `${size(section)}, ${section.name}` : size(section)]),
  );
}

const steels = (context: Context): string => {
  const called = sizesOf(context);
  return usedIn(context)
    .map((section) => `${called.get(section.id)}: ${steelInWords(section)}.`)
    .join(' ');
};

/** A row that nobody has named a certificate in is none. */
const namedIn = ({ derived: { job } }: Context) =>
  job.certificates.filter(({ certificate }) => certificate.trim() !== '');

function heats(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const { tubes, job } = derived;
  const named = namedIn(context);
  const rows = named.map((each) => {
    const of = tubes.filter((tube) => certificatesOf([each], ofHeat(context, tube)).length > 0);
    const section = job.sections.find(({ id }) => id === each.section);
    return [
      shownName(each.batch),
      shownName(each.certificate),
      section === undefined ? 'any' : sectionSize(section, unit),
      shownName(each.note ?? ''),
      numbersOf(of) || 'none',
    ];
  });
  const without = tubes.filter((tube) => heatOf(job, tube) === undefined);
  const bare = tubes.filter(
    (tube) => !without.includes(tube) && certificatesOf(named, ofHeat(context, tube)).length === 0,
  );
  const notes = [
    ...(without.length === 0 ? [] : [`Without a batch: ${numbersOf(without)}.`]),
    ...(bare.length === 0 ? [] : [`With a batch of which the job has no certificate: ${numbersOf(bare)}.`]),
  ];
  const list = rows.length === 0 ? said(context, 'The job names no certificate.') : table(context, HEATS, rows);
  return [opened(context, 'Batches and certificates', [], list), said(context, ...notes)];
}

/** "1, 4, 5": as they are chalked. */
export const numbersOf = (tubes: readonly SolvedTube[]): string => tubes.map(({ number }) => number).join(', ');
