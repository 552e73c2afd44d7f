import type { BoardLayout, Piece } from '../boards/boardLayout.js';
import type { Certainty } from '../joists/proveFirst.js';
import type { CeilingPlan } from '../plan/ceilingPlan.js';
import { cutFigure } from './figure.js';
import { isUp } from './stillToFix.js';
import type { Subject } from './subject.js';
import type { WordKey } from './words.js';

/** Written before a size that is not final. */
export const ABOUT = '~';

/** The joists to prove before a piece is cut: those of its ends that are not sure, where its length was cut to them. */
export function proveBefore({ layout, proveFirst }: CeilingPlan, piece: Piece): string[] {
  if (isUp(piece) || !isCutToLength(layout, piece)) return [];
  return proveFirst.filter((id) => piece.ends.some(({ joist }) => joist === id));
}

/** Whether a saw made the length of the piece: a whole board is put up as it came. */
function isCutToLength({ boards }: BoardLayout, { board, ends }: Piece): boolean {
  const cuts = boards.find(({ id }) => id === board)?.cuts ?? [];
  return ends.some(({ made }) => made === 'cut') || cuts.some(({ kind }) => kind === 'cross');
}

/**
 * The size of a piece as it is cut, its length marked where it is not final; with a raked end the lengths of both long edges, the
 * low one first.
 */
export function sizeText(piece: Piece, { plan, unit }: Subject): { long: string; wide: string } {
  const about = proveBefore(plan, piece).length > 0 ? ABOUT : '';
  const { low, high } = piece.edgeLengths ?? { low: piece.cutLength, high: piece.cutLength };
  // An edge that runs out to a point has no length of its own.
  const raked = low !== high && low > 0 && high > 0 && piece.ends.some(({ rake }) => rake !== undefined);
  const long = raked ? `${cutFigure(low, unit)}/${cutFigure(high, unit)}` : cutFigure(piece.cutLength, unit);
  return { long: about + long, wide: cutFigure(piece.width, unit) };
}

/** How sure the butt joints on a joist are, in words with the figure behind them: `prove first, 74 %`. */
export function certaintyText({ plan, say }: Subject, joist: string): string | undefined {
  const known = plan.certainty?.find((each) => each.joist === joist);
  // What was given is taken at its word: there is no figure behind it.
  const given = plan.joists.find(({ id }) => id === joist)?.known === 'given';
  if (known === undefined || given) return undefined;
  return say('ends.figure', { word: say(WORDS[known.certainty]), percent: percentText(known.probability) });
}

const WORDS: Readonly<Record<Certainty, WordKey>> = { sure: 'ends.sure', check: 'ends.check', 'prove first': 'ends.prove' };

/** A share as a percentage that never claims more than there is. */
export const percentText = (share: number): number => Math.floor(Math.round(share * 1e6) / 1e4);

/** The pieces whose length is not final, in one sentence. */
export function provisionalText({ plan, say }: Subject): string[] {
  const pieces = plan.layout.pieces.filter((piece) => proveBefore(plan, piece).length > 0);
  const joists = [...new Set(pieces.flatMap((piece) => proveBefore(plan, piece)))];
  return pieces.length === 0 ? [] : [say('notes.notFinal', { joists: joists.join(', '), about: ABOUT })];
}
