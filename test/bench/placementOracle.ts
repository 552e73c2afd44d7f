import loadHighs, { type Highs } from 'highs';
import { type ModelQuestion, type PlacementModel, placementModel } from './placementModel.js';
import type { RoomToSolve } from './placementRows.js';

/** What the solver said. */
export interface OracleAnswer {
  readonly status: 'optimal' | 'infeasible' | 'unfinished';
  /** The optimum, when there is one. */
  readonly value?: number;
  /** ms, of the solver alone. */
  readonly time: number;
  /** The values of the variables, when there is an optimum, and the model that they solve. */
  readonly solution?: { readonly model: PlacementModel; readonly count: (name: string) => number };
}

/** Seconds given to one model. */
const LIMIT = 60;

/** Starts the solver; what it returns answers questions about rooms. */
export async function placementOracle(limit = LIMIT) {
  const highs: Highs = await loadHighs();
  return (room: RoomToSolve, question: ModelQuestion): OracleAnswer => {
    const model = placementModel(room, question);
    if (model === undefined) return { status: 'infeasible', time: 0 };
    const start = performance.now();
    const { Status, ObjectiveValue, Columns } = highs.solve(model.text, { time_limit: limit, output_flag: false });
    const time = performance.now() - start;
    if (Status === 'Infeasible') return { status: 'infeasible', time };
    if (Status !== 'Optimal') return { status: 'unfinished', time };
    const value = Math.round(ObjectiveValue);
    if (Math.abs(value - ObjectiveValue) > 1e-4) throw new Error(`not a whole number: ${ObjectiveValue}`);
    const count = (name: string): number => Math.round((Columns[name] as { Primal: number } | undefined)?.Primal ?? 0);
    return { status: 'optimal', value, time, solution: { model, count } };
  };
}
