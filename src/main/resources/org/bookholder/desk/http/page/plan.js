// Plan and dates: recording days clicked in a calendar, what else is written about the course, and the plan that comes of it.

import { question } from './ask.js';
import { planned } from './planned.js';
import { byId, el, fill } from './words.js';

const GROUPS = { '': 'The course', recording: 'Recording', editing: 'Editing', costs: 'Costs' };
let plan = null;
let month = '';
let shownFor = '';

export async function showPlan(home) {
  if (plan && shownFor === home.course.folder) return;
  shownFor = home.course.folder;
  plan = null;
  month = '';
  const wrong = await told({ do: 'show' });
  if (wrong && !plan) {
    byId('plan').replaceChildren(el('h2', { class: 'headline' }, 'Plan and dates'), el('p', { class: 'wrong', role: 'alert' }, home.course.trouble || wrong));
  }
}

/** Asks for something and shows the plan after it; returns why that was not done. */
async function told(what) {
  const answer = await question('plan', what);
  if (answer.trouble) return answer.trouble;
  plan = answer;
  month ||= (plan.days.find((day) => day >= plan.today) ?? plan.today).slice(0, 7);
  show();
  return '';
}

function show() {
  const groups = Object.entries(GROUPS).map(([name, title]) => [title,
    plan.fields.filter(({ path }) => (path.includes('/') ? path.split('/')[0] : '') === name)]);
  fill('plan',
    el('h2', { class: 'headline' }, 'Plan and dates'),
    el('p', { class: 'good' }, 'Click the days on which you can record. The lessons that are left are fitted into them.'),
    calendar(),
    ...(plan.plan ? planned(plan.plan) : []),
    ...groups.map(([title, fields]) => el('section', { class: 'group' }, el('h3', {}, title), el('div', { class: 'fields' }, ...fields.map(line)))));
}

const pad = (n) => String(n).padStart(2, '0');

function calendar() {
  const [year, number] = month.split('-').map(Number);
  const move = (by) => () => {
    const there = new Date(year, number - 1 + by, 15);
    month = `${there.getFullYear()}-${pad(there.getMonth() + 1)}`;
    show();
  };
  const first = (new Date(year, number - 1, 1).getDay() + 6) % 7;
  const length = new Date(year, number, 0).getDate();
  const cells = [...Array.from({ length: first }, () => el('span')), ...Array.from({ length }, (_, i) => day(`${month}-${pad(i + 1)}`))];
  const title = new Date(year, number - 1, 15).toLocaleDateString('en-GB', { month: 'long', year: 'numeric' });
  return el('div', { class: 'card calendar', role: 'group', 'aria-label': 'Recording days' },
    el('div', { class: 'calendar-head' }, el('button', { type: 'button', id: 'month-before', 'aria-label': 'The month before', onclick: move(-1) }, '←'),
      el('h3', { 'aria-live': 'polite' }, title), el('button', { type: 'button', id: 'month-after', 'aria-label': 'The month after', onclick: move(1) }, '→')),
    el('div', { class: 'month' }, ...['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'].map((name) => el('span', { class: 'small', 'aria-hidden': 'true' }, name)), ...cells),
    el('p', { id: 'plan-wrong', class: 'wrong', role: 'alert' }));
}

function day(date) {
  const on = plan.days.includes(date);
  const name = new Date(`${date}T12:00`).toLocaleDateString('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });
  return el('button', {
    type: 'button', id: `day-${date}`, 'aria-pressed': String(on), 'aria-label': name, class: date === plan.today ? 'today' : '',
    onclick: async () => { byId('plan-wrong').textContent = await told({ do: 'day', day: date, on: !on }); },
  }, String(Number(date.slice(8))));
}

const DATES = ['launch', 'editing/from'];

function line({ path, meaning, value }) {
  const id = `p-${path.replace(/\W/g, '-')}`;
  const input = el('input', { id, value, type: DATES.includes(path) ? 'date' : path === 'recording/from' ? 'time' : 'text',
    autocomplete: 'off', 'aria-describedby': `${id}-m ${id}-w` });
  if (path === 'recording/from' && value) input.value = value.padStart(5, '0');
  input.addEventListener('change', async () => {
    const trouble = await told({ do: 'set', path, value: input.value });
    input.setAttribute('aria-invalid', String(Boolean(trouble)));
    byId(`${id}-w`).textContent = trouble;
  });
  return el('div', { class: 'field' }, el('label', { for: id }, path.split('/').slice(path.includes('/') ? 1 : 0).join(': ')), input,
    el('span', { id: `${id}-m`, class: 'small' }, meaning), el('p', { id: `${id}-w`, class: 'wrong', role: 'alert' }));
}
