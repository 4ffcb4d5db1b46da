// The summary of a session, and the sheet to print.

import { openHandOff } from './handoff.js';
import { fluffPlot } from './plot.js';
import { fillSheet } from './sheet.js';
import { byId, clock, count, el, figure, linesRead, short } from './words.js';
import { inTake, lengthOfAll, model, notesOf, telling, text } from './model.js';

export function showSummary() {
  const s = model.summary;
  const plot = el('figure', { class: 'plot wide' });
  const rows = [
    ['Length', `${short(lengthOfAll())} in ${count(model.takes.length, 'take')}`],
    ['Pace', `${figure(model.pace.lesson)} words a minute on camera, target ${model.script.target} (${model.script.target_from})`],
    ['Clean at the first attempt', `${s.first_clean} of ${count(s.read, 'line')} read`],
    ['Lines', linesRead(s)],
    ['Still open', count(s.open, 'line')],
    ['Decided', count(s.decided, 'line')],
  ];
  const stretch = (name, part) => (part
    ? el('p', {}, el('strong', {}, `${name}: `),
      `lines ${part.first} to ${part.last}, ${count(part.fluffs, 'fluff')} in ${part.words} words, from ${short(part.from)} on`)
    : null);
  const children = [
    el('h2', { class: 'title' }, model.live ? 'Summary so far' : 'Session ended'),
    model.live ? null : el('p', { class: 'next' }, s.open
      ? `Next: go through the ${count(s.open, 'line')} to pick up, then hand off to the editor.`
      : 'Nothing to pick up. Next: hand off to the editor.'),
    el('dl', { class: 'sums' }, ...rows.flatMap(([name, value]) => [el('dt', {}, name), el('dd', {}, value)])),
    el('h2', {}, 'Fluffs in 100 words, over time'), plot,
    stretch('The best stretch', s.best), stretch('The hardest stretch', s.hardest)];
  place().replaceChildren(...children.filter(Boolean));
  fluffPlot(plot, s.stretches, s.hardest);
}

/** The place for the figures; the buttons below it are kept, so that they can be pressed while a take rolls. */
function place() {
  if (!byId('came-to')) {
    byId('summary').append(el('section', { class: 'page', 'aria-label': 'Summary' },
      el('div', { id: 'came-to', class: 'came-to' }),
      el('p', { class: 'choices' },
        el('button', { type: 'button', onclick: () => document.querySelector('[data-view=review]').click() },
          'Go through the pickups ', el('kbd', {}, '2')),
        el('button', { type: 'button', onclick: openHandOff }, 'Hand off to the editor ', el('kbd', {}, 'W')),
        el('button', { type: 'button', onclick: () => window.print() }, 'Print the pickup list ', el('kbd', {}, 'L')),
        el('a', { class: 'button', href: 'pickups.pdf', target: '_blank', rel: 'noopener' }, 'Pickup list as PDF'))));
  }
  return byId('came-to');
}

/** Fills the sheet; the browser asks for it before printing. */
export function layOut() {
  const lines = model.lines.filter((l) => l.pickup).map((l) => {
    const tried = telling(l);
    const marks = notesOf(l.line).map((n) => n.text).filter(Boolean).join('; ');
    const what = l.said && l.said !== 'not read' ? l.said : l.outcome === 'clean' ? 'marked' : l.outcome;
    const why = [what, tried ? `take ${tried.take} at ${clock(inTake(tried.take, tried.start))}` : '', marks];
    return { number: l.line, text: text(l.line), why: why.filter(Boolean).join(' · ') };
  });
  fillSheet([{ title: model.script.title, lines }]);
}
