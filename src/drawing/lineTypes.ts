/**
 * Line widths on paper, mm: narrow, wide and extra wide as 1 : 2 : 4 after ISO 128-2, whose construction drawings use all three
 * (from memory); nothing is drawn narrower than the first.
 */
export const WIDTH = { narrow: 0.25, wide: 0.5, wall: 1 } as const;

/**
 * Dashes in mm for narrow lines, after the proportions of ISO 128-2 (from memory): dashes of 12 widths and long dashes of 24,
 * gaps of 3; a dot is drawn one width long so that it shows in print.
 */
export const DASHES = {
  dashed: '3 0.75',
  chain: '6 0.75 0.25 0.75',
  doubleChain: '6 0.75 0.25 0.75 0.25 0.75',
} as const;
