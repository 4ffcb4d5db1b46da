// Choosing a folder or files: in the system's own dialog where there is one, else in a list of the user's folders.

import { question } from './ask.js';
import { AWAY, ask } from './wire.js';
import { byId, count, el } from './words.js';

/** What is being chosen: a course's folder, any folder, or files of a kind. */
let wish = {};
let last = '';

/** How often it is asked whether somebody has chosen in the system's dialog, in milliseconds. */
const PERIOD = 300;

/** Lets somebody choose a folder, with lessons unless there is a title; calls back with its path, and ends when that was taken. */
export function chooseFolder(then, title = '') {
  wish = { then, title: title || 'Open a course\u2019s folder', course: !title };
  choose('');
}

/** Lets somebody choose files of a kind; calls back with the paths of those that were chosen. */
export function chooseFiles(kind, one, then) {
  wish = { then, kind, one, title: one ? 'Choose a file' : 'Choose files' };
  choose(last);
}

async function choose(from) {
  const { id } = await question('files', { do: 'begin', kind: wish.kind ?? '', one: Boolean(wish.one), from });
  if (!id) {
    begin(from);
    return;
  }
  show(el('p', {}, 'Choose in the window that your system has opened.'),
    el('p', { class: 'choices' }, el('button', { type: 'button', id: 'folder-list', onclick: () => list(from) }, 'Choose from a list here'), close()));
  byId('folder').showModal();
  const waits = byId('folder-list');
  const wanted = wish;
  while (waits.isConnected && byId('folder').open && wish === wanted) {
    const answer = await question('files', { do: 'result', id });
    if (!answer.open) {
      if (waits.isConnected && wish === wanted) await taken(answer);
      return;
    }
    await new Promise((done) => { setTimeout(done, PERIOD); });
  }
}

/** What was chosen in the system's dialog; nothing if that was closed. */
async function taken({ paths = [], trouble }) {
  if (trouble || !paths.length) byId('folder').close();
  else if (wish.kind) {
    last = paths[0].replace(/[/\\][^/\\]*$/, '');
    wish.then(paths);
    byId('folder').close();
  } else {
    show(el('p', { class: 'small path' }, paths[0]), el('p', { id: 'folder-wrong', class: 'wrong', role: 'alert' }),
      el('p', { class: 'choices' }, el('button', { type: 'button', onclick: () => choose('') }, 'Choose another one…'), close()));
    await chosen(paths[0]);
  }
}

function begin(path) {
  byId('folder').showModal();
  list(path);
}

async function list(path) {
  let answer = await ask(`folder?path=${encodeURIComponent(path)}`).catch(() => null);
  if (path && path === last && !answer?.ok) answer = await ask('folder?path=').catch(() => null);
  if (!answer?.ok) {
    show(el('p', { class: 'wrong', role: 'alert' }, answer ? await answer.text() : AWAY),
      el('p', { class: 'choices' }, close()));
    return;
  }
  const folder = await answer.json();
  if (wish.kind) last = folder.path;
  show(
    el('p', { class: 'small path' }, folder.path),
    el('ul', { class: 'folders' },
      folder.up && el('li', {}, el('button', { type: 'button', class: 'quiet', onclick: () => list(folder.up) }, '↑ One folder up')),
      ...folder.folders.map((inner) => el('li', {},
        el('button', { type: 'button', class: 'quiet', onclick: () => list(inner.path) }, `${inner.name}/`))),
      ...(wish.kind ? folder.files.filter((file) => file.kind === wish.kind).map(pickable)
        : folder.scripts.map((name) => el('li', { class: 'script-name' }, name)))),
    el('p', { id: 'folder-wrong', class: 'wrong', role: 'alert' }),
    el('p', { class: 'small' }, told(folder)),
    el('p', { class: 'choices' }, ...(wish.kind ? [pick()] : [take(folder)]), close()));
}

const KINDS = { film: 'film or sound file', packed: 'packed session', script: 'script' };

function told(folder) {
  if (wish.kind) return `${count(folder.files.filter((file) => file.kind === wish.kind).length, KINDS[wish.kind])} in this folder.`;
  if (!wish.course) return '';
  return folder.scripts.length ? `${count(folder.scripts.length, 'lesson')} in this folder.`
    : 'No lesson lies in this folder: lessons are .md, .txt and .docx files. New course (N) turns .odt, .rtf, .html and .pdf files into lessons.';
}

const pickable = (file) => el('li', {}, el('label', { class: 'pickable' },
  el('input', { type: wish.one ? 'radio' : 'checkbox', name: 'picked', value: file.path }), ' ', file.name));

const pick = () => el('button', { type: 'button', class: 'main', id: 'folder-open', onclick: () => {
  wish.then([...byId('folder').querySelectorAll('input:checked')].map((input) => input.value));
  byId('folder').close();
} }, wish.one ? 'Take it' : 'Take them');

const take = (folder) => el('button', {
  type: 'button', class: 'main', id: 'folder-open', disabled: Boolean(wish.course) && !folder.scripts.length,
  onclick: () => chosen(folder.path),
}, wish.course ? `Open ${folder.name}` : `Take ${folder.name}`);

const close = () => el('button', { type: 'button', onclick: () => byId('folder').close() }, 'Close');

function show(...children) {
  byId('folder').replaceChildren(el('h2', { id: 'folder-title' }, wish.title), ...children);
  (!wish.kind && byId('folder-open')?.disabled === false ? byId('folder-open') : byId('folder').querySelector('button, input'))?.focus();
}

async function chosen(path) {
  if (await wish.then(path)) byId('folder').close();
  else byId('folder-wrong').textContent = byId('link').textContent;
}
