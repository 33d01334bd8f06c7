/**
 * Findings that say one thing, put together: of a tube and of its mirror image, and of all tubes that end at one joint. A joint that is named
 * from both sides is one thing to mend.
 */
import { bareId } from '../job/reference.ts';
import type { Frame } from '../solve/types.ts';
import type { Finding } from './types.ts';

export interface Group {
  readonly first: Finding;
  /** The others, in the order in which they were found. */
  readonly more: readonly Finding[];
}

/** In the order of the first of each. Every finding stands in one group. */
export function grouped(findings: readonly Finding[], { byId }: Pick<Frame, 'byId'>): readonly Group[] {
  const groups = new Map<string, { first: Finding; more: Finding[] }>();
  for (const finding of findings) {
    const key = keyOf(finding, byId);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { first: finding, more: [] });
    else group.more.push(finding);
  }
  return [...groups.values()];
}

function keyOf(finding: Finding, byId: Frame['byId']): string {
  const { id, severity, tube, end, bend, node, envelope } = finding;
  if ('runTube' in finding && node !== undefined) {
    const run = byId.get(finding.runTube);
    return JSON.stringify([id, severity, bareId(node), bareId(run?.bar ?? finding.runTube)]);
  }
  // Where a bar is cut both pieces end at the one that runs through.
  if ('runTube' in finding && end !== undefined && node === undefined) {
    return JSON.stringify([id, severity, bareId(byId.get(tube)?.bar ?? tube), bareId(finding.runTube)]);
  }
  const partner = 'other' in finding ? finding.other : 'mate' in finding ? finding.mate : undefined;
  const trim = 'trim' in finding ? [finding.trim.kind, bareId(finding.trim.id)] : undefined;
  const guess = 'point' in finding ? finding.point : undefined;
  const into = 'into' in finding ? bareId(finding.into) : '';
  const gusset = 'gusset' in finding ? [finding.gusset, 'along' in finding ? finding.along : into] : undefined;
  return JSON.stringify([
    id,
    severity,
    bareId(tube),
    end,
    bend,
    envelope,
    partner && bareId(partner),
    trim,
    guess ?? (id === 'node/guessed' ? node : undefined),
    gusset,
  ]);
}
