import type { End, FixedLayout, Piece } from 'soffitwright';

/** Layouts laid by hand for tests of fixings, joists along y. */

export const wall = (position: number): End => ({ meets: 'wall', position, made: 'cut' });
export const joint = (position: number, joist: string): End => ({ meets: 'board', joist, position, made: 'cut' });

const JOINT = 3;

export interface HandLaidPiece {
  readonly id: string;
  readonly ends: readonly [End, End];
  readonly low: number;
  readonly high: number;
  readonly edges?: Piece['edges'];
  readonly holes?: Piece['holes'];
}

/** One piece across the joists, cut half a joint gap short at each butt joint. */
export function handLaidPiece({ id, ends, low, high, edges = { low: 'bound', high: 'bound' }, holes }: HandLaidPiece): Piece {
  const [from, to] = [
    ends[0].position + (ends[0].meets === 'board' ? JOINT / 2 : 0),
    ends[1].position - (ends[1].meets === 'board' ? JOINT / 2 : 0),
  ];
  return {
    id,
    row: 1,
    outline: [
      { x: from, y: low },
      { x: to, y: low },
      { x: to, y: high },
      { x: from, y: high },
    ],
    ...(holes && { holes }),
    length: ends[1].position - ends[0].position,
    cutLength: to - from,
    width: high - low,
    board: 'B1',
    at: { along: 0, across: 0 },
    ends,
    edges,
    tight: false,
    massKg: ((to - from) * (high - low) * 8.4) / 1e6,
  };
}

export const handLaid = (...pieces: HandLaidPiece[]): FixedLayout => ({ pieces: pieces.map(handLaidPiece) });
