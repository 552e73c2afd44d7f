import type { NamedWall } from './wallNames.js';

/** Length of a wall, mm. */
export const wallLength = ({ from, to }: NamedWall): number =>
  Math.sqrt((to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y));
