/** One thing to buy. */
export interface TakeOffLine {
  readonly item: string;
  /** Exact, before packs. */
  readonly quantity: number;
  readonly unit: string;
  /** Whole packs, rounded once. */
  readonly packs: number;
  /** How the quantity came about, in words, with the constants used. */
  readonly basis: string;
  /** kg or pieces or m in one pack. */
  readonly perPack: number;
}

/** What to buy for one ceiling. */
export interface TakeOff {
  readonly lines: readonly TakeOffLine[];
  readonly hours?: number;
  readonly cost?: number;
  /** Why nothing is to be bought yet. */
  readonly hold?: string;
  /** Board bought and not fixed, kg. */
  readonly wasteKg: number;
}
