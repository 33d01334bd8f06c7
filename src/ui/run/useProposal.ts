/** The order that keeps the tube clear of machine and room, once it is found; and in words why there is none, or not yet. */
import type { BendStep } from '../../core/job/kinds/bent.ts';
import type { Rehearsal, RehearsedStep } from '../../core/rehearse/types.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import { noOrderInWords, troubleInWords } from '../../core/words/rehearsal.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { useResults } from '../../store/page.ts';
import { notRehearsedInWords } from '../bending/not-rehearsed.ts';

export interface Proposal {
  /** Null where none is known. */
  readonly order: readonly BendStep[] | null;
  readonly words: string;
  /** The order in which the marks come runs into something, and the proposed one does not. */
  readonly better: boolean;
  /** Every order runs into something. */
  readonly barred: boolean;
}

/** `usual`: the order in which the marks come. */
export const useProposal = (tube: SolvedTube, usual: readonly BendStep[]): Proposal =>
  proposalOf(
    tube,
    usual,
    useResults((state) => state.rehearsals.get(tube.id)),
    useResults((state) => state.unrehearsed.get(tube.id)),
  );

/** `whyNot`: why there is no rehearsal and none will come. */
export function proposalOf(
  tube: SolvedTube,
  usual: readonly BendStep[],
  rehearsal: Rehearsal | undefined,
  whyNot: string | undefined,
): Proposal {
  if (tube.die?.bender === undefined) {
    const words =
      'The bender of this die is not set up in Frame: no order could be tried against machine and room. It counts as one that bends to the left and is read to half a degree.';
    return { order: null, words, better: false, barred: false };
  }
  if (rehearsal === undefined) {
    const words = whyNot === undefined ? 'Trying the orders against machine and room.' : notRehearsedInWords(whyNot);
    return { order: null, words, better: false, barred: false };
  }
  const { plain, proposed, reason } = rehearsal;
  if (proposed === null)
    return {
      order: null,
      words: `No order keeps clear: ${reason === null ? '' : noOrderInWords(reason)}.`,
      better: false,
      barred: true,
    };
  const order = proposed.map(({ bend, front }) => ({ bend, front }));
  if (sameOrder(order, usual))
    return { order, words: 'It keeps clear of machine and room.', better: false, barred: false };
  const keepsClear = 'The proposed order keeps clear of machine and room.';
  const wrong = sameOrder(plain, usual) ? plain.find(isTroubled) : undefined;
  const words =
    wrong === undefined ? keepsClear : `${keepsClear} As the marks come, bend ${wrong.bend} ${troubleInWords(wrong)}.`;
  return { order, words, better: wrong !== undefined, barred: false };
}

const isTroubled = ({ hit, cannotHold }: RehearsedStep): boolean => hit !== null || cannotHold !== null;
