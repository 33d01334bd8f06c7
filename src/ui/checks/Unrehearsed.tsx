/** How many tubes were not rehearsed: of those nothing is found, which does not mean that they keep clear of machine and room. */
import type { ReactNode } from 'react';
import { rehearsals } from '../../core/stages/rehearsals.ts';
import { useDocument, useResults } from '../../store/page.ts';

export function Unrehearsed(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const made = useResults((state) => state.rehearsals);
  const whys = useResults((state) => state.unrehearsed);
  const missing = rehearsals.items(derived).filter(({ id }) => !made.has(id));
  const failed = missing.flatMap(({ id, name }) => {
    const why = whys.get(id);
    return why === undefined ? [] : [{ name, why }];
  });
  return unrehearsedInWords(missing.length - failed.length, failed).map((words) => (
    <p key={words} className="small">
      {words}
    </p>
  ));
}

/** Nothing where every tube that has a bender was rehearsed. */
export function unrehearsedInWords(
  waiting: number,
  failed: readonly { readonly name: string; readonly why: string }[],
): readonly string[] {
  const [first] = failed;
  return [
    ...(waiting === 0
      ? []
      : [`${tubes(waiting)} not rehearsed at the bender yet: what would be touched there is not found yet.`]),
    ...(first === undefined
      ? []
      : [
          `${tubes(failed.length)} not rehearsed at the bender, and will not be, which is a fault of the program: ${failed.map(({ name }) => name).join(', ')} (${first.why}). Nothing is known of what would be touched there.`,
        ]),
  ];
}

const tubes = (count: number): string => (count === 1 ? '1 tube is' : `${count} tubes are`);
