/** The cutting plan in the words of the shop. Lengths as `show` gives them. */
import type { NoStick } from '../checks/types.ts';
import type { SolvedTube } from '../solve/types.ts';

/** What its cut wants, and what to get. */
export function noStickInWords(
  { why, length, get }: NoStick,
  { tube, show }: { readonly tube: SolvedTube; readonly show: (mm: number) => string },
): string {
  const cut = `${tube.name}: ${show(length)} to cut,`;
  const section = tube.section.name;
  const together =
    get.parts > 1 ? ` for it and ${get.parts === 2 ? '1 other part' : `${get.parts - 1} other parts`}` : '';
  const sticks = `${get.count} more ${get.count === 1 ? 'stick' : 'sticks'} of ${show(get.length)}`;
  if (why === 'too-long')
    return `${cut} and no stick of ${section} in this job is that long. Get one of ${show(get.length)} or more.`;
  if (why === 'batch')
    return `${cut} and too little of ${section} is there of batch ${get.batch}. Get ${sticks} of that batch${together}, or name another batch for the tube.`;
  return `${cut} and too little of ${section} is there. Get ${sticks}${together}.`;
}
