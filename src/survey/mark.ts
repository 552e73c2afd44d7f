/**
 * One observation of timber, or of no timber, in plan coordinates.
 *
 * - `fixing`: an old nail or screw head, or a patch of filler over one
 * - `probe`: a bradawl or drill through the plaster
 * - `near-edge`, `far-edge`: the lesser and the greater edge of one joist
 * - `detector`: an electronic reading
 * - `loft`: measured from above
 */
export interface Mark {
  /** mm. */
  readonly x: number;
  /** mm. */
  readonly y: number;
  /** `false`: a probe that met no timber. Default `true`. */
  readonly found?: boolean;
  readonly kind?: 'fixing' | 'probe' | 'near-edge' | 'far-edge' | 'detector' | 'loft';
  /**
   * `false`: the hole met timber somewhere across its width and nobody felt for the edges. Otherwise a mark that is not an edge is
   * taken for the middle of the timber.
   */
  readonly centred?: boolean;
  /** Standard deviation of the reading, mm; by kind when not given. */
  readonly sd?: number;
}
