/** Why a hole is drilled where it is, for a person. */
const sentences = {
  first: 'No joist is met yet. Holes {width} mm apart meet the first within one bay.',
  tells: 'Tells {yes} centres from {no}: here one has a joist and the other has none.',
  places: 'Whether there is timber here tells most of where {joists} stand: {now} % sure now, about {after} % after the hole.',
  edges:
    'Find both edges of {joist} here. Its middle is known to {sd} mm and will be to {sdAfter} mm; its butt joints are {now} % sure now, about {after} % after.',
} as const;

/** The sentence with its blanks filled in. */
export const probeReason = (sentence: keyof typeof sentences, blanks: Readonly<Record<string, string | number>>): string =>
  sentences[sentence].replace(/\{(\w+)\}/g, (_, blank: string) => String(blanks[blank]));
