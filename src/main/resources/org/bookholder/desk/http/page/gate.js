// Finished? Whether every lesson can go out, and if not what is missing, lesson by lesson.

import { byId, count, dated, el, fill, said } from './words.js';

export function showGate(home, act) {
  const { today, trouble } = home.course;
  if (!today) {
    byId('gate').replaceChildren(el('h2', { class: 'headline' }, 'Finished?'), trouble ? el('p', { class: 'wrong', role: 'alert' }, trouble) : '');
    return;
  }
  const rows = [...today.order, ...today.rest].filter((row) => row.kind !== 'break').sort((a, b) => a.number - b.number);
  const open = rows.filter((row) => row.kind === 'unreadable' || row.missing.length);
  const { gate } = today;
  const unfolded = byId('looked-at')?.open;
  fill('gate',
    el('h2', { class: 'headline' }, gate.headline),
    el('p', { class: 'good' }, gate.standing),
    ...facts(today, act),
    today.due.length && open.length ? el('h3', { class: 'list-title' }, 'Lessons that need something') : '',
    el('ol', { class: 'lessons' }, ...open.flatMap((row, i) => [
      row.module && row.module !== open[i - 1]?.module ? el('li', { class: 'of-module' }, row.module) : '', el('li', { class: 'gate-row' },
      el('span', { class: 'n' }, String(row.number)), el('span', { class: 'name' }, row.title),
      el('span', { class: 'missing' }, row.kind === 'unreadable' ? row.why
        : `Missing: ${row.missing.join(', ')}.`),
        row.todo ? el('span', { class: 'small next-step' }, `Next: ${dated(row.todo)}.`) : '')])),
    gate.caution ? el('p', { class: 'small' }, gate.caution) : '',
    ...launch(today.launch));
  if (unfolded && byId('looked-at')) byId('looked-at').open = true;
}

/** What belongs to a launch and is not there yet; it never keeps a course from being finished. */
const launch = ({ standing, missing }) => [
  el('h3', { class: 'list-title' }, 'What belongs to a launch'),
  el('p', { id: 'launch' }, missing.length ? `${standing}; open are:` : 'All of it is there.'),
  el('ul', { class: 'launch-missing' }, ...missing.map((one) => el('li', {}, one))),
  el('p', { class: 'small' }, el('a', { href: '?view=lists&list=launch' }, 'Tick it, add to it, leave out what you don\u2019t need'), '. It stops nothing.')];

/** Facts that are due: what each says, where it stands, and which files say it; and those that somebody looked at. */
const facts = ({ due, lookedAt, gate }, act) => [
  ...(due.length ? [el('h3', { class: 'list-title' }, 'Facts to look at again'),
    el('ul', { class: 'lessons facts' }, ...due.map((one) => el('li', { class: 'gate-row' }, el('span', { class: 'n' }, String(one.number)),
      el('span', { class: 'name' }, one.fact),
      el('span', { class: 'missing' }, `To be looked at since ${said(one.due)}: ${one.title}, line ${one.line}: \u201c${one.text}\u201d`),
      el('span', { class: 'small next-step' }, one.holding),
      el('span', { class: 'next-step choices' }, el('button', { type: 'button', id: `right-${one.number}-${one.line}`,
        onclick: () => act({ do: 'looked_at', lesson: one.lesson, line: one.line }) }, 'It is still right'))))),
    el('p', { class: 'small' }, gate.outdated)] : []),
  ...(lookedAt.length ? [el('details', { class: 'group', id: 'looked-at' }, el('summary', {}, `Looked at: ${count(lookedAt.length, 'fact')}`),
    el('ul', { class: 'lessons facts' }, ...lookedAt.map((one) => el('li', { class: 'gate-row' }, el('span', { class: 'n' }, String(one.number)),
      el('span', { class: 'name' }, one.fact),
      el('span', { class: 'small next-step' }, `Still right on ${said(one.lookedAt.slice(0, 10))}: ${one.title}, line ${one.line}`),
      el('span', { class: 'next-step choices' }, el('button', { type: 'button', class: 'quiet', id: `back-${one.number}-${one.line}`,
        onclick: () => act({ do: 'not_looked_at', lesson: one.lesson, line: one.line }) }, 'Take that back'))))))] : []),
];
