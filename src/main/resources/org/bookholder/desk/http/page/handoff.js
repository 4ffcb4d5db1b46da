// The editor's files: one button writes them; the list lets you download them one by one.

import { act } from './link.js';
import { model } from './model.js';
import { byId, count, el, size } from './words.js';

const HEAD = 'What an editor needs of this session: the cut list, captions, the lines to pick up, a log of the takes, and the sound. '
  + 'A lesson that was read in several sessions is handed off as one on the program\u2019s own page, under Hand-off.';

const write = (replace) => act({ do: 'hand_off', replace });

export function openHandOff() {
  if (!model.known) return;
  byId('handoff').showModal();
  showHandOff();
}

export function showHandOff() {
  const box = byId('handoff');
  if (!box.open) return;
  const { step, folder, files, said } = model.handoff;
  const busy = step === 'WRITING';
  const rolling = model.live && model.at.rolling;
  box.replaceChildren(
    el('h2', { id: 'handoff-title' }, 'Hand-off'),
    el('p', {}, HEAD),
    el('p', { class: 'small' }, files.length ? `${count(files.length, 'file')} in ` : 'They go to ', el('code', {}, folder)),
    el('p', { class: step === 'FAILED' || step === 'IN_THE_WAY' ? 'wrong' : 'small', role: 'status' }, told(step, said, rolling)),
    el('ul', { class: 'files' }, ...files.map(file)),
    el('div', { class: 'choices' },
      el('button', { type: 'button', id: 'write', disabled: !model.acts || busy || rolling, onclick: () => write(false) }, 'Write the files'),
      step === 'IN_THE_WAY'
        ? el('button', { type: 'button', id: 'replace', disabled: !model.acts, onclick: () => write(true) }, 'Replace them') : null,
      el('form', { method: 'dialog' }, el('button', { type: 'submit', class: 'quiet' }, 'Close'))));
}

function told(step, said, rolling) {
  if (!model.acts) return 'With your code you can watch, but not change anything.';
  if (step === 'WRITING') return 'Writing. This takes a few seconds for every 15 minutes of recording.';
  if (step === 'WRITTEN') return `Written: ${said}.`;
  if (step === 'IN_THE_WAY') return 'Nothing was written, because there are files already.';
  if (step === 'FAILED') return `Not written: ${said}.`;
  return rolling ? 'A take is rolling; cut it first.' : '';
}

function file(f) {
  const name = model.acts ? el('a', { href: `handoff?name=${encodeURIComponent(f.name)}`, download: f.name }, f.name) : f.name;
  return el('li', {}, name, ' ', el('span', { class: 'small' }, size(f.bytes)));
}
