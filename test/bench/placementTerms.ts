/** Terms on lines of a moderate length. */
export function sum(terms: readonly string[]): string {
  const lines: string[] = [];
  for (let at = 0; at < terms.length; at += 8) lines.push(terms.slice(at, at + 8).join(' + '));
  return lines.join('\n + ');
}

/** What is added less what is taken. */
export const balance = (added: readonly string[], taken: readonly string[], sense: '=' | '>='): string =>
  `${[sum(added), ...taken.map((term) => `- ${term}`)].filter((text) => text !== '').join('\n ')} ${sense} 0`;
