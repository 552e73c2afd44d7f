import { type Finding, finding } from '../rules/finding.js';
import { fromGrid } from '../survey/grid.js';
import { type Ceiling, gridRule } from './ceiling.js';
import { crossSections } from './crossSections.js';
import { placeOf } from './place.js';
import { type Box, boxOf, circleRing, type Ring, ringOf, type Solid, turned } from './solid.js';

/** What is wider than its neck by less than a third is a taper or a scribe; common practice, no source. */
const THIRD = 3;

/** Pieces that snap when they are lifted, since a notch or a hole leaves too little between two wider parts. */
export function necks(ceiling: Ceiling): Finding[] {
  const { rules, frame, about, pieces } = ceiling;
  const { steps, rule } = gridRule(rules, 'piece.minimumNeck');
  const rest = gridRule(rules, 'piece.neckRest').steps;
  const lights = lightsOf(ceiling);
  return pieces.flatMap((piece, index): Finding[] => {
    const narrowest = narrowestNeck(asLifted(piece, lights), steps, rest);
    if (narrowest === undefined) return [];
    const { id, box } = about[index];
    const { at, words } = placeOf(frame, narrowest.u, (box.v0 + box.v1) / 2);
    return [
      finding('piece-neck-narrow', rule.level === 'must' ? 'error' : 'warning', {
        where: { piece: id, at },
        value: fromGrid(narrowest.width),
        limit: fromGrid(steps),
        unit: 'mm',
        source: rule.source,
        words,
      }),
    ];
  });
}

const lightsOf = ({ given: { room }, frame }: Ceiling): Box[] =>
  (room.openings ?? [])
    .filter(({ kind }) => kind === 'light')
    .map((light) =>
      boxOf('outline' in light ? ringOf(light.outline, frame) : circleRing(light.centre, light.diameter / 2, frame, true)),
    );

/** Holes for lights are cut when the piece is up. */
function asLifted({ rings: [outline, ...holes], ...piece }: Solid, lights: readonly Box[]): Solid {
  const isForLight = (hole: Ring): boolean => {
    const { u0, u1, v0, v1 } = boxOf(hole);
    return lights.some((light) => light.u0 < u1 && u0 < light.u1 && light.v0 < v1 && v0 < light.v1);
  };
  return { ...piece, rings: [outline, ...holes.filter((hole) => !isForLight(hole))] };
}

/** The widest that is left of a piece at a place along it. */
interface Left {
  readonly u: number;
  readonly width: number;
}

function narrowestNeck(piece: Solid, limit: number, rest: number): Left | undefined {
  const left = crossSections([turned(piece)]).flatMap(({ low, high, spans }): readonly Left[] => [
    { u: low, width: Math.max(...spans.map(({ leftLow, rightLow }) => rightLow - leftLow)) },
    { u: high, width: Math.max(...spans.map(({ leftHigh, rightHigh }) => rightHigh - leftHigh)) },
  ]);
  const found = left.filter(
    ({ width }, i) => width < limit && hangs(left.slice(0, i + 1), width, rest) && hangs(left.slice(i), width, rest),
  );
  return found.sort((a, b) => a.width - b.width)[0];
}

/** Whether enough of a piece, on one side of a neck, is clearly wider than that. */
function hangs(left: readonly Left[], neck: number, rest: number): boolean {
  const wider = left.map(({ width }) => THIRD * width - (THIRD + 1) * neck);
  let length = 0;
  for (let i = 1; i < left.length; i++) {
    const [a, b] = [wider[i - 1], wider[i]];
    const apart = left[i].u - left[i - 1].u;
    if (a >= 0 && b >= 0) length += apart;
    else if (a >= 0 || b >= 0) length += Math.round((apart * Math.max(a, b)) / Math.abs(a - b));
  }
  return length > rest;
}
