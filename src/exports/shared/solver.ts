/** The library that solves linear programs (HiGHS), as the cutting plan asks for it. It is large, and started only where a plan is not proven without. */
import type { Highs } from 'highs';
import type { Solved, Solver } from '../../core/stock/program.ts';

/** How it is started: told where its file lies, which it loads by itself. */
export type LoadHighs = (where: { readonly locateFile: () => string }) => Promise<Highs>;

/** `file`: a path or address of highs.wasm. Rejects where it cannot be loaded. */
export async function startSolver(load: LoadHighs, file: string): Promise<Solver> {
  const highs = await load({ locateFile: () => file });
  return { solve: (program, mostLooks) => solved(highs, program, mostLooks) };
}

/** One that knows no answer: what is planned without stays as it is. */
export const noSolver: Solver = {
  solve: () => ({ ended: 'tired', values: new Map(), prices: new Map() }),
};

function solved(highs: Highs, program: string, mostLooks: number): Solved {
  const { Status, Columns, Rows } = highs.solve(program, {
    output_flag: false,
    mip_rel_gap: 0, // to the last step of cost, not to a share
    mip_max_nodes: mostLooks,
    random_seed: 0,
  });
  const values = new Map<string, number>();
  for (const [name, column] of Object.entries(Columns)) {
    const value = 'Primal' in column ? column.Primal : 0;
    if (value !== undefined && value !== 0) values.set(name, value);
  }
  const prices = new Map(Rows.flatMap((row) => ('Dual' in row ? [[row.Name, row.Dual] as const] : [])));
  return { ended: Status === 'Optimal' ? 'solved' : Status === 'Infeasible' ? 'none' : 'tired', values, prices };
}
