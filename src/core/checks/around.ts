/**
 * What a check of one tube may ask about the others, and about how it is fed. What it asked can be asked again of the next frame: where every answer
 * is the same, so is what it found.
 */
import type { NodeRef, TubeRef } from '../job/reference.ts';
import { feedOf, type Feed } from '../solve/feed.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

export interface Around {
  readonly tube: (id: TubeRef) => SolvedTube;
  /** The first tube after that number in build order that ends at the node. */
  readonly laterAt: (node: NodeRef, number: number) => SolvedTube | undefined;
  readonly feed: (tube: SolvedTube) => Feed;
}

/** A question that was asked, and its answer. */
export type Asked =
  | { readonly about: 'tube'; readonly answer: SolvedTube }
  | {
      readonly about: 'later';
      readonly node: NodeRef;
      readonly number: number;
      readonly answer: SolvedTube | undefined;
    }
  | { readonly about: 'feed'; readonly tube: SolvedTube; readonly answer: Feed };

/** The questions that a check of one tube may ask of this frame. */
export function aroundOf({ tubes, byId, job }: Frame): Around {
  const endingAt = new Map<NodeRef, SolvedTube[]>();
  for (const tube of tubes) {
    for (const { node } of tube.ends) {
      const others = endingAt.get(node);
      if (others === undefined) endingAt.set(node, [tube]);
      else others.push(tube);
    }
  }
  return {
    tube: (id) => byId.get(id)!,
    laterAt: (node, number) => endingAt.get(node)?.find((other) => other.number > number),
    feed: (tube) => feedOf(job, tube),
  };
}

/** The same, with every question and its answer noted in `asked`. */
export function noting(around: Around, asked: Asked[]): Around {
  return {
    tube(id) {
      const answer = around.tube(id);
      asked.push({ about: 'tube', answer });
      return answer;
    },
    laterAt(node, number) {
      const answer = around.laterAt(node, number);
      asked.push({ about: 'later', node, number, answer });
      return answer;
    },
    feed(tube) {
      const answer = around.feed(tube);
      asked.push({ about: 'feed', tube, answer });
      return answer;
    },
  };
}

/** Whether the question has the same answer in this frame. */
export function answersTheSame(around: Around, asked: Asked): boolean {
  switch (asked.about) {
    case 'tube':
      return around.tube(asked.answer.id) === asked.answer;
    case 'later':
      return around.laterAt(asked.node, asked.number) === asked.answer;
    case 'feed':
      return around.feed(asked.tube) === asked.answer;
  }
}
