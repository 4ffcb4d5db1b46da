// Putting a lesson of the plan on another day: a handle on each lesson, to drag onto a day or a session with any pointer, or to press
// for a list of days.

import { byId, el, said } from './words.js';

/** A handle must be dragged this far, in pixels, before anything moves: a click is no drag. */
const FAR = 6;

/** So near an edge of the window, in pixels, the page scrolls while something is dragged, and so fast. */
const EDGE = 70;
const SPEED = 9;

/**
 * The handle of a lesson.
 *
 * @param lesson its script, its title and its day, if it has one
 * @param days the recording days that are still to come
 * @param put puts it on a day, or where the plan has it if the day is empty
 */
export const dayHandle = (lesson, days, put) => {
  let dragged = false;
  return el('button', {
    type: 'button', class: 'handle', id: `day-of-${lesson.script}`, title: 'Drag onto a day, or press for a list of days',
    'aria-label': `Put ${lesson.title} on another day`,
    onpointerdown: (event) => drag(event, put, () => { dragged = true; }),
    onclick: () => {
      if (!dragged) choose(lesson, days, put);
      dragged = false;
    },
  }, '⠿');
};

const targetAt = (x, y) => document.elementFromPoint(x, y)?.closest('[data-day]') ?? null;

function drag(event, put, going) {
  if (event.button !== 0) return;
  const handle = event.currentTarget;
  const row = handle.closest('li');
  const from = { x: event.clientX, y: event.clientY + scrollY };
  let last = null;
  let target = null;
  let moves = false;
  let frame = 0;
  handle.setPointerCapture(event.pointerId);
  const mark = (next) => {
    target?.classList.remove('over-day');
    target = next;
    target?.classList.add('over-day');
  };
  const follow = () => {
    row.style.translate = `${last.x - from.x}px ${last.y + scrollY - from.y}px`;
    mark(targetAt(last.x, last.y));
  };
  const scroll = () => {
    const by = last.y < EDGE ? -SPEED : last.y > innerHeight - EDGE ? SPEED : 0;
    if (by) {
      scrollBy(0, by);
      follow();
    }
    frame = requestAnimationFrame(scroll);
  };
  const moved = (e) => {
    last = { x: e.clientX, y: e.clientY };
    if (!moves && Math.hypot(last.x - from.x, last.y + scrollY - from.y) > FAR) {
      moves = true;
      going();
      row.classList.add('dragged');
      frame = requestAnimationFrame(scroll);
    }
    if (moves) follow();
  };
  const end = (e) => {
    handle.removeEventListener('pointermove', moved);
    cancelAnimationFrame(frame);
    row.classList.remove('dragged');
    row.style.translate = '';
    const day = target?.dataset.day;
    mark(null);
    if (moves && day && e.type === 'pointerup') put(day);
  };
  handle.addEventListener('pointermove', moved);
  handle.addEventListener('pointerup', end, { once: true });
  handle.addEventListener('pointercancel', end, { once: true });
}

/** The list of days, for keys and for fingers. */
function choose(lesson, days, put) {
  const to = (day) => () => { byId('ask').close(); put(day); };
  const other = el('input', { id: 'other-day', type: 'date' });
  byId('ask').replaceChildren(el('h2', { id: 'ask-title' }, `When will you record ${lesson.title}?`),
    el('div', { class: 'day-list' },
      ...days.map((day) => el('button', { type: 'button', 'data-to': day, disabled: lesson.chosen && day === lesson.day, onclick: to(day) }, said(day, true))),
      lesson.chosen ? el('button', { type: 'button', 'data-to': '', onclick: to('') }, 'Let the plan choose') : ''),
    el('form', { class: 'day-other', onsubmit: (event) => { event.preventDefault(); if (other.value) to(other.value)(); } },
      el('label', { for: 'other-day', class: 'label' }, 'Another day'), other, el('button', { type: 'submit' }, 'Put it there')),
    el('form', { method: 'dialog', class: 'choices' }, el('button', { type: 'submit' }, 'Leave it')));
  byId('ask').showModal();
}
