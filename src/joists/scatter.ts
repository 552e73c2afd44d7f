import { type Fit, ownOf, variancesOf } from './fit.js';
import { joistsInRoom } from './joistsInRoom.js';
import { normalSpread } from './normalSpread.js';
import { pivotedFactor } from './pivotedFactor.js';
import type { Placing } from './placing.js';
import { predict, type Target } from './predict.js';
import type { Sight } from './readings.js';
import type { Scatter, Straying } from './scatterPoint.js';
import { weighHoles } from './weighHoles.js';

/** Spreads `points` over what the fit allows, and weighs each by the holes that met nothing or met timber anywhere. */
export function scatterOf(fit: Fit, sight: Sight, placing: Placing, points: number): Scatter {
  const { first: inner, last: outer } = joistsInRoom(fit, sight);
  // One joist beyond each wall: a hole beside the wall may speak of it.
  const first = inner - 1;
  const joists = outer - first + 2;
  const sloped = fit.setting.skew > 0;
  const targets: Target[] = Array.from({ length: joists }, (_, j) => ({ of: 'node', joist: first + j, v: 0 }));
  if (sloped) targets.push({ of: 'skew', joist: 0, v: 0 }, { of: 'fan', joist: 0, v: 0 });
  const { means, covariance } = predict(fit, targets);
  const { columns } = pivotedFactor(targets.length, covariance);
  const nodes = new Float64Array(points * joists);
  const skew = new Float64Array(points);
  const fan = new Float64Array(points);
  const row = new Float64Array(targets.length);
  for (let p = 0; p < points; p++) {
    row.set(means);
    columns.forEach((column, dimension) => {
      const z = normalSpread(p, points, dimension);
      for (let i = 0; i < row.length; i++) row[i] += column[i] * z;
    });
    for (let j = 0; j < joists; j++) nodes[p * joists + j] = row[j];
    if (sloped) {
      skew[p] = row[joists];
      fan[p] = row[joists + 1];
    }
  }
  const straying = strayingOf(fit, first, joists);
  const bare = { first, joists, points, nodes, skew, fan, straying };
  return { ...bare, ...weighHoles(bare, fit, sight, placing) };
}

function strayingOf(fit: Fit, first: number, joists: number): Straying {
  const { system } = fit;
  const variances = variancesOf(system, fit.setting);
  const found: { value: number; v: number; gain: number; variance: number }[][] = Array.from({ length: joists }, () => []);
  for (let i = 0; i < system.count; i++) {
    const j = system.joist[i] - first;
    if (j < 0 || j >= joists) continue;
    const off = system.off[i];
    const variance = system.variance[i] + off * off * system.widthSd * system.widthSd;
    found[j].push({ value: system.value[i], v: system.v[i], gain: 0, variance });
  }
  const variance = found.map((each, j) => {
    const own = ownOf(first + j, variances);
    return own === 0 ? 0 : 1 / each.reduce((sum, one) => sum + 1 / one.variance, 1 / own);
  });
  const readings = found.map((each, j) => each.map((one) => ({ ...one, gain: variance[j] / one.variance })));
  return { variance, readings };
}
