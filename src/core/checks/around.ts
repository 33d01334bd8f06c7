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

export interface Asked {
  readonly again: (around: Around) => unknown;
  readonly answer: unknown;
}

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
  const noted = <T>(again: (around: Around) => T): T => {
    const answer = again(around);
    asked.push({ again, answer });
    return answer;
  };
  return {
    tube: (id) => noted((each) => each.tube(id)),
    laterAt: (node, number) => noted((each) => each.laterAt(node, number)),
    feed: (tube) => noted((each) => each.feed(tube)),
  };
}
