// The pickup list on paper: a sheet for each lesson, large enough to read from a music stand.

import { byId, count, el } from './words.js';

/**
 * Fills the sheets.
 *
 * @param lessons each with its title and its lines: number, text, and the reason why it is on the list
 * @param what a name for the lines of the list
 */
export function fillSheet(lessons, what = 'to pick up') {
  byId('sheet').replaceChildren(...lessons.map(({ title, lines }) => el('section', {},
    el('h1', {}, title),
    el('p', { class: 'lead' }, lines.length ? `${count(lines.length, 'line')} ${what}` : 'No line to pick up.'),
    el('ol', {}, ...lines.map((line) => el('li', {},
      el('span', { class: 'tick' }), el('span', { class: 'number' }, String(line.number)),
      el('div', {}, el('p', { class: 'text' }, line.text), el('p', { class: 'why' }, line.why))))))));
}
