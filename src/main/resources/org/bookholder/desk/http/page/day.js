// The day: what was read today in all sessions, the rests, and when to rest next.

import { byId, count, el, hours } from './words.js';

export function showDay(home) {
  const { day } = home;
  if (!day) return;
  const name = home.course.name;
  byId('day').replaceChildren(el('h2', { class: 'headline' }, 'The day'),
    ...(day.trouble ? [el('p', { class: 'wrong' }, day.trouble)] : []),
    ...(day.sessions?.length ? read(day, name) : [el('p', {}, 'Nothing has been read at a microphone today. What is read from a recording does not count.')]),
    el('h3', { class: 'list-title' }, 'Voice and eyes'),
    el('ul', { class: 'advice' }, ...advice(day).map((text) => el('li', {}, text))),
    el('ul', { class: 'cautions' }, ...day.cautions.map((text) => el('li', {}, text))));
}

function read(day, course) {
  const rows = [
    ...day.sessions.map((s) => ({ at: s.at, row: session(s, course) })),
    ...day.rests.map((r) => ({ at: r.at, row: el('li', { class: 'pause' }, `${r.at} rest of ${r.minutes} min`) })),
  ].sort((a, b) => a.at.localeCompare(b.at));
  return [
    el('p', { id: 'day-sums' }, `${count(day.sessions.length, 'session')}, ${hours(day.reading)} of reading, ${hours(day.camera)} on camera. `
      + `The last take ended ${day.resting} min ago.`),
    day.pickups ? el('p', { class: 'open', id: 'day-open' },
      `${count(day.pickups, 'line')} to pick up. If everything is still set up, pick ${day.pickups === 1 ? 'it' : 'them'} up before the light changes.`) : '',
    el('ol', { class: 'lessons' }, ...rows.map(({ row }) => row)),
  ].filter(Boolean);
}

const session = (s, course) => el('li', { class: 'lesson session' },
  el('span', { class: 'n' }, s.at),
  el('span', { class: 'name' }, s.title),
  el('span', { class: 'todo' }, `${s.lines}; ${count(s.takes, 'take')}, ${s.camera} min on camera`),
  el('span', { class: `todo ${s.pickups ? 'open' : ''}` }, s.pickups ? `${s.pickups} to pick up` : 'nothing to pick up'),
  el('span', { class: 'do' }, course ? el('a', { class: 'button', href: `course/${course}/session/${s.session}/` }, 'Hear') : ''));

const advice = (day) => [...(day.advice ?? []),
  ...(day.next === undefined || day.advice?.length ? [] : [`The next break is advised after ${day.next} more minutes.`])];
