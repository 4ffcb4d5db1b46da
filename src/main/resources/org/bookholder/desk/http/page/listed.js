// Shared by the pickup lists of a session and of a course: which lines to show, and how to describe one.

import { el } from './words.js';

/** The choices of what to show; each list adds its own. */
export const REASONS = {
  misread: (l) => l.outcome === 'misread',
  incomplete: (l) => l.outcome === 'incomplete',
  unjudged: (l) => l.outcome === 'not judged',
  decided: (l) => Boolean(l.decision),
};

/** Whether the line was tried in a take or should have been; in any take if none is given. */
export const within = (l, take) => !take || l.where?.take === take || l.attempts.some((a) => a.take === take);

export const why = (l) => l.decision?.label ?? (l.said || (l.marked ? 'marked' : l.outcome));

export const entry = (l, first, more) => [
  el('span', { class: 'number' }, String(l.line)), el('span', { class: 'first' }, first), el('span', { class: 'why' }, more)];
