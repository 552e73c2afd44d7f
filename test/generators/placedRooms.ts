import fc from 'fast-check';
import {
  type BoardLayout,
  type BoardStock,
  type Joist,
  joistsFromPositions,
  type LayoutCheck,
  type Opening,
  rectangle,
  tryPlaceBoards,
} from 'soffitwright';
import { block } from './layoutsByHand.js';

/** A layout as the placement returned it, with all that it was placed by. */
export interface PlacedRoom {
  readonly check: LayoutCheck & { readonly layout: BoardLayout; readonly joists: readonly Joist[] };
}

const stock = (length: number, width: number, kerf: number): BoardStock => ({
  id: `${width} x ${length}`,
  length,
  width,
  thickness: 12.5,
  massPerArea: 8.4,
  edge: 'square',
  kerf,
});

/** Rooms of 2 to 4.8 m by 1 to 3.4 m, joists even or a little off, either way, with a hatch in half of them; nothing where no layout meets the rules. */
export const anyPlacedRoom: fc.Arbitrary<PlacedRoom | undefined> = fc
  .record({
    across: fc.integer({ min: 2000, max: 4800 }),
    along: fc.integer({ min: 1000, max: 3400 }),
    direction: fc.constantFrom('x' as const, 'y' as const),
    spacing: fc.constantFrom(400, 406, 450, 600),
    first: fc.integer({ min: 25, max: 300 }),
    strays: fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 14, maxLength: 14 }),
    width: fc.constantFrom(38, 47, 50, 63),
    size: fc.constantFrom([2400, 1200], [3000, 1200], [1800, 900]),
    kerf: fc.constantFrom(0, 3),
    hatch: fc.boolean(),
    place: fc.record({ x: fc.integer({ min: 10, max: 90 }), y: fc.integer({ min: 10, max: 90 }) }),
  })
  .map(({ across, along, direction, spacing, first, strays, width, size, kerf, hatch, place }) => {
    const outline = direction === 'y' ? rectangle(across, along) : rectangle(along, across);
    const far = outline[2];
    const [x, y] = [Math.round(((far.x - 600) * place.x) / 100), Math.round(((far.y - 500) * place.y) / 100)];
    const openings: Opening[] = hatch ? [{ kind: 'hatch', outline: block(x, x + 560, y, y + 460) }] : [];
    const room = { outline, openings };
    const positions = strays.map((stray, k) => first + k * spacing + stray).filter((at) => at > 25 && at < across - 25);
    const joists = joistsFromPositions({ room, direction, positions, width });
    const boards = [stock(size[0], size[1], kerf)];
    const attempt = tryPlaceBoards({ room, joists, boards });
    return attempt.ok ? { check: { room, joists, boards, layout: attempt.value } } : undefined;
  });
