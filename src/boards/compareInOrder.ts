/** Compares lists of numbers by the first that differs: below 0 where `a` comes first. */
export function compareInOrder(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i] ? -1 : 1;
  return 0;
}
