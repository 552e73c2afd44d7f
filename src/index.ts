export type { Board, BoardLayout, Cut, End, Offcut, Piece, Row } from './boards/boardLayout.js';
export type { Certificate, CertifiedRows } from './boards/certificate.js';
export { type BoundCheck, checkBound } from './boards/checkBound.js';
export { comparePlacements } from './boards/comparePlacements.js';
export {
  type Infeasible,
  InfeasibleError,
  isInfeasibleError,
  type PlacementAttempt,
  type Relaxation,
} from './boards/infeasibleError.js';
export type { LockedPiece } from './boards/lockedPieces.js';
export { placeBoards } from './boards/placeBoards.js';
export type { PlacementRequest } from './boards/placementRequest.js';
export type { Preference } from './boards/preference.js';
export { tryPlaceBoards } from './boards/tryPlaceBoards.js';
export { checkFixings, type FixingsCheck } from './checks/checkFixings.js';
export { checkLayout, type LayoutCheck } from './checks/checkLayout.js';
export { checkStagger, type StaggerRequest } from './checks/checkStagger.js';
export type { ClosedZone, FixingsToCheck, FixingToCheck } from './checks/fixingsToCheck.js';
export type {
  BoardToCheck,
  CutClaim,
  EndClaim,
  LayoutToCheck,
  OffcutClaim,
  PieceToCheck,
  RowClaim,
} from './checks/layoutToCheck.js';
export type { CapacityFixing, CapacityMethod, CapacityTimber } from './fixings/capacityFixing.js';
export {
  type CapacityFallback,
  type FixingCapacity,
  type FixingCapacityRequest,
  fixingCapacity,
} from './fixings/fixingCapacity.js';
export type { FixingCount, FixingCounts } from './fixings/fixingCounts.js';
export { type FixingLength, fixingLength } from './fixings/fixingLength.js';
export type { FixingLengthRequest } from './fixings/fixingLengthRequest.js';
export {
  type FixingRequirements,
  type FixingRequirementsRequest,
  fixingRequirements,
  type Requirement,
} from './fixings/fixingRequirements.js';
export { type FixingDistance, type FixingSpacing, type FixingSpacingRequest, fixingSpacing } from './fixings/fixingSpacing.js';
export { type FixingsPerLine, type FixingsPerLineRequest, fixingsPerLine } from './fixings/fixingsPerLine.js';
export type { FixedLayout } from './fixings/layoutSchema.js';
export type { FixingLine, FixingPosition, NoFixZone, PlacedFixings } from './fixings/placedFixings.js';
export { type FixingsRequest, placeFixings } from './fixings/placeFixings.js';
export type { Assumptions, UsualSpacing } from './joists/assumptions.js';
export { type Bearing, type BearingOutcome, type BearingRequest, bearing } from './joists/bearing.js';
export type { Candidate } from './joists/candidatesOf.js';
export type { EndJoist } from './joists/endJoints.js';
export { type Hypothesis, type Inference, type InferRequest, inferJoists, tryInferJoists } from './joists/inferJoists.js';
export { joistsFromPositions, type PositionsRequest } from './joists/joistsFromPositions.js';
export { joistsFromSpacing, type SpacingRequest } from './joists/joistsFromSpacing.js';
export { nextProbe, type Probe, type ProbeOptions } from './joists/nextProbe.js';
export type { Reach } from './joists/probeSites.js';
export type { Certainty, JoistCertainty } from './joists/proveFirst.js';
export type { BoardsComparison, BoardsThatDoNot, BoardsThatServe } from './plan/boardsComparison.js';
export type { CeilingPlan, CompletedJob } from './plan/ceilingPlan.js';
export { compareBoards } from './plan/compareBoards.js';
export { compareRules, type RuleSetsToCompare } from './plan/compareRules.js';
export type { CompletedFixingInputs, FixingInputs, ScrewChoice } from './plan/fixCeiling.js';
export type { CompletedLayer, LayerOfBoards, Layers, PlannedLayer } from './plan/layers.js';
export { type Job, planCeiling, tryPlanCeiling } from './plan/planCeiling.js';
export type { PlanChange } from './plan/planChanges.js';
export { type ReplannedCeiling, replanCeiling, tryReplanCeiling } from './plan/replanCeiling.js';
export type { FoundJoist, OffcutAtHand, Replanning } from './plan/replanRequest.js';
export type { ComparedRule, RulesComparison, RulesForCeiling } from './plan/rulesComparison.js';
export type { CheckRecord, CheckStep } from './rules/checkRecord.js';
export type { Finding, Severity, Where } from './rules/finding.js';
export type { Conditions, Level, Rule, RuleKey, RuleRow, RuleSet, Sense } from './rules/ruleSet.js';
export { type RuleSets, ruleSets } from './rules/ruleSets.js';
export { ruleTable } from './rules/ruleTable.js';
export { type RuleValue, ruleValue } from './rules/ruleValue.js';
export type { Source, Standing } from './rules/source.js';
export type { StrengthClass } from './rules/standards/en338of2016.js';
export { type Overrides, type RulesInput, withRules } from './rules/withRules.js';
export type { Attempt } from './survey/attempt.js';
export type { BoardStock } from './survey/boardStock.js';
export { InputError, isInputError, type Problem } from './survey/inputError.js';
export type {
  Direction,
  Joist,
  JoistDescription,
  JoistPosition,
  JoistsByMarks,
  JoistsByPositions,
  JoistsBySpacing,
} from './survey/joist.js';
export type { Layer, LayerKind } from './survey/layer.js';
export type { Mark } from './survey/mark.js';
export { outlineFromSides, type TapedOutline, type TapedSides } from './survey/outlineFromSides.js';
export type { Point } from './survey/point.js';
export { rectangle } from './survey/rectangle.js';
export type { Opening, OpeningCircle, OpeningKind, OpeningOutline, Room, Wall, Zone } from './survey/room.js';
export { type TakeOffLayer, type TakeOffPlan, takeOff } from './takeoff/takeOff.js';
export type { TakeOffOptions } from './takeoff/takeOffOptions.js';
export type { TakeOff, TakeOffLine } from './takeoff/takeOffResult.js';
