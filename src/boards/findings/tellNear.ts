import type { Frame } from '../../joists/frame.js';
import { type Finding, finding } from '../../rules/finding.js';
import { fromGrid } from '../../survey/grid.js';
import type { GivenRule } from './givenRule.js';
import type { NearLine } from './nearestLines.js';

/** A warning that a joint is nearer to something than the rule asks. */
export function tellNear(
  code: string,
  frame: Frame,
  { line, away, place }: NearLine,
  { limit, source }: GivenRule,
  to: { readonly wall: number } | { readonly other: string },
): Finding {
  const { x, y } = frame.back(fromGrid(place.u), fromGrid(place.v));
  const { pieces, row, joist } = line;
  return finding(code, 'warning', {
    where: { pieces, row, ...(joist !== undefined && { joist }), ...('wall' in to && to), at: { x, y } },
    value: fromGrid(away),
    limit,
    unit: 'mm',
    source,
    words: { joint: line.kind, ...('other' in to && to) },
  });
}
