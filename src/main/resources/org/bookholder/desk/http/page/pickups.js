// The growing list of pickups on the live page, and hearing any line at once while the take runs on.

import { why } from './listed.js';
import { hear, heardNow, silence } from './listen.js';
import { byId, count, el, put } from './words.js';
import { lineOf, model, telling, text, words } from './model.js';

const FIRST_WORDS = 7;
let drawn = '';

/** Plays the attempt that decides the line's outcome; the same line again stops it. */
export function hearLine(number) {
  const line = lineOf(number);
  const attempt = line && telling(line);
  if (!attempt) return;
  if (heardNow() === attempt) silence();
  else hear(attempt);
}

/** Stops what is being heard. */
export const heardStops = () => { if (heardNow()) silence(); };

const first = (number) => (words(number).length > FIRST_WORDS
  ? `${words(number).slice(0, FIRST_WORDS).join(' ')} …` : text(number));

export function showPickups() {
  const lines = model.lines.filter((l) => l.pickup);
  put('open', String(lines.length));
  put('strip-open', `${lines.length} to pick up`);
  const seconds = lines.reduce((sum, l) => sum + (60 * words(l.line).length) / (model.pace.lesson ?? model.script.target), 0);
  put('open-time', lines.length ? `about ${Math.round(seconds)} s of reading` : 'nothing so far');
  const list = JSON.stringify(lines);
  if (list === drawn) return;
  const grew = drawn !== '' && lines.length > byId('live-pickups').childElementCount;
  drawn = list;
  byId('live-pickups').replaceChildren(...lines.map(item));
  if (grew) byId('live-pickups').scrollTop = byId('live-pickups').scrollHeight;
}

function item(line) {
  const heard = telling(line);
  return el('li', {}, el('button', {
    type: 'button', class: `pick ${line.outcome}`, 'data-hear': line.line, disabled: !heard,
    'aria-label': `Line ${line.line}, ${why(line)}${heard ? `, hear it; ${count(line.attempts.length, 'attempt')}` : ''}`,
    onclick: () => hearLine(line.line),
  }, el('span', { class: 'number' }, String(line.line)), el('span', { class: 'first' }, first(line.line)),
  el('span', { class: 'why' }, why(line)), heard ? el('span', { class: 'hear-it', 'aria-hidden': 'true' }, '▶') : null));
}
