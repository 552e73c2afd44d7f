/** A board that can be bought. */
export interface BoardStock {
  readonly id: string;
  /** Along the bound edges, mm. */
  readonly length: number;
  /** Between the bound edges, mm. */
  readonly width: number;
  /** mm. */
  readonly thickness: number;
  /** kg/m2. */
  readonly massPerArea: number;
  /** Profile of the bound edges. */
  readonly edge: 'square' | 'tapered';
  /** Price of one board, in the caller's own currency. */
  readonly price?: number;
  /** Greatest number to be had. */
  readonly available?: number;
  /** Width of the cut, mm; the rule set's `kerf` when not given. */
  readonly kerf?: number;
  /** How much shorter a delivered board may be, mm. Default 5. */
  readonly lengthTolerance?: number;
  /** How much narrower a delivered board may be, mm. Default 4. */
  readonly widthTolerance?: number;
  /**
   * An offcut or a cut piece that lies there already: it costs nothing, is not counted as bought, and is used before a board is
   * bought. Only `available` of them, 1 when not given; as long and wide as measured, so `lengthTolerance` defaults to 0.
   */
  readonly atHand?: true;
}
