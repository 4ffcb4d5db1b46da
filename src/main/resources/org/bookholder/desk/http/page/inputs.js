// Fields of forms that save themselves: each with its name in plain words, its unit and what it means; what is wrong with a value stands
// beside it.

import { byId, el } from './words.js';

const NO_NUMBER = 'Give a number.';

/** What each kind shows for a value, and gives back; the first element has the field's id. */
const KINDS = {
  TEXT: ({ id, value }) => single(el('input', { id, value, autocomplete: 'off' })),
  NUMBER: ({ id, value }) => single(number(id, value)),
  DATE: ({ id, value }) => single(el('input', { id, value, type: 'date' })),
  TIME: ({ id, value }) => single(el('input', { id, value: value && value.padStart(5, '0'), type: 'time' })),
  CHECK({ id, value }) {
    const box = el('input', { id, type: 'checkbox' });
    box.checked = value === 'yes';
    return { parts: [box], read: () => (box.checked ? 'yes' : 'no') };
  },
  CHOICE({ id, value, options }) {
    const select = el('select', { id }, ...options.map(([name, text]) => new Option(text, name)));
    select.value = value;
    return single(select);
  },
  SEVERAL({ id, value, options }) {
    const chosen = value.split(',').map((one) => one.trim());
    const boxes = options.map(([name]) => {
      const box = el('input', { type: 'checkbox', value: name });
      box.checked = chosen.includes(name);
      return box;
    });
    return { parts: [el('div', { id, class: 'several', role: 'group' }, ...options.map(([, text], i) => el('label', {}, boxes[i], text)))],
      read: () => boxes.filter((box) => box.checked).map((box) => box.value).join(', ') };
  },
  /** Numbers that belong together, each with its own name. */
  STEPS({ id, value, steps }) {
    const values = value.split(',').map((one) => one.trim());
    const inputs = steps.map((_, i) => number(i ? `${id}-${i + 1}` : id, values[i] ?? ''));
    return { parts: [el('div', { class: 'steps' }, ...steps.map((name, i) => el('label', {}, name, inputs[i])))],
      read: () => inputs.map((input) => input.value).join(', '), inputs };
  },
};

const number = (id, value) => el('input', { id, value, type: 'number', step: 'any', inputmode: 'decimal', autocomplete: 'off' });
const single = (input) => ({ parts: [input], read: () => input.value, inputs: [input] });

/**
 * A field.
 *
 * @param field its id, label, unit, kind, value and meaning, and the options or steps of its kind
 * @param save saves a value; gives why that was not done, or an empty text
 */
export function saving(field, save) {
  const { id, label, unit, meaning, kind } = field;
  const { parts, read, inputs = [] } = (KINDS[kind] ?? KINDS.TEXT)(field);
  const wrong = el('p', { id: `${id}-w`, class: 'wrong', role: 'alert' });
  const control = parts[0];
  const group = kind === 'SEVERAL' || kind === 'STEPS';
  control.setAttribute('aria-describedby', `${id}-m ${id}-w`);
  if (group) {
    control.setAttribute('role', 'group');
    control.setAttribute('aria-labelledby', `${id}-l`);
  }
  const change = async () => {
    const trouble = inputs.some((input) => input.validity.badInput) ? NO_NUMBER : await save(read());
    // A form may have been drawn anew meanwhile.
    (byId(`${id}-w`) ?? wrong).textContent = trouble;
    mark((inputs.length ? inputs : [control]).map((input) => byId(input.id) ?? input), trouble);
  };
  return el('div', { class: kind === 'CHECK' ? 'field check' : 'field', onchange: change },
    el(group ? 'span' : 'label', group ? { id: `${id}-l`, class: 'field-name' } : { for: id }, label),
    el('div', { class: 'control' }, control, unit ? el('span', { class: 'unit' }, unit) : ''),
    el('span', { id: `${id}-m`, class: 'small' }, meaning), wrong);
}

/**
 * Marks fields whose value was refused, or takes the mark off. The first gets the focus back, unless somebody is busy elsewhere than
 * in the next field.
 */
export function mark(fields, trouble) {
  for (const field of fields) {
    if (trouble) field.setAttribute('aria-invalid', 'true');
    else field.removeAttribute('aria-invalid');
  }
  const now = document.activeElement;
  if (trouble && (now === document.body || now?.matches('input, select'))) fields[0].focus();
}

/** What somebody has typed into the fields of a box and that is not what they showed at first, and why it was refused, by the fields' ids. */
export function typedIn(box) {
  const typed = new Map();
  for (const input of box.querySelectorAll('input[id]')) {
    if (input.type !== 'checkbox' && input.value !== input.defaultValue) {
      typed.set(input.id, { value: input.value, refused: input.matches('[aria-invalid=true]') ? byId(`${input.id}-w`)?.textContent ?? '' : '' });
    }
  }
  return typed;
}

/** Puts it back into fields that were drawn anew and show something else; not into the one that was saved. */
export function typeAgain(typed, saved) {
  for (const [id, { value, refused }] of typed) {
    const input = byId(id);
    if (!input || id === saved) continue;
    input.value = value;
    if (refused) {
      input.setAttribute('aria-invalid', 'true');
      byId(`${id}-w`).textContent = refused;
    }
  }
}
