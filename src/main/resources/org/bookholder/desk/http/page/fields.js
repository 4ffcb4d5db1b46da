// The fields of a room's form. Each makes its element, fills in what can be chosen, and gives its value.

import { el } from './words.js';

/** One of several; `options` gives what can be chosen as pairs of value and text. */
export const choice = (name, label, options, more = '') => ({
  name,
  element: (id) => el('p', { class: 'work-field' }, el('label', { for: id, class: 'label' }, label), el('select', { id }),
    more ? el('span', { class: 'small' }, more) : ''),
  fill(select, home) {
    const now = options(home);
    const text = JSON.stringify(now);
    if (select.dataset.options === text) return;
    const chosen = select.value;
    select.dataset.options = text;
    select.replaceChildren(...now.map(([value, title]) => new Option(title, value)));
    if (now.some(([value]) => value === chosen)) select.value = chosen;
  },
  value: (select) => select.value,
});
