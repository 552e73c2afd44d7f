import type { BoardLayout } from '../boards/boardLayout.js';
import { asbestosFindings } from '../decision/asbestosFindings.js';
import { screwsToDrive } from '../fixings/screwsToDrive.js';
import { lightsOnJoists } from '../joists/lightsOnJoists.js';
import type { LocatedZone } from '../joists/locateZones.js';
import { inOrderOfSeverity } from '../rules/finding.js';
import { takeOffOf } from '../takeoff/takeOff.js';
import { asBinding } from './asBinding.js';
import { cautions } from './cautions.js';
import type { CeilingPlan, CompletedJob } from './ceilingPlan.js';
import { certainty } from './certainty.js';
import { fixCeiling } from './fixCeiling.js';
import type { PlannedLayer } from './layers.js';
import { movementJoint } from './movementJoint.js';
import { endJointsOfLayout } from './plannedProbes.js';
import { rememberedRules } from './rememberedRules.js';
import { layersOnBars, secondLayer } from './secondLayer.js';
import { joistsOf } from './settleJoists.js';
import { wetFinish } from './wetFinish.js';

/** The plan of a job whose boards are laid: screws, what to buy, how sure it is, and all that must be known. */
export function planAround(job: CompletedJob, parts: readonly LocatedZone[], layout: BoardLayout): CeilingPlan {
  const { room, lining, boards, rules, finish, takeOff = {} } = job;
  const joists = joistsOf(parts);
  const inference = parts.find((part) => part.inference !== undefined)?.inference;
  const { findings: ofScrews, ...fixed } = fixCeiling(job, layout, parts, rules);
  const over = job.layers && secondLayer(job, job.layers[1], layout, parts);
  const layers: readonly PlannedLayer[] = [{ layer: 1, boards, layout, ...fixed }, ...(over ? [over.planned] : [])];
  const pieces = layers.flatMap((each) => each.layout.pieces).filter(({ locked }) => locked !== true);
  const { sureness, findings: probing } = certainty(
    layers.flatMap((each) => endJointsOfLayout(each.layout)),
    parts,
    rules,
  );
  const findings = inOrderOfSeverity([
    ...asbestosFindings(
      lining,
      layers.reduce((sum, each) => sum + screwsToDrive(each.layout, each.fixings), 0),
    ),
    ...(over ? layersOnBars(job) : []),
    // Before what the layout itself has to say: a drawing has room for the first few only.
    ...cautions({
      addedMass: layers.reduce((sum, each) => sum + each.boards[0].massPerArea, 0),
      heaviestPiece: Math.max(0, ...pieces.map(({ massKg }) => massKg)),
      liningGiven: lining.length > 0,
    }),
    ...new Set(parts.flatMap((part) => part.findings)),
    ...lightsOnJoists(room, joists, rules),
    ...probing,
    ...layout.findings.map(asBinding),
    ...wetFinish({ thickness: boards[0].thickness, finish }, parts, rules),
    ...rememberedRules(rules, boards[0].thickness),
    ...movementJoint(parts, layout.rows, rules),
    ...ofScrews,
    ...(over?.findings ?? []).map(asBinding),
  ]);
  const hold = findings.find((each) => each.severity === 'hold');
  const bought = takeOffOf({ room, layout, ...fixed, job, layers }, takeOff);
  return {
    job,
    room,
    joists,
    ...(inference && { inference }),
    layout,
    ...fixed,
    ...(over && { layers }),
    takeOff: { ...bought, ...(hold && { hold: hold.message }) },
    ...sureness,
    findings,
    meta: { held: hold !== undefined, direction: parts[0].direction, ruleSet: rules.title },
  };
}
