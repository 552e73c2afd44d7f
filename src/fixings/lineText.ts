/** A line of fixings as a person marks it: first place and steps in mm. */
export function lineText(first: number, steps: readonly number[]): string {
  if (steps.length === 0) return `one at ${first}`;
  const groups: { step: number; times: number }[] = [];
  for (const step of steps) {
    const last = groups[groups.length - 1];
    if (last?.step === step) last.times++;
    else groups.push({ step, times: 1 });
  }
  if (groups.length === 1) return `first at ${first}, then ${steps.length === 1 ? '' : 'every '}${groups[0].step}`;
  const words = groups.map(({ step, times }) => (times === 1 ? `${step}` : `${times} times ${step}`));
  return `first at ${first}, then ${words.join(', ')}`;
}
