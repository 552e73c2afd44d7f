import { placementProblem } from '../../src/boards/placementProblem.js';
import { searchLayout } from '../../src/boards/searchLayout.js';
import type { PackingInstance } from './packingSets.js';

/** What came out for one instance. */
export interface Packed {
  readonly bins: number;
  /** Fewer are not enough. */
  readonly bound: number;
}

/**
 * Packs an instance by laying boards of its capacity in a corridor one row wide, whose joists leave nothing to choose: each
 * length, then a whole board, then the next length. No two neighbours fit on one board together, so every length is a piece of
 * its own, and what is left to find is how to cut them.
 */
export function packed({ capacity, lengths }: PackingInstance): Packed | undefined {
  const bin = capacity * SCALE;
  const positions: number[] = [];
  let end = 0;
  lengths.forEach((length, index) => {
    if (index > 0) {
      positions.push(end);
      end += bin;
      positions.push(end);
    }
    end += length * SCALE;
  });
  // Past the door, which admits no room so long.
  const problem = placementProblem({
    room: {
      outline: [
        { x: 0, y: 0 },
        { x: end, y: 0 },
        { x: end, y: WIDTH },
        { x: 0, y: WIDTH },
      ],
    },
    joists: { direction: 'y', positions, width: 47 },
    boards: [{ id: 'bin', length: bin, width: WIDTH, thickness: 12.5, massPerArea: 8.4, edge: 'square', kerf: 0 }],
    rules: {
      'perimeter.gap': 0,
      'joint.gap': 0,
      'row.minimumWidth': 0,
      'piece.minimumLength': 0,
      'piece.minimumSupports': 0,
      'stagger.minimum': 0,
    },
    rowWidths: [WIDTH],
  });
  const { laid, bound } = searchLayout(problem);
  const whole = lengths.length - 1;
  return laid && { bins: laid.boards.length - whole, bound: bound - whole };
}

const WIDTH = 1200;
/** mm for one of an instance's units: joists stand further apart than they are wide. */
const SCALE = 10;
