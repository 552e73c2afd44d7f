import type { Preference } from './preference.js';

/** What layouts are compared by, less being better: sums over the pieces, boards and rows of a layout. */
export type ObjectiveName =
  | 'boards'
  | 'area'
  | 'money'
  | 'joints'
  | 'boards and joints'
  | 'heavy pieces'
  | 'unproven ends'
  | 'poor bearings'
  | 'narrow rows'
  | 'short pieces'
  | 'beside old joints'
  | 'at inner corners'
  | 'in view'
  | 'off doubled joists';

const AFTERWARDS = ['stock sizes', 'lengths', 'cuts', 'close joints', 'ripped rows'] as const;

/** What only a whole layout shows. No search is made for it: it decides between layouts that a search leaves equal. */
export type AfterwardsName = (typeof AFTERWARDS)[number];

export const isAfterwards = (name: ObjectiveName | AfterwardsName): name is AfterwardsName =>
  (AFTERWARDS as readonly string[]).includes(name);

/** What a preference looks at, first thing first. */
export const preferredOrder = (prefer: Preference): readonly (ObjectiveName | AfterwardsName)[] => ORDERS[prefer];

const CLEAR = ['beside old joints', 'short pieces', 'in view', 'off doubled joists'] as const;
const LAST = ['cuts', 'close joints', 'ripped rows'] as const;

const ORDERS: Readonly<Record<Preference, readonly (ObjectiveName | AfterwardsName)[]>> = {
  boards: ['boards', 'area', 'at inner corners', 'joints', 'poor bearings', ...CLEAR, ...LAST],
  cost: ['money', 'boards', 'area', 'at inner corners', 'joints', 'poor bearings', ...CLEAR, ...LAST],
  joints: ['joints', 'boards', 'area', 'at inner corners', 'poor bearings', ...CLEAR, ...LAST],
  certainty: ['boards', 'area', 'at inner corners', 'unproven ends', 'joints', 'poor bearings', ...CLEAR, ...LAST],
  tradesperson: [
    'heavy pieces',
    'unproven ends',
    'poor bearings',
    'narrow rows',
    'at inner corners',
    'boards and joints',
    'joints',
    'boards',
    ...CLEAR,
    'lengths',
    ...LAST,
  ],
  estimator: ['money', 'boards', 'area', 'at inner corners', 'stock sizes', 'joints', 'poor bearings', ...CLEAR, ...LAST],
};
