export { type DrawOptions, drawPlan } from './drawPlan.js';
export type { FigureUnit } from './figure.js';
export type { DrawingLayer } from './ink.js';
export type { Paper, View } from './sheet.js';
export { type DrawingMessages, drawingWords, type WordKey } from './words.js';
