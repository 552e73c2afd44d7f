import type { FramePoint } from '../../joists/frame.js';
import type { JointLine } from './jointLines.js';

/** How far a joint is from something, and where; grid steps. */
export interface Near {
  readonly away: number;
  readonly place: FramePoint;
}

export interface NearLine extends Near {
  readonly line: JointLine;
}

/** The nearest place of each butt joint and of each long joint, which is one joint from end to end of its row. */
export function nearestLines(lines: readonly JointLine[], measure: (line: JointLine) => Near | undefined): NearLine[] {
  const nearest = new Map<string, NearLine>();
  for (const line of lines) {
    const key = line.kind === 'butt joint' ? line.pieces.join(' ') : `${line.row} ${line.from.v}`;
    const near = measure(line);
    if (near !== undefined && near.away < (nearest.get(key)?.away ?? Infinity)) nearest.set(key, { line, ...near });
  }
  return [...nearest.values()];
}
