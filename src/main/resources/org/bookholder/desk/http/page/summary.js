// What a session came to, and the sheet to print.

import { openHandOff } from './handoff.js';
import { fluffPlot } from './plot.js';
import { byId, count, el, figure, short } from './words.js';
import { inTake, model, notesOf, telling, text } from './model.js';
import { clock } from './words.js';

export function showSummary() {
  const s = model.summary;
  const length = model.takes.reduce((sum, t) => sum + t.end - t.start, 0);
  const plot = el('figure', { class: 'plot wide' });
  const rows = [
    ['Length', `${short(length)} in ${count(model.takes.length, 'take')}`],
    ['Pace', `${figure(model.pace.lesson)} words a minute, target ${model.script.target}`],
    ['Clean at the first attempt', `${s.first_clean} of ${count(s.read, 'line')} read`],
    ['Read', `${s.read} of ${count(s.lines, 'line')}`],
    ['Still open', count(s.open, 'line')],
    ['Decided', count(s.decided, 'line')],
  ];
  const stretch = (name, part) => (part
    ? el('p', {}, el('strong', {}, `${name}: `),
      `lines ${part.first} to ${part.last}, ${count(part.fluffs, 'fluff')} in ${part.words} words, from ${short(part.from)} on`)
    : null);
  const children = [
    el('h2', { class: 'title' }, 'What it came to'),
    el('dl', { class: 'sums' }, ...rows.flatMap(([name, value]) => [el('dt', {}, name), el('dd', {}, value)])),
    el('h2', {}, 'Fluffs in 100 words, over time'), plot,
    stretch('The best stretch', s.best), stretch('The hardest stretch', s.hardest)];
  place().replaceChildren(...children.filter(Boolean));
  fluffPlot(plot, s.stretches, s.hardest);
}

/** Where the figures go; the buttons below stay, so that they can be pressed while a take rolls. */
function place() {
  if (!byId('came-to')) {
    byId('summary').append(el('section', { class: 'page', 'aria-label': 'Summary' },
      el('div', { id: 'came-to', class: 'came-to' }),
      el('p', { class: 'choices' },
        el('button', { type: 'button', onclick: openHandOff }, 'Hand off to the editor ', el('kbd', {}, 'W')),
        el('button', { type: 'button', onclick: print }, 'Print the pickup list ', el('kbd', {}, 'L')),
        el('a', { class: 'button', href: 'pickups.pdf', target: '_blank', rel: 'noopener' }, 'Pickup list as PDF'))));
  }
  return byId('came-to');
}

export function print() {
  fillSheet();
  window.print();
}

/** One sheet for the lesson, to be read from a music stand. */
export function fillSheet() {
  const lines = model.lines.filter((l) => l.pickup);
  byId('sheet').replaceChildren(
    el('h1', {}, model.script.title),
    el('p', { class: 'lead' }, lines.length ? `${count(lines.length, 'line')} to pick up` : 'No line to pick up.'),
    el('ol', {}, ...lines.map((l) => {
      const tried = telling(l);
      const marks = notesOf(l.line).map((n) => n.text).filter(Boolean).join('; ');
      return el('li', {},
        el('span', { class: 'tick' }), el('span', { class: 'number' }, String(l.line)),
        el('div', {},
          el('p', { class: 'text' }, text(l.line)),
          el('p', { class: 'why' }, [l.outcome === 'clean' ? 'marked' : l.outcome, l.said === 'not read' ? '' : l.said,
            tried ? `take ${tried.take} at ${clock(inTake(tried.take, tried.start))}` : '', marks]
            .filter(Boolean).join(' · '))));
    })));
}

