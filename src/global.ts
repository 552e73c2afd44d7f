// What the one file for script hosts without modules puts under `Soffitwright`: the core, and each entry point beside it by its
// name, because their functions may share names with those of the core.
export * as drawing from './drawing/index.js';
export * from './index.js';
