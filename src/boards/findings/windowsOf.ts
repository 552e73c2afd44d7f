import type { Room } from '../../survey/room.js';

/** Sides of the room with a window in them, by their index. */
export const windowsOf = ({ walls = [] }: Room): number[] => walls.filter(({ window }) => window).map(({ edge }) => edge);
