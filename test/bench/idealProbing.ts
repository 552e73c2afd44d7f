import { normalBelow, normalBelowQuick, normalPlace } from '../../src/joists/normal.js';
import { FALSE_MISS, LENGTH, SPACINGS, START_SD, STRAYING, WIDTH } from '../generators/probingGames.js';

/** Places of the first joist, mm apart. */
const STEP = 2;
/** What one joist may stray: middles of equally likely slices. */
const SLICES = 15;
const STRAYS = Array.from({ length: SLICES }, (_, i) => STRAYING * normalPlace((i + 0.5) / SLICES));
/** What joins the slices into a smooth whole, standard deviation, mm. */
const SMOOTH = 1;
const NEAR = 12;

/** One way the joists may have been set out, and what its joists may stray after what has been seen of them. */
interface Lattice {
  readonly spacing: number;
  readonly first: number;
  readonly joists: number;
  weight: number;
  readonly strays: Map<number, Float64Array>;
}

/** The posterior of the probing game over every spacing and place of the first joist, by brute force. */
export class Ideal {
  private lattices: Lattice[];

  constructor(start: readonly number[]) {
    this.lattices = SPACINGS.flatMap((spacing) =>
      Array.from({ length: Math.round(spacing / STEP) }, (_, i) => latticeAt(spacing, (i + 0.5) * STEP, start)),
    );
    this.normalise();
  }

  private normalise(): void {
    const sum = this.lattices.reduce((total, { weight }) => total + weight, 0);
    this.lattices = this.lattices.filter(({ weight }) => weight > sum * 1e-9);
    const kept = this.lattices.reduce((total, { weight }) => total + weight, 0);
    for (const lattice of this.lattices) lattice.weight /= kept;
  }

  observe(x: number, timber: boolean): void {
    for (const lattice of this.lattices) {
      const chance = timberAt(lattice, x);
      lattice.weight *= timber ? chance : 1 - chance;
      const { joist, off } = nearest(lattice, x);
      const before = lattice.strays.get(joist) ?? new Float64Array(SLICES).fill(1 / SLICES);
      const after = before.map((share, i) => share * (timber ? meets(off - STRAYS[i]) : 1 - meets(off - STRAYS[i])));
      const sum = after.reduce((total, each) => total + each, 0);
      if (sum > 0)
        lattice.strays.set(
          joist,
          after.map((each) => each / sum),
        );
    }
    this.normalise();
  }

  /** What a hole at a place is expected to tell of spacing and first joist, bits. */
  gain(x: number): number {
    let [timber, known] = [0, 0];
    for (const lattice of this.lattices) {
      const chance = timberAt(lattice, x);
      timber += lattice.weight * chance;
      known += lattice.weight * entropy(chance);
    }
    return entropy(timber) - known;
  }

  /** The reading with the most probability within 12 mm of it at both ends and the middle. */
  best(): { mass: number; places: readonly number[] } {
    const likely = [...this.lattices].sort((a, b) => b.weight - a.weight).slice(0, 30);
    let best = { mass: -1, places: [0, 0, 0] };
    for (const { spacing, first, joists } of likely) {
      const places = [0, Math.floor(joists / 2), joists - 1].map((joist) => first + joist * spacing);
      let mass = 0;
      for (const lattice of this.lattices) {
        if (places.every((place) => Math.abs(nearest(lattice, place).off) <= NEAR)) mass += lattice.weight;
      }
      if (mass > best.mass) best = { mass, places };
    }
    return best;
  }
}

/** The place on a 10 mm grid that tells most in one step. */
export function idealProbe(ideal: Ideal): number {
  let [place, greatest] = [0, -1];
  for (let x = 10; x < LENGTH; x += 10) {
    const gain = ideal.gain(x);
    if (gain > greatest + 1e-9) [place, greatest] = [x, gain];
  }
  return place;
}

function latticeAt(spacing: number, first: number, start: readonly number[]): Lattice {
  const joists = Math.floor((LENGTH - first) / spacing) + 1;
  const lattice: Lattice = { spacing, first, joists, weight: 0, strays: new Map() };
  const marks = start.map((x) => nearest(lattice, x));
  if (marks[0].joist === marks[1].joist) return lattice;
  const variance = STRAYING * STRAYING + START_SD * START_SD;
  lattice.weight = 1 / (joists * (joists - 1)) / Math.round(spacing / STEP);
  for (const { joist, off } of marks) {
    lattice.weight *= Math.exp((-off * off) / (2 * variance));
    const strays = Float64Array.from(STRAYS, (stray) => Math.exp(-((off - stray) ** 2) / (2 * START_SD * START_SD)));
    const sum = strays.reduce((total, each) => total + each, 0);
    lattice.strays.set(
      joist,
      strays.map((each) => each / sum),
    );
  }
  return lattice;
}

function nearest({ spacing, first, joists }: Lattice, x: number): { joist: number; off: number } {
  const joist = Math.min(joists - 1, Math.max(0, Math.round((x - first) / spacing)));
  return { joist, off: x - first - joist * spacing };
}

function timberAt(lattice: Lattice, x: number): number {
  const { joist, off } = nearest(lattice, x);
  if (Math.abs(off) > WIDTH / 2 + 6 * STRAYING) return 0;
  const strays = lattice.strays.get(joist);
  const half = WIDTH / 2;
  if (strays === undefined) {
    return (1 - FALSE_MISS) * (normalBelow((half - off) / STRAYING) - normalBelow((-half - off) / STRAYING));
  }
  return strays.reduce((sum, share, i) => sum + share * meets(off - STRAYS[i]), 0);
}

/** Probability that a hole this far from a joist's middle reports timber. */
const meets = (off: number): number =>
  (1 - FALSE_MISS) * (normalBelowQuick((WIDTH / 2 - off) / SMOOTH) - normalBelowQuick((-WIDTH / 2 - off) / SMOOTH));

const entropy = (p: number): number => (p <= 0 || p >= 1 ? 0 : -(p * Math.log2(p) + (1 - p) * Math.log2(1 - p)));
