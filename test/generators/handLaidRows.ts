import fc from 'fast-check';
import { type Joist, joistsFromPositions, type Piece, rectangle } from 'soffitwright';
import { handLaid, joint, wall } from './handLaid.js';

const side = fc.constantFrom('bound' as const, 'cut' as const);

/** Running dimensions from the first, step by step. */
function running(first: number, steps: readonly number[]): number[] {
  const marks = [first];
  for (const step of steps) marks.push(marks[marks.length - 1] + step);
  return marks;
}

/**
 * One or two rows laid by hand across joists along y, each with one butt joint, long edges bound or cut. The joists are wide
 * enough for both edge distances at a butt joint, so that no rule need be broken; nothing here is placed by the program.
 */
export const anyHandLaidRows = fc
  .record({
    first: fc.integer({ min: 40, max: 140 }),
    bays: fc.array(fc.integer({ min: 300, max: 600 }), { minLength: 3, maxLength: 7 }),
    width: fc.integer({ min: 41, max: 75 }),
    rows: fc.array(
      fc.record({ halves: fc.integer({ min: 400, max: 2400 }), joint: fc.nat(), edges: fc.record({ low: side, high: side }) }),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ first, bays, width, rows }) => {
    const positions = running(first, bays);
    const far = positions[positions.length - 1] + first;
    const levels = running(
      5,
      rows.map(({ halves }) => halves / 2),
    );
    const room = { outline: rectangle(far, levels[levels.length - 1] + 5) };
    const joists: readonly Joist[] = joistsFromPositions({ room, direction: 'y', positions, width });
    const pieces = rows.flatMap((row, i) => {
      const at = 1 + (row.joint % (positions.length - 2));
      const meeting = joint(positions[at], joists[at].id);
      const band = { low: levels[i], high: levels[i + 1], edges: row.edges };
      return [
        { id: `${i + 1}.1`, ends: [wall(5), meeting] as const, ...band },
        { id: `${i + 1}.2`, ends: [meeting, wall(far - 5)] as const, ...band },
      ];
    });
    return { room, joists, layout: handLaid(...pieces) as { readonly pieces: readonly Piece[] } };
  });
