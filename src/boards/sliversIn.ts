import type { AnyRows } from './anyRows.js';
import type { Slab, Span } from './crossSections.js';
import type { SlabRange } from './lineAcross.js';
import { heightOf, type RangedRow } from './rowRange.js';

/** How many parts of a row, each between walls and openings, are narrower than a row may be in all divisions of a range. */
export function sliversIn({ problem: { rules }, slabs }: AnyRows, row: RangedRow): number {
  const all = slabs(row.part, row.first.gap);
  if (row.slabs === undefined) return 0;
  const its = all.slice(row.slabs.first, row.slabs.last + 1);
  if (!its.every(({ isExact }) => isExact)) return 0;
  // What is no more than the gap at a wall may be wider is taken up by it.
  const least = rules.wallGap.greatest - rules.wallGap.nominal;
  return hangingTogether(its).filter(({ first, last }) => {
    const of = { first: first + (row.slabs as SlabRange).first, last: last + (row.slabs as SlabRange).first };
    const heights = [row.first, row.last].map((band) => heightOf(all, of, band));
    return Math.min(...heights) > least && Math.max(...heights) < rules.rowWidth;
  }).length;
}

/** From which slab to which each of the areas reaches that some slabs make together. */
function hangingTogether(slabs: readonly Slab[]): SlabRange[] {
  let areas: { spans: { readonly slab: number; readonly span: Span }[] }[] = [];
  for (const [slab, { spans }] of slabs.entries()) {
    for (const span of spans) {
      const meets = (each: (typeof areas)[number]): boolean =>
        each.spans.some((other) => other.slab === slab - 1 && other.span[0] < span[1] && other.span[1] > span[0]);
      const met = areas.filter(meets);
      areas = [...areas.filter((each) => !met.includes(each)), { spans: [...met.flatMap((each) => each.spans), { slab, span }] }];
    }
  }
  return areas.map(({ spans }) => {
    const its = spans.map(({ slab }) => slab);
    return { first: Math.min(...its), last: Math.max(...its) };
  });
}
