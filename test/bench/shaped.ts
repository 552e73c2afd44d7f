import { printSplitRooms } from './splitRooms.js';
import { printSteppedRooms } from './steppedRooms.js';

const ROOMS = Number(process.argv[2] ?? 300);
const FIRST = Number(process.argv[3] ?? 0);
/** Smaller rooms that are laid beside the solver. */
const BESIDE = Number(process.argv[4] ?? 40);

if (ROOMS > 0) printSteppedRooms(ROOMS, FIRST);
if (BESIDE > 0) await printSplitRooms(BESIDE, FIRST);
