import type { BoardLayout } from '../boards/boardLayout.js';
import type { Relaxation } from '../boards/infeasibleError.js';
import type { Finding } from '../rules/finding.js';

/** A ceiling boarded with one size, or with a mix of sizes. Lengths in mm. */
export interface BoardsThatServe {
  readonly ok: true;
  /** Ids of the stocks. */
  readonly boards: readonly string[];
  readonly boardsBought: number;
  readonly boardsByStock: BoardLayout['boardsByStock'];
  /** Butt joints. */
  readonly endJoints: number;
  readonly pieces: number;
  readonly cuts: number;
  /** All joints between boards. */
  readonly jointLength: number;
  readonly screws: number;
  /** The heaviest piece that is lifted, and all of them together, kg. */
  readonly heaviestKg: number;
  readonly liftedKg: number;
  readonly cost?: number;
  readonly wasteAreaM2: number;
  /** No layout of these boards has fewer, and whether this one has no more. */
  readonly bound: number;
  readonly proven: boolean;
  /** For a person, in site words; may change between versions. */
  readonly words: string;
  /** What a plan with these boards would say of its layout, in order of severity. */
  readonly findings: readonly Finding[];
}

/** Boards that the ceiling cannot be boarded with. */
export interface BoardsThatDoNot {
  readonly ok: false;
  readonly boards: readonly string[];
  /** Why not, in words. */
  readonly words: string;
  /** What would make it possible, each enough by itself. */
  readonly relaxations: readonly Relaxation[];
}

/** Sizes and mixes for one ceiling, the best by the job's preference first and those that do not serve last. */
export interface BoardsComparison {
  readonly alternatives: readonly (BoardsThatServe | BoardsThatDoNot)[];
}
