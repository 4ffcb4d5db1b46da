// The fields of a room's form. Each makes its element, fills in what can be chosen, and gives its value.

import { chooseFiles, chooseFolder } from './folder.js';
import { AWAY, ask } from './wire.js';
import { el } from './words.js';

const field = (id, label, more, ...children) => el('div', { class: 'work-field' }, el('label', { for: id, class: 'label' }, label), ...children,
  more ? el('p', { class: 'small' }, more) : '');

/** One of several; `options` gives what can be chosen as pairs of value and text, `first` what to begin with and why. */
export const choice = (name, label, options, { more = '', aside = false, first = null } = {}) => ({
  name,
  aside,
  element: (id) => field(id, label, more, el('select', { id }), first ? el('p', { id: `${id}-why`, class: 'small', role: 'status' }) : ''),
  fill(select, home) {
    const now = options(home);
    const text = JSON.stringify(now);
    if (select.dataset.options === text) return;
    const chosen = select.value;
    select.dataset.options = text;
    select.replaceChildren(...now.map(([value, title]) => new Option(title, value)));
    const wished = chosen ? null : first?.(home);
    if (now.some(([value]) => value === (wished?.value ?? chosen))) select.value = wished?.value ?? chosen;
    if (wished) document.getElementById(`${select.id}-why`).textContent = wished.why;
  },
  value: (select) => select.value,
});

/** On or off. */
export const tick = (name, label, { aside = false } = {}) => ({
  name,
  aside,
  element: (id) => el('p', { class: 'work-field on-off' }, el('input', { id, type: 'checkbox' }), el('label', { for: id }, label)),
  value: (input) => input.checked,
});

/** Some of several, all of them at first. */
export const ticks = (name, label, options, { aside = false } = {}) => ({
  name,
  aside,
  element: (id) => el('fieldset', { id, class: 'work-field ticks' }, el('legend', { class: 'label' }, label),
    ...options.map(([value, title]) => el('label', {}, el('input', { type: 'checkbox', value, checked: true }), ' ', title))),
  value: (set) => [...set.querySelectorAll('input:checked')].map((input) => input.value),
});

/** A line of text. */
export const line = (name, label, value, { more = '', aside = false } = {}) => ({
  name,
  aside,
  element: (id) => field(id, label, more, el('input', { id, value, autocomplete: 'off' })),
  value: (input) => input.value,
});

/** A folder of the user's; empty until one is chosen. */
export const folder = (name, label, none, { more = '', aside = false } = {}) => ({
  name,
  aside,
  element(id) {
    const shown = el('span', { class: 'path small' }, none);
    const button = el('button', { type: 'button', id, onclick: () => chooseFolder((path) => {
      button.dataset.path = path;
      shown.textContent = path;
      return true;
    }, 'Choose a folder') }, 'Choose a folder…');
    return el('div', { class: 'work-field' }, el('p', { class: 'label' }, label), el('div', { class: 'chooser' }, button, shown),
      more ? el('p', { class: 'small' }, more) : '');
  },
  value: (button) => button.dataset.path ?? '',
});

/** Files of a kind: chosen from a list, or dropped on the form. One only, if `one`. */
export const files = (name, label, kind, { more = '', one = false, aside = false } = {}) => ({
  name,
  aside,
  drops: !aside,
  element(id) {
    const list = el('ul', { id, class: 'picked' });
    const add = (path) => {
      if ([...list.children].some((row) => row.dataset.path === path)) return;
      if (one) list.replaceChildren();
      const row = el('li', { 'data-path': path }, el('span', { class: 'path' }, path), el('button', {
        type: 'button', class: 'quiet', 'aria-label': `Leave out ${path}`, onclick: () => row.remove(),
      }, '✕'));
      list.append(row);
    };
    list.add = (paths) => paths.forEach(add);
    const button = el('button', { type: 'button', id: `${id}-choose`, onclick: () => chooseFiles(kind, one, list.add) },
      one ? 'Choose a file…' : 'Choose files…');
    return el('div', { class: 'work-field' }, el('p', { class: 'label' }, label), list,
      el('div', { class: 'chooser' }, button, aside ? '' : el('span', { class: 'small' }, 'or drop them here')),
      el('p', { class: 'wrong', role: 'alert' }),
      more ? el('p', { class: 'small' }, more) : '');
  },
  value(list) {
    const paths = [...list.children].map((row) => row.dataset.path);
    return one ? paths[0] ?? '' : paths;
  },
});

/** Finds dropped files by name and size below the user's home: a browser does not tell their paths. */
export async function drop(list, dropped) {
  const trouble = list.parentElement.querySelector('.wrong');
  trouble.textContent = '';
  for (const file of dropped) {
    const query = `folder?find=${encodeURIComponent(file.name)}&size=${file.size}`;
    const answer = await ask(query).catch(() => null);
    if (answer?.ok) list.add([(await answer.json()).path]);
    else trouble.textContent = answer ? await answer.text() : AWAY;
  }
}
