import { rectangle } from 'soffitwright';
import { describe, expect, it } from 'vitest';
import { cutEdgeFindings } from '../../src/fixings/cutEdgeFindings.js';
import { handLaid, joint, wall } from '../generators/handLaid.js';

const cutBelow = { low: 'bound', high: 'cut' } as const;
const layout = handLaid(
  { id: '1.1', ends: [wall(5), wall(3595)], low: 5, high: 605, edges: cutBelow },
  { id: '2.1', ends: [wall(5), joint(1625, 'J5')], low: 605, high: 1805 },
  { id: '2.2', ends: [joint(1625, 'J5'), wall(3595)], low: 605, high: 1805 },
  { id: '3.1', ends: [wall(5), wall(3595)], low: 1805, high: 2995, edges: cutBelow },
);
const part = { outline: rectangle(3600, 3000), joists: [], direction: 'y' as const };
const tapered = [{ edge: 'tapered' as const }];

describe('a cut edge in the middle of a ceiling', () => {
  it('is an error under tape on tapered board, at each board that it meets; one at a wall is none', () => {
    const findings = cutEdgeFindings(layout, tapered, 'tape', [part]);
    expect(findings.map(({ code, severity, where }) => [code, severity, where?.pieces])).toEqual([
      ['cut-edge-taped', 'error', ['1.1', '2.1']],
      ['cut-edge-taped', 'error', ['1.1', '2.2']],
    ]);
  });

  it('is no matter where two parts of the ceiling meet: a bead stands there', () => {
    const lower = { ...part, outline: rectangle(3600, 605) };
    const upper = { ...part, outline: rectangle(3600, 2395).map(({ x, y }) => ({ x, y: y + 605 })) };
    expect(cutEdgeFindings(layout, tapered, 'tape', [lower, upper])).toEqual([]);
  });

  it('is allowed for skimming, and on square board', () => {
    expect(cutEdgeFindings(layout, tapered, 'skim', [part])).toEqual([]);
    expect(cutEdgeFindings(layout, [{ edge: 'square' }], 'tape', [part])).toEqual([]);
  });
});
