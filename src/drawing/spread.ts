/** A text that wants to stand at a place on a line. */
export interface Wanting {
  readonly at: number;
  /** How much of the line it takes. */
  readonly size: number;
}

/**
 * Moves texts along a line, as little as possible in the sum of squares, until none touches its neighbour.
 *
 * @param wanting - in order along the line
 * @param gap - least distance between two texts
 * @returns where each one's middle goes, in the same order
 */
export function spread(wanting: readonly Wanting[], gap: number): number[] {
  // Less the room that all before it take, the places have only to rise: neighbours that would not are pooled at their mean.
  const before: number[] = [];
  for (let i = 0; i < wanting.length; i++) {
    before.push(i === 0 ? 0 : before[i - 1] + (wanting[i - 1].size + wanting[i].size) / 2 + gap);
  }
  const pools: { sum: number; count: number }[] = [];
  for (let i = 0; i < wanting.length; i++) {
    pools.push({ sum: wanting[i].at - before[i], count: 1 });
    while (pools.length > 1) {
      const [a, b] = pools.slice(-2);
      if (a.sum / a.count <= b.sum / b.count) break;
      pools.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  const places = pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  return places.map((place, i) => place + before[i]);
}
