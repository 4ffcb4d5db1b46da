// The plan that comes of the recording days: sessions part by part, weeks of editing, costs, and where the figures come from.

import { count, dated, el, said } from './words.js';

const NARROW = '(max-width: 720px)';

/** Which sessions a person has opened or closed, by their day or place. */
const opened = new Map();

const USES = { SET_UP: 'Set up', BREAK: 'Break, away from the screen' };

/** The plan, as sections. */
export const planned = (plan, handle) => [
  el('section', { class: 'group' }, el('h3', {}, 'Sessions'), ...sessions(plan, handle)),
  el('section', { class: 'group' }, el('h3', {}, 'Weeks of editing'), ...editing(plan)),
  ...(plan.costs ? [el('section', { class: 'group' }, el('h3', {}, 'What it costs'), ...costs(plan.costs))] : []),
  el('details', { class: 'group sources' }, el('summary', {}, 'Where the figures come from'),
    el('p', { class: 'small' }, plan.limits, ' You set your own under Settings.'), el('p', { class: 'small' }, plan.sources),
    el('p', { class: 'small' }, plan.paces)),
];

/** The two ways to get it edited, and how many sales pay for each. */
function costs({ currency, equipment, hours, hour, own, ownSales, quote, hired, hiredSales, price, kept }) {
  const money = (amount) => `${amount.toFixed(2)} ${currency}`.trim();
  const way = (who, sum, sales, parts) => [
    el('p', {}, `If ${who}: ${money(sum)}, covered by ${count(sales, 'sale')}.`), el('p', { class: 'small' }, parts)];
  return [
    ...way('you edit it yourself', own, ownSales, `Equipment ${money(equipment)}, and ${hours.toFixed(1)} hours at ${money(hour)}.`),
    ...(quote ? way('others edit it', hired, hiredSales, `Equipment ${money(equipment)}, and the quote ${money(quote)}.`)
      : [el('p', {}, 'If others edit it: no quote yet; give one below.')]),
    el('p', {}, `One sale brings ${money(price * kept)}: ${Math.round(kept * 100)} % of ${money(price)}.`)];
}

function sessions({ toRecord, over, sessions: all, free, left, why }, handle) {
  return [el('p', {}, toRecord),
    over ? el('p', { class: 'small' }, `${count(over, 'recording day')} ${over === 1 ? 'is' : 'are'} over.`) : '',
    all.length ? el('p', { class: 'small' }, 'Drag a lesson by its handle onto another day, or press the handle.') : '',
    ...all.map((one, i) => session(one, i, handle)),
    all.some(({ day }) => !day) ? el('p', {}, 'You have not chosen a recording day yet. Click one in the calendar above.') : '',
    free.length ? el('p', { class: 'small' }, `Not needed: ${free.map((date) => said(date, true)).join('; ')}.`) : '',
    ...(left.length ? [el('h4', { class: 'list-title' }, 'No place was found for'),
      el('ul', {}, ...left.map((text) => el('li', {}, text))), ...why.map((text) => el('p', { class: 'wrong' }, `Why: ${dated(text)}.`))] : [])];
}

/** A session; on a narrow screen only the next one is open, until a person opens or closes others. */
const session = ({ day, length, reading, slots, kinds }, i, handle) => el('details', { class: 'session-day', 'data-day': day,
  open: opened.get(day || i) ?? (i === 0 || !matchMedia(NARROW).matches) },
  el('summary', { class: 'list-title', onclick: ({ currentTarget }) => opened.set(day || i, !currentTarget.parentElement.open) }, el('h4', {}, day ? said(day, true) : `Session ${i + 1}`, ` · ${length}, of it ${reading} before the camera`)),
  el('ol', { class: 'slots' }, ...slots.flatMap((slot, at) => [kinds > 1 && newKind(slots, at) ? el('li', { class: 'kind' }, `With ${slot.kind}`) : '', el('li', { class: slot.use.toLowerCase() },
    el('span', { class: 'at' }, slot.at),
    el('span', { class: 'name' }, slot.what || USES[slot.use], slot.chosen ? el('span', { class: 'small' }, ' · your choice') : ''),
    el('span', { class: 'at' }, slot.length), slot.lesson ? handle({ day }, slot) : '')])));

/** Whether another kind of lesson begins with a part of a session, so that something has to be set up. */
const newKind = (slots, at) => slots[at].kind && slots.slice(0, at).findLast(({ kind }) => kind)?.kind !== slots[at].kind;

function editing({ toEdit, weeks, usual, forecast, caution, modules, waiting }) {
  return [el('p', {}, toEdit),
    el('ol', { class: 'slots weeks' }, ...together(weeks).map(({ begins, idle, finished, rest, begun, hours, lasts }) => el('li', { class: idle ? 'break' : '' },
      el('span', { class: 'at' }, said(begins)),
      el('span', { class: 'name' }, idle ? `waits for the recording${lasts > 1 ? `, ${lasts} weeks` : ''}`
        : [...finished.map((name, i) => (rest && !i ? `rest of ${name}` : name)), begun && `part of ${begun}`].filter(Boolean).join(', ')),
      el('span', { class: 'at' }, idle ? '' : `${hours.toFixed(1)} h`)))),
    modules.length ? el('ul', { class: 'modules-when' }, ...modules.map((text) => el('li', {}, `${dated(text)}.`))) : '',
    ...[waiting, usual, ends(forecast)].filter(Boolean).map((text) => el('p', { class: 'small' }, text)),
    caution ? el('p', {}, caution) : ''];
}

/** When the edit will be done, by the plan and by the speed so far. */
function ends({ planned: until, done, day, speed, from }) {
  if (done) return `The edit is done; it was planned until ${said(until)}.`;
  if (!day) return `Planned until ${said(until)}. No forecast: ${from}.`;
  return `Planned until ${said(until)}; forecast ${said(day)}, ${speed === 1 ? from : `at ${Math.round(speed * 100)} % of the planned speed, ${from}`}.`;
}

/** Weeks in which nothing can be edited yet are one row. */
const together = (weeks) => weeks.reduce((rows, week) => {
  const last = rows.at(-1);
  if (week.idle && last?.idle) last.lasts += 1;
  else rows.push({ ...week, lasts: 1 });
  return rows;
}, []);
