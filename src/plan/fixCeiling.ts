import * as z from 'zod/mini';
import type { BoardLayout } from '../boards/boardLayout.js';
import { cutEdgeFindings } from '../fixings/cutEdgeFindings.js';
import { demandEmbedment, type FixingLength, lengthOfFixings } from '../fixings/fixingLength.js';
import { STOCK_LENGTHS, screwsSchema } from '../fixings/fixingLengthRequest.js';
import type { FixedPart } from '../fixings/pieceParts.js';
import type { NoFixZone, PlacedFixings } from '../fixings/placedFixings.js';
import { fixingsOf, noFixSchema } from '../fixings/placeFixings.js';
import type { Finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { BoardStock } from '../survey/boardStock.js';
import type { Joist } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';

/** The screws that are to be had. Lengths in mm. */
export interface ScrewChoice {
  /** Lengths to be had; the usual ones when not given. */
  readonly stock?: readonly number[];
  /** How much a screw may be shorter or longer than its nominal length, or what DIN 18182-2 lets it be. Default 0. */
  readonly lengthTolerance?: number | 'DIN 18182-2';
  /** Thread, from the point. */
  readonly threadLength?: number;
}

/** What a job says of its screws and of what they go through. Lengths in mm. */
export interface FixingInputs {
  /** `tape`: on tapered board, a cut edge that meets another board is an error. Default `skim`. */
  readonly finish?: 'skim' | 'tape';
  /** Packing between the old ceiling and the new board, at its thickest. Default 0. */
  readonly packing?: number;
  /**
   * Whether a hole was opened to see how thick the old ceiling is. Default: as soon as `lining` has layers. Without one there is
   * no length of screw, only a range.
   */
  readonly probed?: boolean;
  /** From the underside of the joists to the lowest pipe or cable known in them. */
  readonly serviceDepth?: number;
  /** Minutes of fire resistance that the new ceiling is declared to have. */
  readonly fireRating?: number;
  readonly screws?: ScrewChoice;
  /** Where no screw may go. */
  readonly noFix?: readonly NoFixZone[];
}

export const fixingInputs = {
  finish: z.optional(z.enum(['skim', 'tape'])),
  packing: z.optional(z.number().check(z.gte(0), z.lte(500))),
  probed: z.optional(z.boolean()),
  serviceDepth: z.optional(z.number().check(z.gte(0), z.lte(500))),
  fireRating: z.optional(z.number().check(z.gte(0), z.lte(600))),
  screws: z.optional(screwsSchema),
  noFix: z.optional(noFixSchema),
};

/** {@link FixingInputs} with every default filled in. */
export type CompletedFixingInputs = Omit<FixingInputs, 'finish' | 'packing' | 'probed' | 'noFix' | 'screws'> &
  Required<Pick<FixingInputs, 'finish' | 'packing' | 'probed' | 'noFix'>> & {
    readonly screws: ScrewChoice & Required<Pick<ScrewChoice, 'stock' | 'lengthTolerance'>>;
  };

interface CeilingToFix extends FixingInputs {
  readonly room: Room;
  readonly lining: readonly Layer[];
  readonly boards: readonly BoardStock[];
}

/**
 * Fills in what a job does not say of its screws.
 *
 * @throws InputError when the rules have no embedment for the fire rating
 */
export function completeFixing(job: CeilingToFix, rules: RuleSet): CompletedFixingInputs {
  const { lining, boards, finish = 'skim', packing = 0, probed = lining.length > 0, noFix = [] } = job;
  const { serviceDepth, fireRating, screws: { stock = STOCK_LENGTHS, lengthTolerance = 0, threadLength } = {} } = job;
  demandEmbedment({ thicknesses: [boards[0].thickness], lining, rules, ...(fireRating !== undefined && { fireRating }) });
  return {
    finish,
    packing,
    probed,
    ...(serviceDepth !== undefined && { serviceDepth }),
    ...(fireRating !== undefined && { fireRating }),
    screws: { stock, lengthTolerance, ...(threadLength !== undefined && { threadLength }) },
    noFix,
  };
}

/** Where the screws of a ceiling go and how long they are, with what they go through taken from the job. */
export function fixCeiling(
  job: CeilingToFix & CompletedFixingInputs,
  layout: BoardLayout,
  parts: readonly FixedPart[],
  rules: RuleSet,
): { readonly fixings: PlacedFixings; readonly fixingLength: FixingLength; readonly findings: readonly Finding[] } {
  const { room, lining, boards, finish, noFix } = job;
  const fixings = fixingsOf({ room, layout, parts, rules, lining, boardThickness: boards[0].thickness, noFix });
  const fixingLength = lengthForCeiling(
    job,
    parts.flatMap(({ joists }) => joists),
    rules,
  );
  return {
    fixings,
    fixingLength,
    findings: [...fixings.findings, ...fixingLength.findings, ...cutEdgeFindings(layout, boards, finish, parts)],
  };
}

/** How long the screws of a ceiling are. */
export function lengthForCeiling(
  { lining, boards, packing, probed, serviceDepth, fireRating, screws }: CeilingToFix & CompletedFixingInputs,
  joists: readonly Joist[],
  rules: RuleSet,
): FixingLength {
  const joistDepth = leastDepth(joists);
  return lengthOfFixings({
    thicknesses: [boards[0].thickness],
    lining,
    packing,
    rules,
    probed,
    ...screws,
    ...(serviceDepth !== undefined && { serviceDepth }),
    ...(fireRating !== undefined && { fireRating }),
    ...(joistDepth !== undefined && { joistDepth }),
  });
}

/** Of the joists whose depth is known the shallowest, mm: what may have been bored in it lies nearest the screws. */
const leastDepth = (joists: readonly Joist[]): number | undefined =>
  joists.reduce<number | undefined>(
    (least, { depth }) => (depth === undefined ? least : Math.min(depth, least ?? depth)),
    undefined,
  );
