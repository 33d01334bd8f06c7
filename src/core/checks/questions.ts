/**
 * What a check of one tube may ask about the others, and about how it is fed. What it asked can be asked again of the next frame: where every answer
 * is the same, so is what it found.
 */
import type { Vec3 } from '../geometry/vector.ts';
import type { NodeRef, TubeRef } from '../job/reference.ts';
import { feedOf, type Feed } from '../solve/feed.ts';
import { landedOn, tubeNearest } from '../solve/bar-tubes.ts';
import type { Cut, Frame, SolvedTube } from '../solve/types.ts';

export interface Questions {
  readonly tube: (id: TubeRef) => SolvedTube;
  /** The tube that the cut fits its branch to. */
  readonly landedOn: (cut: Cut) => SolvedTube;
  /** The tube of the bar that comes nearest to the place. */
  readonly nearest: (bar: TubeRef, place: Vec3) => SolvedTube;
  /** The first tube after that one in build order that ends at the node, where that one ends too. */
  readonly laterAt: (node: NodeRef, tube: TubeRef) => SolvedTube | undefined;
  readonly feed: (tube: SolvedTube) => Feed;
}

/** A question that was asked, and its answer. */
export type Asked =
  | { readonly about: 'tube'; readonly answer: SolvedTube }
  | { readonly about: 'landed'; readonly cut: Cut; readonly answer: SolvedTube }
  | { readonly about: 'nearest'; readonly bar: TubeRef; readonly place: Vec3; readonly answer: SolvedTube }
  | {
      readonly about: 'later';
      readonly node: NodeRef;
      readonly tube: TubeRef;
      readonly answer: SolvedTube | undefined;
    }
  | { readonly about: 'feed'; readonly tube: SolvedTube; readonly answer: Feed };

/** The questions that a check of one tube may ask of this frame. */
export function questionsTo({ tubes, byId, bars, job }: Frame): Questions {
  const endingAt = new Map<NodeRef, SolvedTube[]>();
  for (const tube of tubes) {
    for (const { node } of tube.ends) {
      if (node === null) continue;
      const others = endingAt.get(node);
      if (others === undefined) endingAt.set(node, [tube]);
      else others.push(tube);
    }
  }
  return {
    tube: (id) => byId.get(id)!,
    landedOn: (cut) => landedOn(byId, cut),
    nearest: (bar, place) => tubeNearest(byId, bars.get(bar)!, place),
    laterAt(node, tube) {
      const ending = endingAt.get(node) ?? [];
      return ending[ending.findLastIndex(({ id }) => id === tube) + 1];
    },
    feed: (tube) => feedOf(job, tube),
  };
}

/** The same, with every question and its answer noted in `asked`. */
export function noting(ask: Questions, asked: Asked[]): Questions {
  return {
    tube(id) {
      const answer = ask.tube(id);
      asked.push({ about: 'tube', answer });
      return answer;
    },
    landedOn(cut) {
      const answer = ask.landedOn(cut);
      asked.push({ about: 'landed', cut, answer });
      return answer;
    },
    nearest(bar, place) {
      const answer = ask.nearest(bar, place);
      asked.push({ about: 'nearest', bar, place, answer });
      return answer;
    },
    laterAt(node, tube) {
      const answer = ask.laterAt(node, tube);
      asked.push({ about: 'later', node, tube, answer });
      return answer;
    },
    feed(tube) {
      const answer = ask.feed(tube);
      asked.push({ about: 'feed', tube, answer });
      return answer;
    },
  };
}

/** Whether the question has the same answer in this frame. */
export function answersTheSame(ask: Questions, asked: Asked): boolean {
  switch (asked.about) {
    case 'tube':
      return ask.tube(asked.answer.id) === asked.answer;
    case 'landed':
      return ask.landedOn(asked.cut) === asked.answer;
    case 'nearest':
      return ask.nearest(asked.bar, asked.place) === asked.answer;
    case 'later':
      return ask.laterAt(asked.node, asked.tube) === asked.answer;
    case 'feed':
      return ask.feed(asked.tube) === asked.answer;
  }
}
