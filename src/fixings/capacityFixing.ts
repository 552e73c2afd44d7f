import type { StrengthClass } from '../rules/standards/en338of2016.js';

/** One fixing, and what its maker declares of it. */
export interface CapacityFixing {
  /** Default `screw`. */
  readonly kind?: 'screw' | 'nail';
  /** Outer diameter, mm. */
  readonly diameter: number;
  /** Inner diameter of the thread, mm. */
  readonly innerDiameter?: number;
  /** Of a nail. Default smooth, which carries no permanent load. */
  readonly shank?: 'smooth' | 'ringed';
  /** Into the joist, mm. */
  readonly embedment: number;
  /** Of the screw, from its point, mm; what is in the joist counts. Default: all of it. */
  readonly threadLength?: number;
  /** Declared withdrawal strength f_ax,k, N/mm2, at a density of timber, kg/m3. */
  readonly withdrawal?: { readonly strength: number; readonly density: number };
  /**
   * Declared or tested least load that pulls the head through this board, N; `'ASTM C36'`: what the test of that standard asks of
   * 1/2 in board, 343 N.
   */
  readonly headPullThrough?: number | 'ASTM C36';
  /** Declared tension strength, N. */
  readonly tension?: number;
}

/** The timber it is driven into. */
export interface CapacityTimber {
  /** EN 338. */
  readonly grade?: StrengthClass;
  /** Characteristic density, kg/m3; that of the grade when not given. */
  readonly density?: number;
  /** Oven-dry specific gravity, for `nds` and `wood-handbook`; not to be had from a grade. */
  readonly specificGravity?: number;
  /** Default 1. */
  readonly serviceClass?: 1 | 2 | 3;
  /** Whether it is wet and will dry under load. Default false. */
  readonly willDry?: boolean;
}

/** By which published formula a screw or nail is reckoned. */
export type CapacityMethod = 'ec5' | 'nds' | 'wood-handbook';
