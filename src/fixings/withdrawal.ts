import type { CheckStep } from '../rules/checkRecord.js';
import type { Clause } from '../rules/clause.js';
import type { Source } from '../rules/source.js';
import { nailPull } from '../rules/standards/boardTests.js';
import { characteristicDensity, type StrengthClass } from '../rules/standards/en338of2016.js';
import {
  declaredWithdrawal,
  leastThread,
  materialFactor,
  penetrationFactor,
  permanentFactor,
  screwInRange,
  screwWithdrawal,
  smoothNailStrength,
} from '../rules/standards/en1995of2008.js';
import { nailWithdrawal, permanentDuration, woodScrewWithdrawal } from '../rules/standards/nds2018.js';
import { allowableShare, nailUltimate, screwUltimate } from '../rules/standards/woodHandbook.js';
import type { CapacityFixing, CapacityMethod, CapacityTimber } from './capacityFixing.js';
import { newtons } from './hungLoad.js';

/** What a fixing holds, N, and how that comes about; 0 where the method has no rule for it. */
export interface Hold {
  readonly steps: readonly CheckStep[];
  readonly capacity: number;
  readonly source: Source;
  readonly fallback?: Hold;
}

const INCH = 25.4;
const NEWTONS_PER_POUND = 4.4482216;

/** Withdrawal, and the head and the shank where they were declared: the least of them. */
export function holdOf(fixing: CapacityFixing, timber: CapacityTimber, method: CapacityMethod): Hold {
  const thread = Math.min(fixing.embedment, fixing.threadLength ?? Infinity);
  const timberHold =
    method === 'ec5' ? ec5Hold(fixing, timber, thread) : americanHold(fixing, timber.specificGravity as number, thread, method);
  const others = [
    ...(fixing.headPullThrough === 'ASTM C36'
      ? [declared('head through the board', nailPull.load, nailPull.source, timber, method)]
      : fixing.headPullThrough === undefined
        ? []
        : [declared('head through the board', fixing.headPullThrough, declaredSource, timber, method)]),
    ...(fixing.tension === undefined ? [] : [declared('fixing in tension', fixing.tension, declaredSource, timber, method)]),
  ];
  const least = [timberHold, ...others].reduce((best, each) => (each.capacity < best.capacity ? each : best));
  return {
    steps: [timberHold, ...others].flatMap(({ steps }) => steps),
    capacity: newtons(least.capacity),
    source: least.source,
    ...(timberHold.fallback && { fallback: timberHold.fallback }),
  };
}

const step = (name: string, value: number, unit: string, working: string, clause: Clause): CheckStep => ({
  name,
  value: newtons(value),
  unit,
  working,
  source: clause.source,
});

function ec5Hold(fixing: CapacityFixing, timber: CapacityTimber, thread: number): Hold {
  const { kind = 'screw', diameter: d, innerDiameter, withdrawal, shank = 'smooth' } = fixing;
  const density = timber.density ?? characteristicDensity(timber.grade as StrengthClass);
  const dried = timber.willDry === true ? 2 / 3 : 1;
  const fallback = designHold(smoothHold(d, thread, density, dried), timber);
  const inRange = kind === 'screw' && screwInRange(d, innerDiameter);
  const characteristic = (value: number, working: string, { clause }: { readonly clause: Clause }): Hold => ({
    steps: [step('withdrawal, characteristic', value, 'N', working, clause)],
    capacity: value,
    source: clause.source,
  });
  if (kind === 'screw' && withdrawal === undefined && !inRange) {
    return { steps: [], capacity: 0, source: screwInRange.clause.source, fallback };
  }
  if (kind === 'nail' && shank === 'ringed' && withdrawal === undefined) {
    return { steps: [], capacity: 0, source: penetrationFactor.clause.source, fallback };
  }
  if (kind === 'nail' && shank === 'smooth') {
    const value = smoothNailStrength(density) * d * thread * penetrationFactor(d, thread, 'smooth') * dried;
    return designHold(
      characteristic(value, `20e-6 x ${density}^2 x ${d} x ${thread}, its penetration reckoned`, penetrationFactor),
      timber,
    );
  }
  if (kind === 'screw' && thread < leastThread(d)) {
    return {
      steps: [step('thread in the joist, at least', leastThread(d), 'mm', `6 x ${d}`, leastThread.clause)],
      capacity: 0,
      source: leastThread.clause.source,
      fallback,
    };
  }
  if (withdrawal !== undefined) {
    const short = kind === 'nail' ? penetrationFactor(d, thread, 'ringed') * dried : 1;
    const value = declaredWithdrawal(d, thread, density, withdrawal.strength, withdrawal.density) * short;
    const working = `${withdrawal.strength} x ${d} x ${thread} x (${density} / ${withdrawal.density})^0.8`;
    return designHold(characteristic(value, working, declaredWithdrawal), timber);
  }
  const value = screwWithdrawal(d, thread, density);
  return designHold(characteristic(value, `d ${d}, l_ef ${thread}, rho_k ${density}`, screwWithdrawal), timber);
}

/** A smooth nail of the same diameter, its thread counted in full. */
function smoothHold(d: number, thread: number, density: number, dried: number): Hold {
  const value = smoothNailStrength(density) * d * thread * dried;
  const { clause } = smoothNailStrength;
  const working = `20e-6 x ${density}^2 x ${d} x ${thread}${dried === 1 ? '' : ' x 2/3, drying under load'}`;
  return {
    steps: [step('withdrawal of a smooth nail, characteristic', value, 'N', working, clause)],
    capacity: value,
    source: clause.source,
  };
}

/** Characteristic to design value under permanent load. */
function designHold({ steps, capacity, source }: Hold, { serviceClass = 1 }: CapacityTimber): Hold {
  const [kMod, gamma] = [permanentFactor(serviceClass), materialFactor()];
  const value = (capacity * kMod) / gamma;
  const working = `${newtons(capacity)} x ${kMod} / ${gamma}`;
  return {
    steps: [...steps, step('design value under permanent load', value, 'N', working, permanentFactor.clause)],
    capacity: value,
    source,
  };
}

function americanHold(
  { kind = 'screw', diameter }: CapacityFixing,
  g: number,
  thread: number,
  method: Exclude<CapacityMethod, 'ec5'>,
): Hold {
  if (method === 'nds') {
    const rule = kind === 'screw' ? woodScrewWithdrawal : nailWithdrawal;
    const perInch = rule(g, diameter / INCH);
    const duration = permanentDuration();
    const value = perInch * (thread / INCH) * duration * NEWTONS_PER_POUND;
    return {
      steps: [
        step('withdrawal, allowable, for each inch', perInch, 'lb/in', `G ${g}, D ${diameter} mm`, rule.clause),
        step('allowable under permanent load', value, 'N', `x ${thread} mm x ${duration}`, permanentDuration.clause),
      ],
      capacity: value,
      source: rule.clause.source,
    };
  }
  const rule = kind === 'screw' ? screwUltimate : nailUltimate;
  const ultimate = rule(g, diameter, thread);
  const share = allowableShare();
  const value = ultimate * share;
  return {
    steps: [
      step('withdrawal, mean greatest in tests', ultimate, 'N', `G ${g}, D ${diameter}, L ${thread}`, rule.clause),
      step('allowable', value, 'N', `x ${share}, the share published for nails`, allowableShare.clause),
    ],
    capacity: value,
    source: rule.clause.source,
  };
}

const declaredSource: Source = { standard: 'declared or tested value, given by the caller', standing: 'practice' };

/** A declared value, with timber's factors under EN 1995-1-1: no code has others for board. */
function declared(name: string, value: number, source: Source, timber: CapacityTimber, method: CapacityMethod): Hold {
  const given: Hold = { steps: [{ name, value, unit: 'N', working: 'as declared or tested', source }], capacity: value, source };
  if (method === 'ec5') return designHold(given, timber);
  const share = allowableShare();
  const allowable = value * share;
  const working = `x ${share}`;
  return {
    ...given,
    steps: [...given.steps, { name: 'allowable', value: newtons(allowable), unit: 'N', working, source }],
    capacity: allowable,
  };
}
