import type { Piece } from '../boards/boardLayout.js';
import type { Frame } from '../joists/frame.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import type { Direction } from '../survey/joist.js';
import type { Extent } from '../survey/outline.js';
import type { Borders, Bound } from './bounds.js';
import type { FigureUnit } from './figure.js';
import type { SideNames } from './sideNames.js';
import type { NamedWall } from './wallNames.js';
import type { Say } from './words.js';

/** A plan made ready for paper: how its parts are called and what its figures run from. */
export interface Subject {
  /** The whole plan; in a zone, only the zone's joists, rows and pieces are in it. */
  readonly plan: CeilingPlan;
  /** The zone that this is about; not there where it is about the whole room or what lies outside all zones. */
  readonly zone?: string;
  /** What the part is called; empty for a room without zones. */
  readonly name: string;
  /** Outline of the room or the part. */
  readonly rings: Borders;
  readonly direction: Direction;
  readonly frame: Frame;
  /** Of the room or the zone, mm. */
  readonly extent: Extent;
  /** The room's walls, in a zone too. */
  readonly walls: readonly NamedWall[];
  /** What bounds the room or the zone. */
  readonly bounds: readonly Bound[];
  readonly sides: SideNames;
  /** What the figures across the joists run from, and those along them. */
  readonly datum: { readonly across: string; readonly along: string };
  readonly unit: FigureUnit;
  readonly say: Say;
  /** A length as a bare figure, and with its unit for running text. */
  readonly length: (mm: number) => string;
  readonly withUnit: (mm: number) => string;
  /** The parts of the ceiling that are boarded by joists of their own; empty where the room has no zones, and in a part. */
  readonly zones: readonly Subject[];
  /** Whether the room has zones. */
  readonly zoned: boolean;
}

/** The parts of the ceiling that have joists of their own: the zones and what lies outside them, or the room as one. */
export const zonesOf = (subject: Subject): readonly Subject[] => (subject.zones.length === 0 ? [subject] : subject.zones);

/** The part of the ceiling that a piece lies in. */
export const zoneOf = (subject: Subject, piece: Piece): Subject =>
  subject.zones.find(({ plan }) => plan.layout.pieces.includes(piece)) ?? subject;
