// Before you read: which microphone, whether room and voice sound well, and where and how the reading window opens.

import { question } from './ask.js';
import { request } from './door.js';
import { drawPicture } from './picture.js';
import { showSound } from './sound.js';
import { byId, count, el, fill } from './words.js';

/** The program closes the microphones when no page has asked for this long and a little more. */
const LISTEN = 3000;

/** What the bars show, in dB below full scale. */
const QUIETEST = -60;

const ROOM = 'before-room';
let home = null;
let timer = 0;
let rows = '';

export async function showBeforeRoom(now) {
  home = now;
  if (!byId('choose-microphone')) {
    byId(ROOM).replaceChildren(...parts());
    ask('displays');
  }
  listen();
  clearInterval(timer);
  timer = setInterval(listen, LISTEN);
  beforeChanged(now, null, () => true);
}

/** Shows what has changed. */
export function beforeChanged(now, act, has) {
  home = now;
  if (!byId('choose-microphone')) return;
  if (has('before', 'levels')) showMicrophones();
  if (has('sound')) showSound(byId('sound-check'), home.sound, { begin: () => ask('check'), stop: () => ask('stop') });
  if (has('displays', 'settings')) showWindow();
}

const ask = (what) => question('before', { do: what });

/** Microphones are open only while somebody looks at this room. */
function listen() {
  if (byId(ROOM).hidden) {
    clearInterval(timer);
  } else if (!document.hidden) {
    ask('listen');
  }
}

const parts = () => [
  el('h2', { class: 'headline' }, 'Before you read'),
  el('section', { 'aria-labelledby': 'h-mic', class: 'group' },
    el('h3', { id: 'h-mic' }, 'Microphone'),
    el('p', { class: 'small' }, 'Speak as you will read, and choose the one that moves most. It is kept for this machine.'),
    el('fieldset', { id: 'choose-microphone', class: 'microphones' }, el('legend', { class: 'hidden-text' }, 'Microphone')),
    el('p', { id: 'mic-note', class: 'wrong', role: 'alert' })),
  el('section', { 'aria-labelledby': 'h-sound', class: 'group' },
    el('h3', { id: 'h-sound' }, 'Sound check'),
    el('div', { id: 'sound-check' })),
  el('section', { 'aria-labelledby': 'h-window', class: 'group' },
    el('h3', { id: 'h-window' }, 'Reading window'),
    el('div', { class: 'window-room' },
      el('div', {}, el('fieldset', { id: 'monitors', class: 'monitors' }, el('legend', { class: 'hidden-text' }, 'Where it opens')),
        el('div', { id: 'window-fields', class: 'window-fields' })),
      el('figure', { class: 'window-picture' }, el('div', { id: 'window-picture' }), el('figcaption', { id: 'window-note', class: 'small' })))),
];

const level = (peak) => Math.max(0, Math.min(1, (peak - QUIETEST) / -QUIETEST));

function showMicrophones() {
  const { microphones, microphone, trouble } = home.before;
  const now = JSON.stringify([microphones, microphone]);
  if (now !== rows) {
    rows = now;
    const names = [...new Set([...microphones, ...(microphone ? [microphone] : [])])];
    fill('choose-microphone', byId('choose-microphone').firstElementChild,
      choice('', 'System default', 'mic-own'), ...names.map((name, i) => choice(name, name, `mic-${i}`)));
  }
  byId('mic-note').textContent = trouble;
  for (const bar of byId('choose-microphone').querySelectorAll('.level')) {
    const heard = home.levels.find(({ name }) => name === bar.dataset.name);
    bar.style.width = `${100 * level(heard?.peak ?? QUIETEST)}%`;
    const row = bar.closest('label');
    row.classList.toggle('broken', Boolean(heard?.trouble));
    row.querySelector('.heard').textContent = told(heard);
  }
}

function told(heard) {
  if (!heard) return '';
  if (heard.trouble) return heard.trouble;
  if (heard.loud) return 'too loud';
  return heard.peak > -50 ? 'heard' : 'quiet';
}

function choice(value, title, id) {
  const radio = el('input', { type: 'radio', name: 'mic', id, value, onchange: () =>
    set('home', 'microphone', value, byId('mic-note')) });
  radio.checked = value === home.before.microphone;
  return el('label', { class: 'mic' }, radio, el('span', { class: 'mic-name' }, title),
    value ? el('span', { class: 'meter', 'aria-hidden': 'true' }, levelBar(value)) : '',
    value ? el('span', { class: 'heard small' }) : '');
}

const levelBar = (name) => el('span', { class: 'level', 'data-name': name });

async function set(group, name, value, wrong) {
  const trouble = await request({ do: 'set', group, name, value: String(value) });
  wrong.textContent = trouble;
  return !trouble;
}

const setting = (name) => home.settings.find?.((group) => group.name === 'window')?.fields.find((field) => field.name === name)?.value;

const SLIDERS = [
  ['distance-cm', 'From your eyes to the screen', 50, 500, 5, (v) => `${v} cm`],
  ['type-arc-minutes', 'Size of the letters', 20, 60, 1, (v) => (v < 26 ? 'small' : v < 38 ? 'usual' : 'large')],
  ['words', 'Words in a row', 3, 12, 1, (v) => `about ${v}`],
  ['eye-line-percent', 'The row being read', 10, 60, 1, (v) => `${v} % from the top`],
];
const SWITCHES = [['full-screen', 'Fill the whole screen'], ['mirror', 'Mirrored, for glass'], ['upside-down', 'Upside down']];

function showWindow() {
  const { all, trouble } = home.displays;
  const focused = document.activeElement?.id;
  byId('monitors').replaceChildren(byId('monitors').firstElementChild, ...(all.length ? desktop(all)
    : [el('p', { class: 'small' }, trouble ? `No screen is known: ${trouble}.` : 'Looking for screens…')]));
  if (!byId('w-words')) {
    byId('window-fields').replaceChildren(...SWITCHES.map(toggle), ...SLIDERS.map(slider),
      el('p', { id: 'window-wrong', class: 'wrong', role: 'alert' }),
      el('p', { class: 'choices' }, el('button', { type: 'button', id: 'look-screens', onclick: () => ask('displays') }, 'Look for screens again')));
  }
  for (const [name, , , , , say] of SLIDERS) {
    const field = byId(`w-${name}`);
    if (field !== document.activeElement) field.value = setting(name);
    byId(`w-${name}-value`).textContent = say(Math.round(field.value));
  }
  for (const [name] of SWITCHES) byId(`w-${name}`).checked = setting(name) === 'yes';
  if (focused) byId(focused)?.focus();
  draw();
}

/** The screens as they stand beside each other on the desktop. */
function desktop(all) {
  const left = Math.min(...all.map(({ x }) => x));
  const top = Math.min(...all.map(({ y }) => y));
  const width = Math.max(...all.map(({ x, width: w }) => x + w)) - left;
  const height = Math.max(...all.map(({ y, height: h }) => y + h)) - top;
  const chosen = Math.min(Number(setting('monitor') ?? 1), all.length);
  const place = el('div', { class: 'desktop' }, ...all.map((screen) => {
    const radio = el('input', { type: 'radio', name: 'monitor', id: `monitor-${screen.number}`, class: 'hidden-text',
      onchange: () => change('monitor', screen.number) });
    radio.checked = screen.number === chosen;
    const label = el('label', { class: 'screen', for: `monitor-${screen.number}` }, radio,
      el('span', { class: 'screen-number' }, String(screen.number)),
      el('span', { class: 'small' }, screen.name, el('br'), `${screen.width} × ${screen.height}`));
    label.style.left = `${100 * (screen.x - left) / width}%`;
    label.style.top = `${100 * (screen.y - top) / height}%`;
    label.style.width = `${100 * screen.width / width}%`;
    label.style.height = `${100 * screen.height / height}%`;
    return label;
  }));
  place.style.aspectRatio = `${width} / ${height}`;
  return [el('p', { class: 'small' }, `${count(all.length, 'screen')}: choose where it opens.`), place];
}

async function change(name, value) {
  await set('window', name, value, byId('window-wrong'));
  draw();
}

function toggle([name, title]) {
  const box = el('input', { type: 'checkbox', id: `w-${name}`, onchange: () => change(name, box.checked ? 'yes' : 'no') });
  return el('label', { class: 'switch', for: `w-${name}` }, box, ` ${title}`);
}

function slider([name, title, least, most, step, say]) {
  const field = el('input', { type: 'range', id: `w-${name}`, min: least, max: most, step,
    oninput: () => { byId(`w-${name}-value`).textContent = say(Number(field.value)); }, onchange: () => change(name, field.value) });
  return el('div', { class: 'slider' }, el('label', { for: `w-${name}` }, title), field, el('output', { id: `w-${name}-value`, class: 'small' }));
}

async function draw() {
  const picture = await question('before', { do: 'picture' });
  if (picture.trouble) {
    byId('window-note').textContent = picture.trouble;
    return;
  }
  drawPicture(byId('window-picture'), picture);
  byId('window-note').textContent = `Capitals ${picture.capital} mm high${picture.sizeKnown ? '' : ', if the screen measures 24 inches: it does not tell its size'}.`;
}
