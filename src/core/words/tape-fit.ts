/** In words what a tape's figures say of a tube that is bent, what they do not tell, and why nothing is taken over. */
import type { Marking } from '../job/kinds/marking.ts';
import type { CheckDimension } from '../run/check-dimensions.ts';
import type { FittedFigure, NoFit, TapeFit } from '../run/fit-tape.ts';
import type { Fitted } from '../run/fitted-bends.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { capital, listed } from './lists.ts';
import { checkInWords } from './run.ts';

/** What a part of a bend is called in a sentence. */
export const partInWords = ({ what, bend }: Pick<Fitted, 'what' | 'bend'>): string =>
  what === 'angle'
    ? `the angle of bend ${bend}`
    : what === 'rotation'
      ? `the rotation of bend ${bend}`
      : `where bend ${bend} lies`;

/** Where a fit's starts are counted from, as a sentence: as the marks are, on a tube whose grip is sawn off. */
export const startsCountFrom = (from: Marking['from']): string =>
  from === 'middle'
    ? 'Starts count from the line round the middle, as the marks do.'
    : `Starts count from the sawn end ${from}, as the marks do once the grip is off.`;

/** A figure, as it is called where it stands in a sentence's middle. */
const named = (figure: FittedFigure): string => `“${checkInWords(figure)}”`;

/** All that has to be said beside the figures, one sentence or two each: what is wrong with them, and what else there is to know. */
export interface FitWords {
  readonly wrong: readonly string[];
  readonly more: readonly string[];
}

/** Of more parts than these it is not said by name that they are not told: the table shows it. */
const NAMED_PARTS = 3;

export function fitInWords(fit: TapeFit, unit: LengthUnit): FitWords {
  const { parts, together, figures, no } = fit;
  const off = figures.flatMap((figure) =>
    figure.others === null ? [] : leftOut(figure, figure.others, figures.length, unit),
  );
  if (no !== null && no.why !== 'nothing-told') return { wrong: [noFitInWords(no, figures), ...off], more: [] };
  const untold = (isRead: boolean) => parts.filter((part) => !part.told && part.isRead === isRead).map(partInWords);
  const left = [
    [untold(false), 'What is not told', 'left as planned'],
    [untold(true), 'What is not told and was read', 'left as read'],
  ] as const;
  const wrong = no === null ? off : [...off, noFitInWords(no, figures)];
  const more = [
    ...left.flatMap(([names, all, so]) => {
      if (names.length === 0) return [];
      if (no === null && names.length > NAMED_PARTS) return [`${all} is ${so}.`];
      return [`The figures do not tell ${listed(names)}: ${so}.`];
    }),
    ...together.map(
      (places) =>
        `${capital(listed(places.map((i) => partInWords(parts[i]!))))} are told only together: what is too much in one may lie in the other.`,
    ),
    ...(fit.sideOpen
      ? [
          'How far it stands off flat does not say to which side: its rotations are left as they are until you say that.',
        ]
      : []),
  ];
  return { wrong, more };
}

function leftOut(figure: FittedFigure, others: number, count: number, unit: LengthUnit): readonly string[] {
  const say = `${formatLength(others, unit).text} ${unit}`;
  return [
    count === 1
      ? `${named(figure)} is too far from what is planned: measure it again; by the plan it is ${say}.`
      : `${named(figure)} does not agree with the rest: measure it again; the others say ${say}. It is left out.`,
  ];
}

function noFitInWords(no: NoFit, figures: readonly FittedFigure[]): string {
  const of = (id: CheckDimension['id']): string => named(figures.find((figure) => figure.id === id)!);
  switch (no.why) {
    case 'impossible':
      return no.beyond === 'short'
        ? `${of(no.id)} cannot be: it is less than the tube is thick. Measure it again.`
        : `${of(no.id)} cannot be: it is more than the tube is long. Measure it again.`;
    case 'disagree':
      return `${listed(no.ids.map(of))} do not agree with each other: one of them is misread. Measure them again.`;
    case 'another-tube':
      return 'No tube that was bent to this plan reads so: more than one figure is misread, or it is another tube.';
    case 'nothing-told':
      return 'These figures tell nothing yet that is not known: measure more of the tube.';
  }
}
