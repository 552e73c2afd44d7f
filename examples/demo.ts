import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type CeilingPlan, type Job, planCeiling } from 'soffitwright';
import { buyingList, cutList, drawPlan, screwSummary, tableText } from 'soffitwright/drawing';

/** What is written for each room: file name and content. */
export const filesOf = (plan: CeilingPlan): Readonly<Record<string, string>> => ({
  'plan.svg': drawPlan(plan),
  'cut-list.txt': tableText(cutList(plan)),
  'screws.txt': tableText(screwSummary(plan)),
  'buying-list.txt': tableText(buyingList(plan)),
});

/** A short report of one ceiling, for a person at a terminal. */
export function reportOf(plan: CeilingPlan): string {
  const { room, layout, fixings, fixingLength, confidence, findings, meta } = plan;
  const percent = (share: number): string => `${Math.floor(share * 100)} %`;
  const length = fixingLength.recommended === null ? 'no stock length serves' : `${fixingLength.recommended} mm long`;
  return [
    `${room.name ?? room.id ?? 'Room'}${meta.held ? ': HOLD, do not start' : ''}`,
    `  boards    ${layout.boardsBought} as laid, ${layout.bound} at least${layout.proven ? ' (proven fewest)' : ''}; ${layout.endJoints} butt joints, ${layout.cuts} cuts`,
    `  order     ${layout.boardsAtMinimumLength ?? 'no number'} boards, in case they come short`,
    `  screws    ${fixings.count}, ${length}`,
    `  certainty butt joints on timber ${percent(confidence.onTimber)}, within the edge rules ${percent(confidence.withinEdgeRules)}`,
    `  rules     ${meta.ruleSet}`,
    ...findings.map(
      ({ severity, message, remedy }) => `  ${severity.padEnd(9)} ${message}${remedy === undefined ? '' : ` ${remedy}`}`,
    ),
  ].join('\n');
}

/** Plans every room of a folder of JSON files and writes its papers into a folder of its own. */
export function demo(rooms: string, out: string): string[] {
  return readdirSync(rooms)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => {
      const plan = planCeiling(JSON.parse(readFileSync(join(rooms, file), 'utf8')) as Job);
      const folder = join(out, file.replace(/\.json$/, ''));
      mkdirSync(folder, { recursive: true });
      for (const [name, content] of Object.entries(filesOf(plan))) writeFileSync(join(folder, name), content);
      return reportOf(plan);
    });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log(demo('examples/rooms', 'out').join('\n\n'));
  console.log('\nDrawings, cut lists, screw summaries and buying lists are in out/.');
}
