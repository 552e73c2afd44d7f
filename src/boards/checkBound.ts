import * as z from 'zod/mini';
import { admit } from '../survey/door.js';
import { arePrices } from './arePrices.js';
import type { Certificate, CertifiedRows } from './certificate.js';
import { onAnyRows } from './holdsOnAnyRows.js';
import { placementProblem } from './placementProblem.js';
import { type PlacementRequest, placementRequestSchema } from './placementRequest.js';
import { provenBoards } from './provenBoards.js';
import { relax } from './relax.js';
import type { RowLayout } from './rowLayouts.js';
import type { RowSpace } from './rowSpace.js';
import { rowSpaces } from './rowSpaces.js';
import { searchRows } from './searchRows.js';
import { solve } from './solveRelaxation.js';

/** What {@link checkBound} takes. */
export interface BoundCheck {
  readonly request: PlacementRequest;
  readonly certificate: Certificate;
  /** Boards. */
  readonly bound: number;
}

const requestSchema: z.ZodMiniType<BoundCheck> = z.strictObject({
  request: placementRequestSchema,
  certificate: z.strictObject({
    kind: z.enum(['prices', 'search']),
    divisions: z.array(
      z.strictObject({
        rowWidths: z.array(z.number()),
        pieces: z.optional(z.array(z.number())),
        boards: z.optional(z.array(z.number())),
      }),
    ),
  }),
  bound: z.int(),
});

/** Steps of the search where prices are not enough. */
const STEPS = 2_000_000;

/**
 * Whether a certificate proves that no layout takes fewer boards than a bound.
 *
 * Each division of the ceiling into rows is looked at anew. Its prices are held against every way to cut a board, and the rows
 * against the lightest way to divide them at those prices, in whole numbers: that is all of the proof. Only where a certificate
 * says that it took a search is the search made again.
 *
 * @param check - the request as it was given to `placeBoards`; the certificate and the bound that came back
 * @returns `false` where the certificate does not prove the bound, whatever else may be true
 * @throws InputError when a value is missing, unknown or out of range
 * @example
 * ```ts
 * import { checkBound, placeBoards, rectangle } from 'soffitwright';
 *
 * const request = {
 *   room: { outline: rectangle(3600, 3000) },
 *   joists: { direction: 'y' as const, first: 25, spacing: 400, last: 3575, width: 47 },
 *   boards: [{ id: '2400', length: 2400, width: 1200, thickness: 12.5, massPerArea: 8.4, edge: 'square' as const }],
 * };
 * const { bound, certificate } = placeBoards(request);
 * console.log(certificate !== undefined && checkBound({ request, certificate, bound }));
 * // true
 * ```
 */
export function checkBound(check: BoundCheck): boolean {
  admit(requestSchema, check);
  const { request, certificate, bound } = check;
  const problem = placementProblem(request);
  const spaces = rowSpaces(problem, ['boards']);
  if (spaces.length === 0) return false;
  const { takes, takesBeside } = onAnyRows(
    problem,
    spaces.map(({ set }) => set.layout),
    STEPS,
  );
  const holds = bound <= 0 || takes(bound);
  const isProven = (space: RowSpace, entry: CertifiedRows | undefined): boolean => {
    if (entry === undefined || entry.rowWidths.join(' ') !== widthsOf(space.set.layout)) return false;
    return byPrices(space, entry, bound) || (entry.pieces === undefined && (holds || bySearch(space, bound)));
  };
  if (!spaces.every((space, at) => isProven(space, certificate.divisions[at]))) return false;
  const isSettled = (rows: RowLayout): boolean => {
    const [space] = rowSpaces(problem, ['boards'], [rows]);
    return space === undefined || certificate.divisions.some((entry) => isProven(space, entry));
  };
  return holds || takesBeside(bound, isSettled);
}

const widthsOf = ({ bands }: RowLayout): string => bands.map(({ width }) => width / 1000).join(' ');

function byPrices(space: RowSpace, { pieces, boards }: CertifiedRows, bound: number): boolean {
  if (bound <= 0) return true;
  if (pieces === undefined || boards === undefined) return false;
  const prices = { kinds: Float64Array.from(pieces), boards };
  return arePrices(space, prices) && provenBoards(space, prices) >= bound;
}

function bySearch(space: RowSpace, bound: number): boolean {
  const root = relax(space, 0, []);
  solve(root, STEPS, bound - 1 + HAIR, 'whole');
  return searchRows(space, { objective: 0, most: bound - 1, caps: [] }, root, { left: STEPS }) === 'none';
}

const HAIR = 1e-3;
