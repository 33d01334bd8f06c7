/**
 * A real job that is soon made, for tests that make every file: an earlier demo's main hoop, rear stays and main diagonal alone. These are
 * four tubes with bends, plates, copes, an end with two cutters, and one tube that is the mirror of another. All of it in the
 * long run.
 */
import { secondRoundText } from './command-line.ts';
import { LONG } from './draws.ts';

export const FEW_TUBES_NAME = 'Few tubes';

interface Part {
  readonly members: readonly { readonly path: readonly string[] }[];
  readonly nodes: readonly { readonly id: string }[];
}

/** The text of its file. */
export function fewTubes(): string {
  const job = JSON.parse(secondRoundText()) as Part;
  const members = LONG ? job.members : job.members.slice(0, 3);
  const ends = new Set(members.flatMap(({ path }) => path.map((id) => id.replace(/'$/u, ''))));
  const nodes = LONG ? job.nodes : job.nodes.filter(({ id }) => ends.has(id));
  return JSON.stringify({ ...job, name: FEW_TUBES_NAME, members, nodes });
}
