// Modules of a course: made, named and taken away again, and the lessons moved between them and put in order.

import { mark } from './inputs.js';
import { byId, el } from './words.js';

/**
 * The section of the plan's page.
 *
 * @param plan its lessons and modules
 * @param told asks for a change; gives why that was not done, or an empty text
 */
export function modules(plan, told) {
  const groups = [{ number: 0, title: '' }, ...plan.modules];
  return el('details', { class: 'group', id: 'modules' }, el('summary', {}, 'Modules and the order of lessons'),
    el('p', { class: 'small' }, plan.modules.length ? 'The course goes through its modules from top to bottom.'
      : 'A long course is easier to follow in modules. All lessons stand in one list so far.'),
    ...groups.map((module) => group(module, plan, groups, told)),
    el('form', { class: 'choices', novalidate: true, onsubmit: (event) => add(event, told) },
      el('label', { for: 'new-module', class: 'label' }, 'A new module'),
      el('input', { id: 'new-module', autocomplete: 'off', 'aria-describedby': 'new-module-w' }),
      el('button', { type: 'submit', id: 'add-module' }, 'Add it'),
      el('p', { id: 'new-module-w', class: 'wrong', role: 'alert' })));
}

async function add(event, told) {
  event.preventDefault();
  const field = byId('new-module');
  const title = field.value;
  field.value = '';
  const trouble = await told({ do: 'module_add', title });
  if (trouble) byId('new-module').value = title;
  byId('new-module-w').textContent = trouble;
  mark([byId('new-module')], trouble);
}

function group(module, plan, groups, told) {
  const lessons = plan.lessons.filter((lesson) => lesson.module === module.number);
  if (!module.number && !lessons.length) return '';
  return el('fieldset', { class: 'module' },
    el('legend', {}, module.number ? `Module ${module.number}` : (plan.modules.length ? 'In no module' : 'Lessons')),
    module.number ? name(module, told) : '',
    lessons.length ? el('ol', { class: 'module-lessons' }, ...lessons.map((lesson, i) => row(lesson, i, lessons.length, groups, told)))
      : el('p', { class: 'small' }, 'No lessons yet. ', el('button', { type: 'button', class: 'quiet', id: `no-module-${module.number}`,
        onclick: () => told({ do: 'module_remove', module: module.number }) }, 'Take this module away')));
}

function name({ number, title }, told) {
  const id = `module-${number}`;
  const change = async () => {
    const trouble = await told({ do: 'module_name', module: number, title: byId(id).value }, id);
    byId(`${id}-w`).textContent = trouble;
    mark([byId(id)], trouble);
  };
  return el('p', { class: 'module-name', onchange: change }, el('label', { for: id, class: 'label' }, 'Title'),
    el('input', { id, value: title, autocomplete: 'off', 'aria-describedby': `${id}-w` }),
    el('span', { id: `${id}-w`, class: 'wrong', role: 'alert' }));
}

/** A lesson with its module, and keys to move it up and down in it. */
function row(lesson, i, all, groups, told) {
  const { script, title, module } = lesson;
  const move = async (to, place, focus) => {
    const trouble = await told({ do: 'module_move', script, module: to, place });
    if (trouble) select.value = module;
    wrong.textContent = trouble;
    byId(`${focus}-${script}`)?.focus();
  };
  const wrong = el('span', { id: `move-${script}-w`, class: 'wrong', role: 'alert' });
  const select = el('select', { id: `module-of-${script}`, 'aria-label': `Module of ${title}`,
    onchange: ({ target }) => move(Number(target.value), 9999, 'module-of') },
  ...groups.map((one) => new Option(one.number ? `${one.number} · ${one.title}` : 'in no module', one.number)));
  select.value = module;
  const step = (by, sign, word) => el('button', { type: 'button', class: 'quiet', id: `${word}-${script}`, 'aria-label': `Move ${title} ${word}`,
    disabled: i + by < 0 || i + by >= all, onclick: () => move(module, i + by, word) }, sign);
  return el('li', {}, el('span', { class: 'name' }, title), groups.length > 1 ? select : '',
    el('span', { class: 'steps-of' }, step(-1, '↑', 'up'), step(1, '↓', 'down')), wrong);
}
