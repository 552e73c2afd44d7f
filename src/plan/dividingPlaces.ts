/** Somewhere that a run may be divided, and what a person calls it. */
export interface DividingPlace {
  readonly at: number;
  readonly name: string;
}

interface Run {
  readonly from: number;
  readonly to: number;
}

/**
 * The fewest places that part a run into stretches no longer than the limit, as even as they can be; nothing where the places do not
 * allow it. All in one unit.
 */
export function dividingPlaces({ from, to }: Run, places: readonly DividingPlace[], limit: number): DividingPlace[] {
  const inside = places.filter(({ at }) => from < at && at < to).sort((a, b) => a.at - b.at);
  for (let count = Math.ceil((to - from) / limit) - 1; count <= inside.length; count++) {
    const evenly = Array.from({ length: count }, (_, i) => nearest(inside, from + ((to - from) * (i + 1)) / (count + 1)));
    const marks = [from, ...evenly.map(({ at }) => at), to];
    if (marks.every((mark, i) => i === 0 || (mark > marks[i - 1] && mark - marks[i - 1] <= limit))) return evenly;
  }
  return [];
}

const nearest = (places: readonly DividingPlace[], wanted: number): DividingPlace =>
  places.reduce((best, each) => (Math.abs(each.at - wanted) < Math.abs(best.at - wanted) ? each : best));
