// Putting a lesson of the plan on another day: a handle on each lesson, to drag onto a day or a session with any pointer, or to press
// for a list of days.

import { drag } from './drag.js';
import { mark } from './inputs.js';
import { byId, el, said } from './words.js';

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
    onpointerdown: (event) => {
      dragged = false;
      take(event, put, () => { dragged = true; });
    },
    onclick: () => {
      if (!dragged) chooseDay(lesson, days, put);
      dragged = false;
    },
  }, '↕');
};

function take(event, put, begins) {
  let target = null;
  drag(event, event.currentTarget.closest('li'), {
    begins,
    over(at) {
      target?.classList.remove('over-day');
      target = at && document.elementFromPoint(at.x, at.y)?.closest('[data-day]');
      target?.classList.add('over-day');
    },
    drop: () => { if (target?.dataset.day) put(target.dataset.day); },
  });
}

/** The list of days, for keys and for fingers. */
export function chooseDay(lesson, days, put) {
  const to = (day) => () => { byId('ask').close(); put(day); };
  const other = el('input', { id: 'other-day', type: 'date', 'aria-describedby': 'other-day-w' });
  const wrong = el('p', { id: 'other-day-w', class: 'wrong', role: 'alert' });
  const putThere = (event) => {
    event.preventDefault();
    if (other.value) {
      to(other.value)();
      return;
    }
    wrong.textContent = other.validity.badInput ? 'This is not a day yet: give day, month and year.' : 'Give a day first.';
    mark([other], wrong.textContent);
    other.focus();
  };
  byId('ask').replaceChildren(el('h2', { id: 'ask-title' }, `When will you record ${lesson.title}?`),
    el('div', { class: 'day-list' },
      ...days.map((day) => el('button', { type: 'button', 'data-to': day, disabled: lesson.chosen && day === lesson.day, onclick: to(day) }, said(day, true))),
      lesson.chosen ? el('button', { type: 'button', 'data-to': '', onclick: to('') }, 'Let the plan choose') : ''),
    el('form', { class: 'day-other', novalidate: true, onsubmit: putThere },
      el('label', { for: 'other-day', class: 'label' }, 'Another day'), other, el('button', { type: 'submit' }, 'Put it there'), wrong),
    el('form', { method: 'dialog', class: 'choices' }, el('button', { type: 'submit' }, 'Leave it')));
  byId('ask').showModal();
}
