// The pickup list on paper: a sheet for each lesson, to be read from a music stand.

import { byId, count, el } from './words.js';

/**
 * Fills the sheets.
 *
 * @param lessons each with its title and its lines: number, text, and why it is on the list
 * @param what what the lines of the list are
 */
export function fillSheet(lessons, what = 'to pick up') {
  byId('sheet').replaceChildren(...lessons.map(({ title, lines }) => el('section', {},
    el('h1', {}, title),
    el('p', { class: 'lead' }, lines.length ? `${count(lines.length, 'line')} ${what}` : 'No line to pick up.'),
    el('ol', {}, ...lines.map((line) => el('li', {},
      el('span', { class: 'tick' }), el('span', { class: 'number' }, String(line.number)),
      el('div', {}, el('p', { class: 'text' }, line.text), el('p', { class: 'why' }, line.why))))))));
}
