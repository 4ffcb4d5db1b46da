// Plan and dates: recording days clicked in a calendar, what else is written about the course, and the plan that comes of it.

import { agenda } from './agenda.js';
import { question } from './ask.js';
import { mark, saving, typeAgain, typedIn } from './inputs.js';
import { modules } from './modules.js';
import { fieldOf } from './options.js';
import { dayHandle } from './onday.js';
import { planned } from './planned.js';
import { byId, dated, el, fill, longDay, said } from './words.js';

const GROUPS = { '': 'The course', recording: 'Recording', editing: 'Editing', costs: 'Costs' };
let plan = null;
let month = '';
let shownFor = '';
let note = '';

export async function showPlan(home) {
  if (plan && shownFor === home.course.folder) return;
  shownFor = home.course.folder;
  plan = null;
  month = '';
  note = '';
  const wrong = await told({ do: 'show' });
  if (wrong && !plan) {
    byId('plan').replaceChildren(el('h2', { class: 'headline' }, 'Plan and dates'), el('p', { class: 'wrong', role: 'alert' }, home.course.trouble || wrong));
  }
}

/**
 * Asks for something and shows the plan after it, with what was typed elsewhere meanwhile; returns why that was not done.
 *
 * @param saved the id of the field whose value this is, if it is one
 */
async function told(what, saved = '') {
  const answer = await question('plan', what);
  if (answer.trouble) return answer.trouble;
  // What was said of an earlier change would stand beside the button that takes back another one.
  if (what.do !== 'show') note = '';
  plan = answer;
  month ||= (plan.days.find((day) => day >= plan.today) ?? plan.today).slice(0, 7);
  show(saved);
  return '';
}

function show(saved = '') {
  const typed = typedIn(byId('plan'));
  const opened = [...byId('plan').querySelectorAll('details[open]')].map(({ id }) => id);
  const groups = Object.entries(GROUPS).map(([name, title]) => [title,
    plan.fields.filter(({ path }) => (path.includes('/') ? path.split('/')[0] : '') === name)]);
  fill('plan',
    el('h2', { class: 'headline' }, 'Plan and dates'),
    plan.plan ? agenda(plan.plan.today) : plan.unreadable && el('p', { class: 'wrong', role: 'alert' }, plan.unreadable),
    plan.plan?.moved.length ? sentences('since-shown', 'What moved since the plan was last shown', plan.plan.moved) : '',
    el('p', { class: 'good' }, 'Click the days on which you can record. The lessons that are left are fitted into them.'),
    calendar(),
    moved(),
    plan.changes?.length ? sentences('plan-changes', 'What moved', plan.changes) : '',
    ownHours(),
    ...(plan.plan ? planned(plan.plan, handle) : []),
    calendarFile(),
    modules(plan, told),
    ...groups.map(([title, fields]) => el('section', { class: 'group' }, el('h3', {}, title), el('div', { class: 'fields' }, ...fields.map(line)),
      title === GROUPS[''] ? profile() : '')),
    kinds());
  opened.filter(Boolean).forEach((id) => { if (byId(id)) byId(id).open = true; });
  typeAgain(typed, saved);
}

/** The handle of a lesson in a session, to put it on another day; a lesson that is done in parts stays where the plan has it. */
function handle({ day }, { lesson, chosen, what }) {
  const known = plan.lessons[lesson - 1];
  if (!known) return '';
  const days = plan.days.filter((date) => date >= plan.today);
  return dayHandle({ ...known, what, day, chosen }, days, (to) => putOn(known, to));
}

async function putOn({ script, title }, day) {
  const trouble = await told({ do: 'put', script, day });
  note = trouble || (day ? `${title} is to be recorded on ${said(day, true)}.` : `The plan chooses a day for ${title}.`);
  show();
  byId(`day-of-${script}`)?.focus();
}

async function undo() {
  note = await told({ do: 'undo' }) || 'Taken back.';
  show();
}

/** What was moved last, and how to take the last change back. */
const moved = () => el('p', { id: 'moved', class: 'moved', role: 'status' }, note,
  plan.undo ? el('button', { type: 'button', id: 'plan-undo', onclick: undo }, `Take back: ${undoable(plan.undo)}`) : '');

/** What became of lessons: a first sentence with its list, and one about the last day. */
const sentences = (id, label, texts) => el('ul', { id, class: 'plan-changes', 'aria-label': label }, ...texts.map((text) => el('li', {}, dated(text))));

const titled = (script) => plan.lessons.find((lesson) => lesson.script === script)?.title ?? script;

/** What the last change was, as the button says it that takes it back. */
const CHANGES = {
  put: ({ script, day }) => (day ? `${titled(script)} on ${said(day)}` : `${titled(script)} on a day that the plan chooses`),
  day: ({ day, on }) => (on ? `${said(day)} as a recording day` : `${said(day)} as a day off`),
  hours: ({ day }) => `the hours of ${said(day)}`,
  kind: ({ script }) => `how much there is to edit in ${titled(script)}`,
  module_add: ({ title }) => `the module ${title}`,
  module_name: ({ title }) => `the name ${title}`,
  module_remove: () => 'the removal of a module',
  module_move: ({ script }) => `where ${titled(script)} stands`,
  set: ({ path }) => `\u201c${plan.fields.find((field) => field.path === path)?.label ?? path}\u201d`,
  profile: () => 'the delivery profile',
};
const undoable = (change) => CHANGES[change.do]?.(change) ?? 'the last change';

/** A file with the sessions for a calendar program. */
function calendarFile() {
  if (!plan.plan?.sessions.some(({ day }) => day)) return '';
  const write = async () => {
    const trouble = await told({ do: 'calendar' });
    byId('calendar-said').textContent = trouble
      || 'recording-days.ics lies in the course’s folder. Open it with your calendar program. After a change of the plan, write and open it again: the sessions move.';
  };
  return el('p', { class: 'choices' }, el('button', { type: 'button', id: 'calendar-file', onclick: write }, 'Write these sessions for your calendar program'),
    el('span', { id: 'calendar-said', class: 'small', role: 'status' }));
}

/** The hours of single days that are still to come. */
function ownHours() {
  const days = plan.hours.filter(({ day: date }) => date >= plan.today);
  if (!days.length) return '';
  return el('details', { class: 'group', id: 'own-hours' }, el('summary', {}, 'Hours of single days'),
    el('p', { class: 'small' }, 'Where they differ from the usual ones below. Empty: as usual.'),
    el('ul', { class: 'own-hours' }, ...days.map(({ day: date, from, hours }) => {
      const save = () => told({ do: 'hours', day: date, from: byId(`from-${date}`).value, hours: byId(`hours-${date}`).value });
      const change = async ({ target }) => {
        const trouble = await save();
        byId(`hours-${date}-w`).textContent = trouble;
        mark([byId(target.id)], trouble);
      };
      return el('li', { onchange: change }, el('span', { class: 'name' }, said(date, true)),
        el('label', {}, 'from ', el('input', { id: `from-${date}`, type: 'time', value: from && from.padStart(5, '0') })),
        el('label', {}, 'for ', el('input', { id: `hours-${date}`, type: 'number', step: 'any', min: '0.5', max: '24', value: hours }), ' hours'),
        el('p', { id: `hours-${date}-w`, class: 'wrong', role: 'alert' }));
    })));
}

/** How much there is to edit in each lesson. */
function kinds() {
  const options = plan.kinds.map(({ kind, words }) => [kind, words]);
  return el('details', { class: 'group', id: 'kinds' }, el('summary', {}, 'How much there is to edit in each lesson'),
    el('div', { class: 'fields' }, ...plan.lessons.filter(({ kind }) => kind).map(({ script, title, kind }, i) => saving({
      id: `kind-${i + 1}`, label: title, kind: 'CHOICE', value: kind, options, meaning: script,
    }, (value) => told({ do: 'kind', script, kind: value })))));
}

/** What exported films of this course have to be. */
function profile() {
  if (plan.profileTrouble) return el('p', { class: 'wrong', role: 'alert' }, plan.profileTrouble);
  if (!plan.profile) {
    return el('p', { class: 'choices' }, el('button', { type: 'button', id: 'make-profile', onclick: async () => {
      byId('plan-wrong').textContent = await told({ do: 'profile' });
    } }, 'Make a delivery profile for this course'));
  }
  return el('details', { id: 'course-profile' }, el('summary', {}, 'What exported films of this course have to be'),
    el('div', { class: 'fields' }, ...plan.profile.map((field) => {
      const id = `d-${field.name}`;
      return saving(fieldOf('delivery', id, field), (value) => told({ do: 'profile_set', name: field.name, value }, id));
    })));
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
  const name = longDay(new Date(`${date}T12:00`));
  return el('button', {
    type: 'button', id: `day-${date}`, 'data-day': date >= plan.today && date, 'aria-pressed': String(on), 'aria-label': name, class: date === plan.today ? 'today' : '',
    onclick: async () => { byId('plan-wrong').textContent = await told({ do: 'day', day: date, on: !on }); },
  }, String(Number(date.slice(8))));
}

function line({ path, label, unit, kind, meaning, value, options }) {
  const id = `p-${path.replace(/\W/g, '-')}`;
  return saving({ id, label, unit, kind, meaning, options, value: value || options[0]?.[0] || '' }, (text) => told({ do: 'set', path, value: text }, id));
}
