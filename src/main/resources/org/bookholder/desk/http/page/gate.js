// Finished? Whether every lesson can go out, and if not what is missing, lesson by lesson.

import { byId, count, dated, el } from './words.js';

export function showGate(home) {
  const { today, trouble } = home.course;
  if (!today) {
    byId('gate').replaceChildren(el('h2', { class: 'headline' }, 'Finished?'), trouble ? el('p', { class: 'wrong', role: 'alert' }, trouble) : '');
    return;
  }
  const rows = [...today.order, ...today.rest].filter((row) => row.kind !== 'break').sort((a, b) => a.number - b.number);
  const open = rows.filter((row) => row.kind === 'unreadable' || row.way.some((part) => part < 1));
  byId('gate').replaceChildren(
    el('h2', { class: 'headline' }, today.finished ? 'Finished: every lesson can go out' : 'Finished? Not yet'),
    el('p', { class: 'good' }, today.finished
      ? 'Every lesson is recorded, has no pickups left, and is edited, exported and checked.'
      : `${count(open.length, 'lesson')} of ${rows.length} ${open.length === 1 ? 'needs' : 'need'} something before the course can go out.`),
    el('ol', { class: 'lessons' }, ...open.flatMap((row, i) => [
      row.module && row.module !== open[i - 1]?.module ? el('li', { class: 'of-module' }, row.module) : '', el('li', { class: 'gate-row' },
      el('span', { class: 'n' }, String(row.number)), el('span', { class: 'name' }, row.title),
      el('span', { class: 'missing' }, row.kind === 'unreadable' ? row.why
        : `Missing: ${today.steps.filter((_, i) => row.way[i] < 1).join(', ')}.`),
        row.todo ? el('span', { class: 'small next-step' }, `Next: ${dated(row.todo)}.`) : '')])),
    today.finished ? '' : el('p', { class: 'small' }, 'Don\u2019t promise a date until this list is empty.'));
}
