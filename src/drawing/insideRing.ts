/** A point of a plan or of a sheet. */
interface Place {
  readonly x: number;
  readonly y: number;
}

/** Whether a place lies in a ring: a ray from it meets the ring an odd number of times. */
export function insideRing(ring: readonly Place[], { x, y }: Place): boolean {
  let inside = false;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length];
    if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}
