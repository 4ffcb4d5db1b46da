// What the pickup list of a session and that of a course have in common: which lines, and how one is told.

import { el } from './words.js';

/** What can be shown of them; each list adds what it knows in its own way. */
export const REASONS = {
  misread: (l) => l.outcome === 'misread',
  incomplete: (l) => l.outcome === 'incomplete',
  unjudged: (l) => l.outcome === 'not judged',
  decided: (l) => Boolean(l.decision),
};

/** Whether it was tried, or would have been, in a take; in any if none is given. */
export const within = (l, take) => !take || l.where?.take === take || l.attempts.some((a) => a.take === take);

export const why = (l) => l.decision?.label ?? (l.said || (l.marked ? 'marked' : l.outcome));

export const entry = (l, first, more) => [
  el('span', { class: 'number' }, String(l.line)), el('span', { class: 'first' }, first), el('span', { class: 'why' }, more)];
