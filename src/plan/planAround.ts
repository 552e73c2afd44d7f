import type { BoardLayout } from '../boards/boardLayout.js';
import { asbestosFindings } from '../decision/asbestosFindings.js';
import type { PlacedFixings } from '../fixings/placedFixings.js';
import type { LocatedJoists } from '../joists/locateJoists.js';
import { inOrderOfSeverity } from '../rules/finding.js';
import { takeOffOf } from '../takeoff/takeOff.js';
import { asBinding } from './asBinding.js';
import { cautions } from './cautions.js';
import type { CeilingPlan, CompletedJob } from './ceilingPlan.js';
import { certainty } from './certainty.js';
import { fixCeiling } from './fixCeiling.js';
import { movementJoint } from './movementJoint.js';
import { rememberedRules } from './rememberedRules.js';
import { wetFinish } from './wetFinish.js';

/** The plan of a job whose boards are laid: screws, what to buy, how sure it is, and all that must be known. */
export function planAround(job: CompletedJob, located: LocatedJoists, layout: BoardLayout): CeilingPlan {
  const { room, joists, lining, boards, rules, finish, takeOff = {} } = job;
  const { direction, inference } = located;
  const { fixings, fixingLength, findings: screwFindings } = fixCeiling(job, layout, located, rules);
  const { sureness, findings: probing } = certainty(layout, located, rules);
  const screws = toDrive(layout, fixings);
  const findings = inOrderOfSeverity([
    ...asbestosFindings(lining, screws),
    // Before what the layout itself has to say: a drawing has room for the first few only.
    ...cautions({
      addedMass: boards[0].massPerArea,
      heaviestPiece: Math.max(0, ...layout.pieces.filter(({ locked }) => locked !== true).map(({ massKg }) => massKg)),
      liningGiven: lining.length > 0,
    }),
    ...located.findings,
    ...probing,
    ...layout.findings.map(asBinding),
    ...wetFinish({ thickness: boards[0].thickness, finish }, located, rules),
    ...rememberedRules(rules, boards[0].thickness),
    ...movementJoint(room, rules),
    ...screwFindings,
  ]);
  const hold = findings.find((each) => each.severity === 'hold');
  const bought = takeOffOf({ room, layout, fixings: { count: screws }, fixingLength, job }, takeOff);
  return {
    job,
    room,
    joists,
    ...(inference && { inference }),
    layout,
    fixings,
    fixingLength,
    takeOff: { ...bought, ...(hold && { hold: hold.message }) },
    ...sureness,
    findings,
    meta: { held: hold !== undefined, direction, ruleSet: rules.title },
  };
}

/** Screws of the pieces that are not up yet. */
function toDrive({ pieces }: BoardLayout, { positions }: PlacedFixings): number {
  const locked = new Set(pieces.filter((piece) => piece.locked === true).map(({ id }) => id));
  return positions.filter(({ piece }) => !locked.has(piece)).length;
}
