import type { Source } from './source.js';

/** Keys in every rule set. */
export const RULE_KEYS = [
  'stagger.minimum',
  'stagger.preferred',
  'piece.minimumLength',
  'piece.preferredLength',
  'piece.minimumSupports',
  'piece.supportLength',
  'piece.maximumMass',
  'piece.minimumNeck',
  'piece.neckRest',
  'row.minimumWidth',
  'row.preferredWidth',
  'perimeter.gap',
  'perimeter.overhang',
  'perimeter.probeBay',
  'joint.gap',
  'edgeJoint.gap',
  'kerf',
  'cut.tolerance',
  'oldJoint.clearance',
  'opening.joistClearance',
  'opening.jointClearance',
  'hatch.cornerClearance',
  'light.jointDistance',
  'support.centres',
  'fixing.field',
  'fixing.boardEnd',
  'fixing.perimeter',
  'fixing.boundEdgeDistance',
  'fixing.cutEdgeDistance',
  'fixing.timberEdgeDistance',
  'fixing.floatingEdgeDistance',
  'fixing.embedment',
  'fixing.preferredEmbedment',
  'fixing.maximumEmbedment',
  'fixing.serviceMargin',
  'fixing.nailLineClearance',
  'fixing.practiceField',
  'fixing.tightButtTimber',
  'fixing.tightButtDistance',
  'fixing.pairField',
  'fixing.pairDistance',
  'movementJoint.maximumRun',
] as const;

/** Name of a rule: its subject, and what of it is limited. */
export type RuleKey = (typeof RULE_KEYS)[number];

/** Whether the value is a floor, a ceiling, or what to aim at. */
export type Sense = 'at least' | 'at most' | 'nominal';

/** `must` broken is an error, `should` broken a warning. */
export type Level = 'must' | 'should';

/** What a value may depend on. */
export interface Conditions {
  readonly fixing?: 'screw' | 'nail';
  /** Of a nail. */
  readonly shank?: 'smooth' | 'ringed';
  /** mm. A row for a thickness serves every thicker board up to the next row. */
  readonly boardThickness?: number;
  /** Joist centres, mm. A row serves centres up to its own. */
  readonly centres?: number;
  /** Of the bound edges to the joists. */
  readonly orientation?: 'across' | 'along';
  /** Intermediate noggings under the bound edges. */
  readonly noggings?: boolean;
  /** 1 for the board next to the old ceiling, 2 for the one under it. */
  readonly layer?: number;
  readonly adhesive?: boolean;
  /** Minutes of declared fire resistance. A row serves ratings up to its own; without one no rating is served. */
  readonly fireRating?: number;
  /** Whether a water-based texture or plaster wets the board. Default painted. */
  readonly finish?: 'painted' | 'textured';
  /** A ceiling board made to resist sagging is told apart by some sets. Default standard. */
  readonly board?: 'standard' | 'sag-resistant';
  /** Whether the ceiling is relied on to brace the building. */
  readonly diaphragm?: boolean;
}

/** One row of a rule's table. */
export interface RuleRow {
  /** `null`: the set has no limit. */
  readonly value: number | null;
  /**
   * How far a nominal value may be left, in the rule's unit. Beside a limit, `greatest` is the inch size that the printed metric
   * value names: 400 for 16 in, 600 for 24 in.
   */
  readonly range?: { readonly least: number; readonly greatest: number };
  /** When this row applies; always, if absent. */
  readonly when?: Conditions;
  readonly source: Source;
  readonly note?: string;
}

/** One rule, with a row for each case. */
export interface Rule {
  /** What the rule governs, in site words. */
  readonly title: string;
  readonly unit: 'mm' | 'kg' | 'joists';
  readonly sense: Sense;
  readonly level: Level;
  readonly rows: readonly RuleRow[];
}

/** What one country, standard or job requires: plain data. */
export interface RuleSet {
  readonly id: string;
  readonly title: string;
  /** What to know before relying on the set: its scope, traps between editions. */
  readonly notes?: readonly string[];
  readonly rules: Readonly<Record<RuleKey, Rule>>;
}
