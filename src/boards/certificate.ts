/** What proves a bound, so that another program can check it. */
export interface Certificate {
  readonly kind: string;
}
