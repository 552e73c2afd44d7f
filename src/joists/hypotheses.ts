import type { Assumptions } from './assumptions.js';
import { exponential, logarithm } from './exponential.js';
import { type Fit, fitOf } from './fit.js';
import type { Placing } from './placing.js';
import { logPrior } from './placingPrior.js';
import type { Sight } from './readings.js';
import { type Setting, type System, systemOf } from './system.js';

/** A placing under one setting, with the logarithm of its weight beside all others. */
export interface Weighed {
  readonly sight: Sight;
  readonly placing: Placing;
  readonly fit: Fit;
  readonly logWeight: number;
}

/** Settings tried first, to drop what is hopeless before the rest are tried. */
const FIRST_LOOK = { straying: 5, drift: 1 };
/** How far behind the best the first placing of a family may be, and any other, as a logarithm. */
const BEHIND = 9;
const OTHERS_BEHIND = 6;
/** Share of a family's probability below which a setting is left out for its lesser placings. */
const RARE = 0.04;

/** A placing and a lie, weighed under one setting. */
interface Look {
  readonly system: System;
  readonly placing: Placing;
  readonly lie: Lie;
  readonly prior: number;
  readonly look: number;
}

/** Every placing under every setting that is not far behind the best. */
export function weighPlacings(
  sight: Sight,
  placings: readonly Placing[],
  width: number,
  widthSd: number,
  assumptions: Assumptions,
): Weighed[] {
  const lies = liesOf(sight, assumptions);
  const looks = placings
    .filter(({ places }) => places.some((place) => place !== null))
    .flatMap((placing) => firstLooks(sight, placing, lies, systemOf(sight, placing, width, widthSd, assumptions)));
  const order = looks.map((_, index) => index).sort((a, b) => looks[b].look - looks[a].look || a - b);
  const best = order.length === 0 ? 0 : looks[order[0]].look;
  const settingsOf = new Map<string, Straying[]>();
  return order.flatMap((index) => {
    const look = looks[index];
    const { family } = look.placing;
    const key = `${family.kind} ${family.spacing} ${look.lie.skew} ${look.lie.fan}`;
    const known = settingsOf.get(key);
    if (look.look < best - (known ? OTHERS_BEHIND : BEHIND)) return [];
    const weighed = (known ?? strayingsOf(family)).map(({ straying, drift, logShare }) => {
      const fit = fitOf(look.system, { straying, drift, skew: look.lie.skew, fan: look.lie.fan });
      return { sight, placing: look.placing, fit, logWeight: look.prior + logShare + fit.logDensity };
    });
    if (!known) settingsOf.set(key, mattering(weighed, strayingsOf(family)));
    return weighed;
  });
}

function firstLooks(sight: Sight, placing: Placing, lies: readonly Lie[], system: System): Look[] {
  const { drift, kind } = placing.family;
  const drifts = kind === 'irregular' ? drift[drift.length - 1] : FIRST_LOOK.drift;
  const fits = lies.map(({ skew, fan }) => fitOf(system, { straying: FIRST_LOOK.straying, drift: drifts, skew, fan }));
  const ofPlacing = logPrior(sight, placing, fits[0]);
  return lies.map((lie, index) => {
    const prior = ofPlacing + lie.logPrior;
    return { system, placing, lie, prior, look: prior + fits[index].logDensity };
  });
}

/** How far joists stray, and the logarithm of its share beforehand. */
interface Straying {
  readonly straying: number;
  readonly drift: number;
  readonly logShare: number;
}

function strayingsOf({ straying, drift }: Placing['family']): Straying[] {
  const logShare = -logarithm(straying.length * drift.length);
  return straying.flatMap((own) => drift.map((bay) => ({ straying: own, drift: bay, logShare })));
}

/** The settings that matter once the best placing has been weighed; they stand for the ones left out. */
function mattering(weighed: readonly Weighed[], strayings: readonly Straying[]): Straying[] {
  const shares = normalised(weighed.map(({ logWeight }) => logWeight));
  const kept = shares.map((share) => share >= RARE);
  const left = -logarithm(shares.reduce((sum, share, i) => (kept[i] ? sum + share : sum), 0));
  return strayings.filter((_, i) => kept[i]).map((each) => ({ ...each, logShare: each.logShare + left }));
}

/** How the joists lie against the walls: only a setting's slopes. */
interface Lie extends Pick<Setting, 'skew' | 'fan'> {
  readonly logPrior: number;
}

/** Straight, askew, or fanned: only where there are readings on several lines to tell them apart. */
function liesOf(sight: Sight, { skew, skewAskew, fan, askew, fanned }: Assumptions): Lie[] {
  const along = sight.readings.map(({ v }) => v);
  if (along.length < 2 || Math.max(...along) - Math.min(...along) < 0.3) return [{ skew, fan: 0, logPrior: 0 }];
  return [
    { skew, fan: 0, logPrior: logarithm(1 - askew - fanned) },
    { skew: skewAskew, fan: 0, logPrior: logarithm(askew) },
    { skew: skewAskew, fan, logPrior: logarithm(fanned) },
  ];
}

/** Weights that add up to 1, from their logarithms. */
export function normalised(logWeights: readonly number[]): number[] {
  const best = logWeights.reduce((greatest, each) => Math.max(greatest, each), -Infinity);
  const weights = logWeights.map((each) => exponential(each - best));
  const sum = weights.reduce((total, each) => total + each, 0);
  return weights.map((each) => each / sum);
}
