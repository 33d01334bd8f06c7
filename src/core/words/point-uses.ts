/** What becomes of a point's readings, and what keeps it, when somebody deletes it. */
import type { PointUses } from '../survey/point-uses.ts';
import { listed } from './lists.ts';

/** "3 readings and 1 coordinate that is held go with it. 1 pair of a scan keeps it: take that out first."; '' where nothing has to do with it. */
export function pointUsesInWords({ readings, holds, pairs, seats, drivers }: PointUses): string {
  const going = [
    ...counted(readings, 'reading', 'readings'),
    ...counted(holds, 'coordinate that is held', 'coordinates that are held'),
  ];
  const keeping = [
    ...counted(pairs, 'pair of a scan', 'pairs of scans'),
    ...counted(seats, 'tube that stands by it', 'tubes that stand by it'),
    ...counted(drivers, 'driver', 'drivers'),
  ];
  const isOne = (count: number): boolean => count === 1;
  return [
    ...(going.length === 0 ? [] : [`${listed(going)} ${isOne(readings + holds) ? 'goes' : 'go'} with it.`]),
    ...(keeping.length === 0
      ? []
      : [
          `${listed(keeping)} ${isOne(pairs + seats + drivers) ? 'keeps it: change or take that out' : 'keep it: change or take these out'} first.`,
        ]),
  ].join(' ');
}

const counted = (count: number, one: string, more: string): readonly string[] =>
  count === 0 ? [] : [`${count} ${count === 1 ? one : more}`];
