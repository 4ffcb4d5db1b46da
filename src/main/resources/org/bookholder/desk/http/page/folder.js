// Choosing a folder: a list of the user's own folders, shown to this machine only.

import { ask } from './door.js';
import { byId, count, el } from './words.js';

let chosen = () => {};

/** Shows the list; calls back with the folder's path, and closes when that was taken. */
export function chooseFolder(then) {
  chosen = then;
  byId('folder').showModal();
  list('');
}

async function list(path) {
  const answer = await ask(`folder?path=${encodeURIComponent(path)}`).catch(() => null);
  if (!answer?.ok) {
    show(el('p', { class: 'wrong', role: 'alert' }, answer ? await answer.text() : 'The program cannot be reached.'),
      el('p', { class: 'choices' }, close()));
    return;
  }
  const folder = await answer.json();
  const scripts = folder.scripts.length;
  show(
    el('p', { class: 'small path' }, folder.path),
    el('ul', { class: 'folders' },
      folder.up && el('li', {}, el('button', { type: 'button', class: 'quiet', onclick: () => list(folder.up) }, '↑ One folder up')),
      ...folder.folders.map((inner) => el('li', {},
        el('button', { type: 'button', class: 'quiet', onclick: () => list(inner.path) }, `${inner.name}/`))),
      ...folder.scripts.map((name) => el('li', { class: 'script-name' }, name))),
    el('p', { id: 'folder-wrong', class: 'wrong', role: 'alert' }),
    el('p', { class: 'small' }, scripts ? `${count(scripts, 'lesson')} in this folder.` : 'No lesson lies in this folder: lessons are .md, .txt and .docx files.'),
    el('p', { class: 'choices' },
      el('button', { type: 'button', class: 'main', id: 'folder-open', disabled: !scripts, onclick: () => take(folder.path) },
        `Open ${folder.name}`), close()));
}

const close = () => el('button', { type: 'button', onclick: () => byId('folder').close() }, 'Close');

function show(...children) {
  byId('folder').replaceChildren(el('h2', { id: 'folder-title' }, 'Open a course\u2019s folder'), ...children);
  (byId('folder-open')?.disabled === false ? byId('folder-open') : byId('folder').querySelector('button'))?.focus();
}

async function take(path) {
  if (await chosen(path)) byId('folder').close();
  else byId('folder-wrong').textContent = byId('link').textContent;
}
