// Putting today's lessons in order: a handle on each row, to drag with any pointer or to move with the arrow keys.

import { drag } from './drag.js';
import { byId, el } from './words.js';

const names = (home) => home.course.today.order.filter((row) => row.kind === 'lesson').map((row) => row.name);

/** Moves a lesson to a place in today's order; a place below 0 takes it out. */
function move(home, act, name, place) {
  const lessons = names(home).filter((other) => other !== name);
  if (place >= 0) lessons.splice(Math.min(place, lessons.length), 0, name);
  const moved = lessons.join() !== names(home).join();
  if (moved) act({ do: 'order', lessons }).then(() => byId(`move-${name}`)?.focus());
}

function onKey(event, home, act, name) {
  const place = names(home).indexOf(name);
  const to = { ArrowUp: place < 0 ? names(home).length : Math.max(0, place - 1), ArrowDown: place < 0 ? -1 : place + 1,
    Home: 0, End: names(home).length, Delete: -1, Backspace: -1 }[event.key];
  if (to === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  move(home, act, name, to);
}

/** The place in the order to which a point of the page belongs; -1 below the list of today. */
function placeAt(y) {
  const list = byId('todays');
  if (!list || y > list.getBoundingClientRect().bottom + 30) return -1;
  const rows = [...list.querySelectorAll('.lesson:not(.dragged)')];
  const after = rows.findIndex((row) => { const box = row.getBoundingClientRect(); return y < box.top + box.height / 2; });
  return after < 0 ? rows.length : after;
}

function show(at) {
  document.querySelectorAll('.lesson.before, .lessons.last').forEach((e) => e.classList.remove('before', 'last'));
  const place = at ? placeAt(at.y) : -1;
  const rows = [...(byId('todays')?.querySelectorAll('.lesson:not(.dragged)') ?? [])];
  if (place >= 0 && place < rows.length) rows[place].classList.add('before');
  else if (place >= 0) byId('todays').classList.add('last');
}

function take(event, home, act, name) {
  const drop = (at) => move(home, act, name, placeAt(at.y));
  drag(event, event.currentTarget.closest('.lesson'), { over: show, drop, sideways: false });
  event.preventDefault();
  event.currentTarget.focus();
}

/** The handle of a lesson's row. */
export function handle(home, row, act) {
  const today = names(home).includes(row.name);
  return el('button', {
    type: 'button', class: 'handle', id: `move-${row.name}`,
    'aria-label': today ? `Move ${row.title}: arrow keys, or Delete to leave it out today` : `Read ${row.title} today: arrow up`,
    title: 'Drag, or use the arrow keys', onpointerdown: (event) => take(event, home, act, row.name),
    onkeydown: (event) => onKey(event, home, act, row.name),
  }, '↕');
}

/** Goes back to the plan's order, if someone has changed it. */
export const planned = (home, act) => (home.course.today.own
  ? el('button', { type: 'button', class: 'quiet', id: 'planned', onclick: () => act({ do: 'order' }) }, 'Back to the plan’s order') : null);
