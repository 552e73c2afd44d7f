import { fill } from '../rules/messages.js';

/**
 * Every word that a drawing or a table puts on paper, in site words. A caller translates by passing some of them as `messages`;
 * `{blanks}` are filled as in findings.
 */
export const drawingWords = {
  'view.reflected': 'Plan, reflected: same way round as the floor',
  'view.looking-up': 'LOOKING UP: left and right swapped against the floor plan',
  'view.reflected.short': 'reflected: same way round as the floor',
  'view.looking-up.short': 'looking up: mirror image of the floor plan',
  'room.unnamed': 'Ceiling',
  'wall.door': 'door',
  'wall.window': 'window',

  'title.view': 'View',
  'title.scale': 'Scale',
  'title.scale.text': '1:{scale} on {paper}. Do not scale.',
  'title.scale.larger': '1:{scale} on {paper}, too small to read on A4. Do not scale.',
  'title.figures': 'Figures',
  'title.figures.text': '{unit}, from {across} and from {along}',
  'title.figures.line': 'the zero line',
  'unit.mm': 'mm',
  'unit.inch': 'feet and inches',
  'title.joists': 'Joists',
  'title.joists.text': '{count} {direction}, {width} wide, {known}',
  'title.joists.x': 'across the sheet',
  'title.joists.y': 'up the sheet',
  'known.given': 'as given',
  'known.measured': 'measured',
  'known.inferred': 'inferred from marks',
  'title.boards': 'Boards',
  'title.boards.text': '{list}, long way across the joists',
  'title.boards.each': '{count} of {stock}',
  'title.screws': 'Screws',
  'title.screws.text': '{count}, each {length} long',
  'title.screws.none': '{count}; no stock length is right',
  'title.ends': 'Board ends',
  'title.ends.text': '{word}: within edge rules {within}%, on timber {on}%',
  'ends.sure': 'sure',
  'ends.check': 'check',
  'ends.prove': 'prove first',
  'title.rules': 'Rules',
  caution: 'Not a structural, asbestos, fire or building-control approval.',

  'hold.stamp': 'HOLD',
  'hold.text': 'Do not start: nothing is to be bought, cut or fixed.',

  'legend.title': 'Key',
  'legend.wall': 'wall',
  'legend.joist': 'joist above, centre line',
  'legend.board': 'bound edge or factory end',
  'legend.cut': 'cut edge, ticks on its piece',
  'legend.screw': 'screw; drawn apart at joints',
  'legend.opening': 'opening',
  'legend.noFix': 'no screws here',
  'legend.oldJoint': 'joint of the old ceiling',
  'legend.piece': 'piece, size as cut, its board',
  'legend.prove': 'prove this joist first',
  'legend.running': 'figures run from here',

  'notes.title': 'Before you start',
  'notes.prove': 'Prove first: {list}. Probe both edges before anything is cut to them.',
  'notes.small': 'Too small to number in full: {list}.',
  'notes.many': 'Sizes or boards of {count} pieces do not fit on this sheet: see the cut list.',
  'notes.smallEach': '{piece} ({size}, {board})',
  'notes.opening': '{name}: {size}, centre {across} from {acrossFrom}, {along} from {alongFrom}',
  'notes.more': 'And {count} more: see the findings of the plan.',
  'opening.hatch': 'hatch',
  'opening.light': 'light',
  'opening.flue': 'flue',
  'opening.column': 'column',
  'opening.other': 'opening',
} as const;

export type WordKey = keyof typeof drawingWords;

/** Words of the caller's own, by key; the others stay. */
export type DrawingMessages = { readonly [K in WordKey]?: string };

/** Looks a word up and fills its blanks. */
export type Say = (key: WordKey, blanks?: Readonly<Record<string, string | number>>) => string;

export const sayWith =
  (messages: DrawingMessages = {}): Say =>
  (key, blanks = {}) =>
    fill(messages[key] ?? drawingWords[key], blanks);
