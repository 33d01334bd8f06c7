/** A sampled profile in a few lines: the functions that took longest themselves, and those that did with all they called. */

interface ProfileNode {
  readonly id: number;
  readonly callFrame: { readonly functionName: string; readonly url: string; readonly lineNumber: number };
  readonly children?: readonly number[];
}

interface Profile {
  readonly nodes: readonly ProfileNode[];
  readonly samples?: readonly number[];
  readonly timeDeltas?: readonly number[];
}

const SHOWN = 40;

export function hottest({ nodes, samples = [], timeDeltas = [] }: Profile): readonly string[] {
  const own = new Map<number, number>();
  samples.forEach((id, i) => own.set(id, (own.get(id) ?? 0) + timeDeltas[i]! / 1000));
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const nameOf = ({ callFrame: { functionName, url, lineNumber } }: ProfileNode): string =>
    `${functionName || 'anonymous'} ${url.split('/').at(-1)}:${lineNumber}`;
  const [selves, wholes] = [new Map<string, number>(), new Map<string, number>()];
  const add = (to: Map<string, number>, name: string, ms: number) => to.set(name, (to.get(name) ?? 0) + ms);
  const walk = (id: number, above: ReadonlySet<string>): number => {
    const node = byId.get(id)!;
    const name = nameOf(node);
    const within = new Set(above).add(name);
    const self = own.get(id) ?? 0;
    const whole = (node.children ?? []).reduce((sum, child) => sum + walk(child, within), self);
    add(selves, name, self);
    if (!above.has(name)) add(wholes, name, whole);
    return whole;
  };
  walk(nodes[0]!.id, new Set());
  const list = (title: string, of: Map<string, number>): string[] => [
    title,
    ...[...of]
      .toSorted((a, b) => b[1] - a[1])
      .slice(0, SHOWN)
      .map(([name, ms]) => `  ${ms.toFixed(1).padStart(8)} ms  ${name}`),
  ];
  return [...list('themselves:', selves), ...list('with all they called:', wholes)];
}
