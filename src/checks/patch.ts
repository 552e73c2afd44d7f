import type { Cell } from './emptyCells.js';
import type { GridPoint } from './solid.js';

/** Cells taken together; grid steps. */
export interface Patch {
  readonly cells: readonly Cell[];
  readonly width: number;
  readonly height: number;
  /** Area over the longer side of its box: how thick it is. */
  readonly thickness: number;
  /** Middle of its largest cell. */
  readonly middle: GridPoint;
  readonly largest: Cell;
}

export function patchOf(cells: readonly Cell[]): Patch {
  const corners = cells.flatMap((cell) => cell.corners);
  const [us, vs] = [corners.map(({ u }) => u), corners.map(({ v }) => v)];
  const width = Math.max(...us) - Math.min(...us);
  const height = Math.max(...vs) - Math.min(...vs);
  const area = cells.reduce((sum, cell) => sum + areaOf(cell), 0);
  const largest = cells.reduce((best, cell) => (areaOf(cell) > areaOf(best) ? cell : best));
  return { cells, width, height, thickness: area / Math.max(width, height), middle: middleOf(largest), largest };
}

function areaOf({ corners: [a, b, c, d] }: Cell): number {
  return ((b.u - a.u + c.u - d.u) / 2) * (d.v - a.v);
}

const middleOf = ({ corners: [a, b, c, d] }: Cell): GridPoint => ({
  u: Math.round((a.u + b.u + c.u + d.u) / 4),
  v: Math.round((a.v + d.v) / 2),
});

/** Cells that touch across a level, together. */
export function patchesOf(cells: readonly Cell[]): Patch[] {
  let groups: Cell[][] = [];
  for (const cell of cells) {
    const touching = groups.filter((group) => group.some((other) => touches(other, cell)));
    groups = [...groups.filter((group) => !touching.includes(group)), [...touching.flat(), cell]];
  }
  return groups.map(patchOf);
}

function touches({ corners: [, , c, d] }: Cell, { corners: [a, b] }: Cell): boolean {
  return d.v === a.v && Math.max(d.u, a.u) < Math.min(c.u, b.u);
}
