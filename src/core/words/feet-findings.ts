/** What is found of a tube that comes down beside its foot, in words. */
import type { OffFoot } from '../checks/made-types.ts';
import type { Job } from '../job/types.ts';
import { shownName } from '../job/shown.ts';
import { listed } from './lists.ts';
import { offInWords } from './seat-findings.ts';

/** After the tube's name and end: by how much, which way, and what to do. */
export function offFootInWords(
  { foot: id, aside, up, along, over }: OffFoot,
  { feet }: Job,
  show: (mm: number) => string,
): string {
  const foot = feet.find((each) => each.id === id)!;
  const name = shownName(foot.name);
  const isAside = aside.some((part) => part !== 0);
  const where = [
    ...(isAside ? [`${offInWords(aside, show)} than it was drawn on ${name}`] : []),
    ...(up === 0 ? [] : [up > 0 ? `${show(up)} above ${name}` : `${show(-up)} lower than ${name} takes it`]),
  ];
  const past = over > 0 ? ` Its outline stands ${show(over)} past the edge there.` : '';
  const set = `Set it where the tube comes down, if it is not welded yet; else ${over > 0 ? 'make it larger' : 'the tube still stands on it'}.`;
  const height =
    up > 0
      ? `Make it ${show(up)} higher, or pack it.`
      : `Cut the tube ${show(-along)} shorter there than its sheet says.`;
  const mends = [...(isAside ? [set] : []), ...(up === 0 ? [] : [height])];
  return `comes down ${listed(where)}.${past} ${mends.join(' ')}`;
}
