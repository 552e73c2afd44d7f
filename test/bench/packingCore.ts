import { rectangle, tryPlaceBoards } from 'soffitwright';
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
export function packed(instance: PackingInstance): Packed | undefined {
  const scale = Math.ceil(LEAST_BOARD / instance.capacity);
  const capacity = instance.capacity * scale;
  const lengths = instance.lengths.map((length) => length * scale);
  const positions: number[] = [];
  let end = 0;
  lengths.forEach((length, index) => {
    if (index > 0) {
      positions.push(end);
      end += capacity;
      positions.push(end);
    }
    end += length;
  });
  const attempt = tryPlaceBoards({
    room: { outline: rectangle(end, WIDTH) },
    joists: { direction: 'y', positions, width: 47 },
    boards: [{ id: 'bin', length: capacity, width: WIDTH, thickness: 12.5, massPerArea: 8.4, edge: 'square', kerf: 0 }],
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
  if (!attempt.ok) {
    if (attempt.reason === 'input') throw new Error(attempt.problems.map(({ message }) => message).join('\n'));
    return undefined;
  }
  const whole = lengths.length - 1;
  return { bins: attempt.value.boardsBought - whole, bound: attempt.value.bound - whole };
}

const WIDTH = 1200;

/** A board is at least so long, mm; shorter bins are made longer, with all that goes in them. */
const LEAST_BOARD = 1000;
