// The plan that comes of the recording days: sessions part by part, weeks of editing, costs, and where the figures come from.

import { count, dated, el, said } from './words.js';

/** What the terminal says of the course's file, said of the page that the reader has before them. */
const HERE = [[/; write new days into .*$/, '; click new ones in the calendar above'],
  [/no quote; write .*$/, 'no quote yet; give one below'], ['All figures are from course.yaml.', 'All figures are from the form below.'],
  ['unless set in course.yaml', 'unless set below']];

const here = (text) => HERE.reduce((now, [from, to]) => now.replace(from, to), dated(text));

const USES = { SET_UP: 'Set up', BREAK: 'Break, away from the screen' };

/** The plan, as sections. */
export const planned = (plan, handle) => [
  el('section', { class: 'group' }, el('h3', {}, 'Sessions'), ...sessions(plan, handle)),
  el('section', { class: 'group' }, el('h3', {}, 'Weeks of editing'), ...editing(plan)),
  ...(plan.costs.length ? [el('section', { class: 'group' }, el('h3', {}, 'What it costs'), ...plan.costs.map(cost))] : []),
  el('details', { class: 'group sources' }, el('summary', {}, 'Where the figures come from'),
    el('p', { class: 'small' }, plan.limits, ' You set your own under Settings.'), el('p', { class: 'small' }, here(plan.sources))),
];

/** The server indents what a sum is made of. */
const cost = (text) => el('p', { class: text.startsWith(' ') ? 'small' : '' }, here(text.trim()));

function sessions({ toRecord, over, sessions: all, free, left, why }, handle) {
  return [el('p', {}, toRecord),
    over ? el('p', { class: 'small' }, `${count(over, 'recording day')} ${over === 1 ? 'is' : 'are'} over.`) : '',
    all.length ? el('p', { class: 'small' }, 'Drag a lesson by its handle onto another day, or press the handle.') : '',
    ...all.map((one, i) => session(one, i, handle)),
    all.some(({ day }) => !day) ? el('p', {}, 'You have not chosen a recording day yet. Click one in the calendar above.') : '',
    free.length ? el('p', { class: 'small' }, `Not needed: ${free.map((date) => said(date, true)).join('; ')}.`) : '',
    ...(left.length ? [el('h4', { class: 'list-title' }, 'No place was found for'),
      el('ul', {}, ...left.map((text) => el('li', {}, text))), ...why.map((text) => el('p', { class: 'wrong' }, `Why: ${here(text)}.`))] : [])];
}

const session = ({ day, length, reading, slots }, i, handle) => el('div', { class: 'session-day', 'data-day': day },
  el('h4', { class: 'list-title' }, day ? said(day, true) : `Session ${i + 1}`, ` · ${length}, of it ${reading} before the camera`),
  el('ol', { class: 'slots' }, ...slots.map((slot) => el('li', { class: slot.use.toLowerCase() },
    el('span', { class: 'at' }, slot.at),
    el('span', { class: 'name' }, slot.what || USES[slot.use], slot.chosen ? el('span', { class: 'small' }, ' · your choice') : ''),
    el('span', { class: 'at' }, slot.length), slot.lesson ? handle({ day }, slot) : ''))));

function editing({ toEdit, weeks, usual, forecast, launch, caution }) {
  return [el('p', {}, `${toEdit}.`),
    el('ol', { class: 'slots weeks' }, ...together(weeks).map(({ begins, idle, finished, rest, begun, hours, lasts }) => el('li', { class: idle ? 'break' : '' },
      el('span', { class: 'at' }, said(begins)),
      el('span', { class: 'name' }, idle ? `waits for the recording${lasts > 1 ? `, ${lasts} weeks` : ''}`
        : [...finished.map((name, i) => (rest && !i ? `rest of ${name}` : name)), begun && `part of ${begun}`].filter(Boolean).join(', ')),
      el('span', { class: 'at' }, idle ? '' : `${hours.toFixed(1)} h`)))),
    ...[usual, forecast, launch].filter(Boolean).map((text) => el('p', { class: 'small' }, dated(text))),
    caution ? el('p', {}, caution) : ''];
}

/** Weeks in which nothing can be edited yet are one row. */
const together = (weeks) => weeks.reduce((rows, week) => {
  const last = rows.at(-1);
  if (week.idle && last?.idle) last.lasts += 1;
  else rows.push({ ...week, lasts: 1 });
  return rows;
}, []);
