// Settings: each in plain words with its unit, its meaning and present value, saved when it is changed.

import { request } from './door.js';
import { saving } from './inputs.js';
import { byId, el } from './words.js';

const TITLES = {
  limits: ['Break reminders', 'You are reminded early, at the limit, and when you are well over it.'],
  window: ['Reading window', 'How the reading window opens. You can change all of this in the window, too: K shows its keys.'],
  pace: ['Your pace', 'For comparison: people read aloud at about 183 words a minute (Brysbaert 2019), and radio news is to be read at 160 to 180 (Rodero 2012). 100 is slow beside that.'],
  delivery: ['Finished films', 'What exported films have to be, unless a course has a profile of its own. Empty: not checked. Numbers: “1 to 2”, “at least 1” or “at most 2”; words with commas between them.'],
};

const STEPS = { kind: 'STEPS', unit: 'minutes', steps: ['Early', 'Limit', 'Well over'] };
const NUMBER = { kind: 'NUMBER' };
const CHECK = { kind: 'CHECK' };

/** How the settings are shown; others appear as they are called in their file. */
const SHOWN = {
  limits: {
    voice: { ...STEPS, label: 'Reading without a break' },
    screen: { ...STEPS, label: 'Looking at the screen without a break' },
    reading: { ...STEPS, label: 'Reading on one day', meaning: '' },
    'on-camera': { ...STEPS, label: 'On camera on one day', meaning: '' },
    break: { ...NUMBER, unit: 'minutes', label: 'Shortest rest that counts as a break', meaning: '' },
    recovery: { ...NUMBER, unit: 'minutes', label: 'Rest that starts a new day', meaning: 'After it all of these begin again.' },
  },
  window: {
    'distance-cm': { ...NUMBER, unit: 'cm', label: 'From your eyes to the screen', meaning: '' },
    'eye-line-percent': { ...NUMBER, unit: '% from the top', label: 'Height of the row that is read', meaning: 'Put it where the camera is.' },
    mirror: { ...CHECK, label: 'Mirrored', meaning: 'For a pane of glass before the camera.' },
    'upside-down': { ...CHECK, label: 'Upside down', meaning: '' },
    hide: { kind: 'SEVERAL', label: 'Leave out', meaning: 'Advice on breaks is always shown.' },
    'count-in': { ...NUMBER, unit: 'seconds', label: 'Count-in before a take', meaning: '0 for none.' },
    'type-arc-minutes': { ...NUMBER, label: 'Size of the letters as you see them', meaning: '20 is small, 32 usual, 45 large: an angle at your eye, so it looks the same at any distance.' },
    'type-pixels': { ...NUMBER, unit: 'pixels', label: 'Or a size of your own', meaning: 'Whatever the distance. Empty: by the distance.' },
    words: { ...NUMBER, unit: 'words', label: 'In a row, about', meaning: '' },
    'full-screen': { ...CHECK, label: 'Fills the screen', meaning: '' },
    monitor: { ...NUMBER, label: 'Screen', meaning: 'From 1. “Before you read” shows them as pictures.' },
  },
  pace: {
    pace: { ...NUMBER, unit: 'words a minute', label: 'Your target',
      meaning: 'Holds where neither the script nor its course sets a pace. After a lesson you are offered the pace you read at. Empty: 100 (common practice).' },
  },
  delivery: Object.fromEntries([
    ['container', 'Kind of file', '', 'mp4, mov, mkv…'], ['video', 'Picture stored as', '', 'h264 plays everywhere.'],
    ['pixels', 'Pixels stored as', '', 'yuv420p plays everywhere.'], ['scan', 'Scan', '', 'progressive: whole pictures. Or interlaced.'],
    ['height', 'Height of the picture', 'pixels', '1080 is full HD, 1920 by 1080 (ITU-R BT.709).'],
    ['shape', 'Width by height', '', '16 by 9 is 1.778.'], ['rate', 'Pictures a second', '', 'The rates of ITU-R BT.709.'],
    ['video-kbps', 'Bit rate of the picture', 'kb/s', ''], ['audio', 'Sound stored as', '', 'aac plays everywhere.'],
    ['sample-rate', 'Sampling of the sound', 'samples a second', ''], ['channels', 'Channels of sound', '', '1 is mono, 2 is stereo.'],
    ['audio-kbps', 'Bit rate of the sound', 'kb/s', ''], ['size-mb', 'Size of the file', 'MB', ''], ['minutes', 'Length', 'minutes', ''],
    ['name', 'Name of the file', '', '{lesson} stands for letters, digits, - and _; {ending} for what follows the dot.'],
    ['loudness', 'Loudness', 'LUFS', 'Around -16 for speech (common practice), measured by ITU-R BS.1770; one channel counts as heard on two.'],
    ['true-peak', 'True peak', 'dBTP', 'EBU R 128.'], ['black', 'Black inside the film', 'seconds', 'At its ends up to 2 seconds are usual.'],
    ['frozen', 'Without motion', 'seconds', 'Leave it empty if you show stills.'], ['silent', 'Silence', 'seconds', ''],
    ['blips', 'Shots of one to three frames', '', 'Left over from a cut.'], ['clipped', 'Places with clipped sound', '', 'Cut off at full scale.'],
    ['clicks', 'Clicks in the sound', '', ''], ['mismatch', 'Picture and sound differ by', 'seconds', ''],
  ].map(([name, label, unit, meaning]) => [name, { label, unit, meaning }])),
};

const named = (name) => (name.charAt(0).toUpperCase() + name.slice(1)).replaceAll('-', ' ');

/** A setting of a group as a field of a form. */
export const fieldOf = (group, id, { name, meaning, value, options }) => {
  const shown = SHOWN[group]?.[name] ?? {};
  return { label: named(name), ...shown, id, meaning: shown.meaning ?? `${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}`, value,
    options: options?.map((one) => [one, named(one)]) };
};

let shown = '';

export function showSettings(home) {
  const now = JSON.stringify([home.settings, home.day.cautions]);
  // A field that is being edited is left alone.
  if (now === shown || byId('groups').contains(document.activeElement)) return;
  shown = now;
  if (!Array.isArray(home.settings)) {
    byId('groups').replaceChildren(el('p', { class: 'wrong', role: 'alert' }, home.settings.trouble));
    return;
  }
  const open = byId('g-delivery-more')?.open ?? false;
  byId('groups').replaceChildren(...home.settings.map((group) => part(group, home)));
  byId('g-delivery-more').open = open;
}

function part(group, home) {
  const [title, about] = TITLES[group.name];
  const fields = el('div', { class: 'fields' }, ...group.fields.map((field) => line(group, field)));
  return el('section', { class: 'group', 'aria-labelledby': `g-${group.name}` },
    el('h3', { id: `g-${group.name}` }, title), el('p', { class: 'small' }, about),
    group.name === 'delivery' ? el('details', { id: 'g-delivery-more' }, el('summary', {}, 'All that is checked'), fields) : fields,
    group.name === 'limits' ? el('ul', { class: 'cautions' }, ...home.day.cautions.map((text) => el('li', {}, text))) : '',
    group.name === 'limits' ? el('details', {}, el('summary', {}, 'Where the figures come from'),
      el('ul', { class: 'cautions' }, ...home.day.sources.map((text) => el('li', {}, sourced(text))))) : '',
    el('p', { class: 'small path' }, `Kept in ${group.file}`));
}

/** A source with the names of the settings as they stand above it. */
function sourced(text) {
  const [names, ...rest] = text.split(': ');
  return `${names.split(', ').map((name) => SHOWN.limits[name]?.label ?? name).join(', ')}: ${rest.join(': ')}`;
}

function line(group, field) {
  const own = fieldOf(group.name, `s-${group.name}-${field.name}`, field);
  return saving(own, async (value) => {
    const trouble = await request({ do: 'set', group: group.name, name: field.name, value });
    if (!trouble) shown = '';
    // The program calls it as it is called in its file.
    return trouble.replaceAll(`'${field.name}'`, `\u201c${own.label}\u201d`);
  });
}
