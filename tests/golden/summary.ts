/** A fabrication file in a page that a person can read and compare: lengths to 0.01 mm, angles to 0.01 degrees. */
import type { FabricationEnd, FabricationFile, FabricationTube } from '../../src/exports/tables/fabrication.ts';

export function summary({ job, tubes, clearances, gaps, findings }: FabricationFile): string {
  return [
    job,
    '',
    ...tubes.flatMap(tubeLines),
    '',
    ...clearances
      .filter(({ distance }) => distance < 100)
      .map(
        (each) =>
          `${each.envelope} to ${each.tube}: ${shown(each.distance)}, ${each.gap} wanted, ${each.ok ? 'kept' : 'not kept'}`,
      ),
    '',
    ...gaps.map(({ tubes: [a, b], distance }) => `${a} and ${b}: ${shown(distance)} between them`),
    '',
    ...findings.map((each) => `${each.severity} ${each.id} ${each.tube ?? ''} ${each.end ?? ''}`.trimEnd()),
    '',
  ].join('\n');
}

function tubeLines(tube: FabricationTube): string[] {
  return [
    `${tube.number} ${tube.id} (${tube.name}, ${tube.section}): blank ${shown(tube.blankLength)}, developed ${shown(tube.developedLength)}, sharp ${shown(tube.sharpCornerLength)}, ${tube.mass.toFixed(2)} kg`,
    ...tube.bends.map(
      (bend, i) => `    ${shown(tube.straights[i]!)} | turn ${shown(bend.rotation)} | bend ${shown(bend.angle)}`,
    ),
    ...(tube.bends.length > 0 ? [`    ${shown(tube.straights.at(-1)!)}`] : []),
    endLine('A', tube.ends[0]),
    endLine('B', tube.ends[1]),
  ];
}

function endLine(side: string, end: FabricationEnd): string {
  const cuts = end.cuts.map(
    (cut) =>
      `${cut.against} at ${shown(cut.includedAngle)} clocked ${shown(cut.clocking)} offset ${shown(cut.axisOffset)}${cut.onBend ? ' on its bend' : ''}`,
  );
  const butted = end.butted.map((id) => `butts ${id}`);
  return [
    `  ${side} ${end.node}: ${end.fit}`,
    ...cuts,
    ...butted,
    `tip ${shown(end.tip)} throat ${shown(end.throat)}`,
  ].join('; ');
}

/** To the hundredth; what rounds to nothing is 0.00 on either side of it, and half a turn is 180.00 either way round. */
function shown(value: number | null): string {
  const text = value === null ? 'none' : value.toFixed(2);
  return text === '-0.00' ? '0.00' : text === '-180.00' ? '180.00' : text;
}
