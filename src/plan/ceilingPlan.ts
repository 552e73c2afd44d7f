import type { BoardLayout } from '../boards/boardLayout.js';
import type { Preference } from '../boards/preference.js';
import type { FixingLength } from '../fixings/fixingLength.js';
import type { PlacedFixings } from '../fixings/placedFixings.js';
import type { Inference } from '../joists/inferJoists.js';
import type { Probe } from '../joists/nextProbe.js';
import type { JoistCertainty } from '../joists/proveFirst.js';
import type { Finding } from '../rules/finding.js';
import type { RuleSet } from '../rules/ruleSet.js';
import type { BoardStock } from '../survey/boardStock.js';
import type { Direction, Joist } from '../survey/joist.js';
import type { Layer } from '../survey/layer.js';
import type { Room } from '../survey/room.js';
import type { TakeOffOptions } from '../takeoff/takeOffOptions.js';
import type { TakeOff } from '../takeoff/takeOffResult.js';
import type { CompletedFixingInputs } from './fixCeiling.js';
import type { CompletedLayer, PlannedLayer } from './layers.js';

/** The job with every default filled in. */
export interface CompletedJob extends CompletedFixingInputs {
  /** Its zones with the joists that each is boarded by. */
  readonly room: Room;
  /** Those of what lies outside all zones; none where only the zones are boarded. */
  readonly joists: readonly Joist[];
  readonly lining: readonly Layer[];
  readonly boards: readonly BoardStock[];
  readonly rules: RuleSet;
  readonly prefer: Preference;
  /** Present when the job had any. */
  readonly takeOff?: TakeOffOptions;
  /** Present when two layers of boards were asked for; `boards` are those of the first. */
  readonly layers?: readonly [CompletedLayer, CompletedLayer];
}

/** One ceiling, whole: plain data. */
export interface CeilingPlan {
  readonly job: CompletedJob;
  readonly room: Room;
  /** Of all parts of the ceiling. */
  readonly joists: readonly Joist[];
  /** Present when the joists were inferred from marks; where several zones' were, that of the first part. */
  readonly inference?: Inference;
  readonly layout: BoardLayout;
  readonly fixings: PlacedFixings;
  readonly fixingLength: FixingLength;
  /** Both layers, where two were asked for; the first is `layout`, `fixings` and `fixingLength` too. */
  readonly layers?: readonly PlannedLayer[];
  readonly takeOff: TakeOff;
  /** Probabilities that every board end of the layout has its bearing, joint over all of them. */
  readonly confidence: { readonly onTimber: number; readonly withinEdgeRules: number };
  /** The joists with butt joints, and how sure all joints on each are: nothing is cut to one that is not sure. */
  readonly certainty: readonly JoistCertainty[];
  /** Ids of the joists to prove before anything is cut to them: those that are not sure. */
  readonly proveFirst: readonly string[];
  /** The next hole to drill; `null` when no hole would change what is done, and where the joists were not inferred from marks. */
  readonly nextProbe: Probe | null;
  /** The holes that would make every butt joint sure if each meets what is believed now, the next one first. */
  readonly probes: readonly Probe[];
  /** In order of severity. */
  readonly findings: readonly Finding[];
  readonly meta: {
    /** Under a hold nothing is to be bought, cut or fixed. */
    readonly held: boolean;
    /** Of the joists; where zones differ, of the first part's. */
    readonly direction: Direction;
    readonly ruleSet: string;
  };
}
