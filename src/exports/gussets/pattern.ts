/** The flat sheet of a gusset as marks, in its own axes: CUT its edge, BEND the middle line of a bend, MARK where that begins and ends. */
import type { Edge, Place2 as Place } from '../../core/gusset/edges.ts';
import type { Sheet } from '../../core/gusset/sheet.ts';
import { DASHED, FINE, FIRM, line, shape } from '../../drawing/strokes.ts';
import type { Mark, Place2 } from '../../drawing/types.ts';

export const sheetMarks = ({ edges, bends }: Pick<Sheet, 'edges' | 'bends'>): readonly Mark[] => [
  ...outlineMarks(edges),
  ...bends.flatMap(({ begins, middle, ends }) => [
    line('MARK', begins.map(drawn), DASHED),
    line('BEND', middle.map(drawn), FINE),
    line('MARK', ends.map(drawn), DASHED),
  ]),
];

/** One closed line; with an arc in it open lines and arcs, end to end, so that the arc stays one. */
function outlineMarks(edges: readonly Edge[]): readonly Mark[] {
  if (edges.every(({ kind }) => kind === 'line')) {
    return [
      shape(
        'CUT',
        edges.flatMap((edge) => (edge.kind === 'line' ? [drawn(edge.from)] : [])),
        FIRM,
      ),
    ];
  }
  const marks: Mark[] = [];
  let run: Place2[] = [];
  const close = (): void => {
    if (run.length > 1) marks.push(line('CUT', run, FIRM));
    run = [];
  };
  for (const edge of edges) {
    if (edge.kind === 'line') {
      if (run.length === 0) run.push(drawn(edge.from));
      run.push(drawn(edge.to));
    } else {
      close();
      marks.push({ ...edge, layer: 'CUT', centre: drawn(edge.centre), pen: FIRM });
    }
  }
  close();
  return marks;
}

const drawn = ([x, y]: Place): Place2 => ({ x, y });
