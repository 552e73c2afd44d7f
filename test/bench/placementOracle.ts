import loadHighs, { type Highs } from 'highs';
import { type ModelQuestion, placementModel } from './placementModel.js';
import type { RoomToSolve } from './placementRun.js';

/** What the solver said. */
export interface OracleAnswer {
  readonly status: 'optimal' | 'infeasible' | 'unfinished';
  /** The optimum, when there is one. */
  readonly value?: number;
  /** ms, of the solver alone. */
  readonly time: number;
}

/** Seconds given to one model. */
const LIMIT = 60;

/** Starts the solver; what it returns answers questions about rooms. */
export async function placementOracle(limit = LIMIT) {
  const highs: Highs = await loadHighs();
  return (room: RoomToSolve, question: ModelQuestion): OracleAnswer => {
    const text = placementModel(room, question);
    if (text === undefined) return { status: 'infeasible', time: 0 };
    const start = performance.now();
    const { Status, ObjectiveValue } = highs.solve(text, { time_limit: limit, output_flag: false });
    const time = performance.now() - start;
    if (Status === 'Infeasible') return { status: 'infeasible', time };
    if (Status !== 'Optimal') return { status: 'unfinished', time };
    const value = Math.round(ObjectiveValue);
    if (Math.abs(value - ObjectiveValue) > 1e-4) throw new Error(`not a whole number: ${ObjectiveValue}`);
    return { status: 'optimal', value, time };
  };
}
