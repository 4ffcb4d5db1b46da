// Which file gives the picture of each take and which its sound, and the choice of others.

import { question } from './ask.js';
import { byId, el, fill } from './words.js';

let session = '';
let takes = '';

/** Shows it below the form for the session that is chosen there; `home` is asked for anew when a match has ended. */
export function showSources(home) {
  const select = byId('w-session');
  const done = home.jobs.filter((job) => job.kind === 'match').map((job) => `${job.id} ${job.step}`).join();
  select.onchange = () => ask({ do: 'show' });
  if (byId('sources') && session === select.value && takes === done) return;
  takes = done;
  ask({ do: 'show' });
}

async function ask(what) {
  session = byId('w-session').value;
  if (!session) return;
  const asked = session;
  const answer = await question('match', { session: asked, ...what });
  if (byId('w-session')?.value !== asked) return;
  if (answer.trouble) {
    const wrong = byId('sources-wrong');
    if (wrong) wrong.textContent = answer.trouble;
    // What was chosen did not come about: the lists say again what holds.
    document.querySelectorAll('#sources select').forEach((each) => { each.value = each.dataset.now; });
    return;
  }
  show(answer);
}

function show({ takes: all, undo }) {
  if (!all.length) {
    byId('work-below').replaceChildren();
    return;
  }
  fill('work-below', el('section', { class: 'card', id: 'sources', 'aria-labelledby': 'h-sources' },
    el('h3', { id: 'h-sources' }, 'Picture and sound of each take'),
    el('p', { class: 'small' }, 'Film and hand-off use what is shown here. What you choose is kept with the session.'),
    el('p', { id: 'sources-wrong', class: 'wrong', role: 'alert' }),
    el('ul', { class: 'sources' }, all.length > 1 ? ofAll(all) : '', ...all.map(one)),
    undo ? el('p', { class: 'choices' }, el('button', { type: 'button', id: 'sources-undo', onclick: () => ask({ do: 'undo' }) }, `Undo: ${undo}`)) : ''));
}

/** All takes at once: what any of them can be seen or heard from. */
function ofAll(all) {
  const every = (what) => [...new Map(all.flatMap((take) => take[what]).map((choice) => [choice.value, choice])).values()];
  const same = (what) => (all.every((take) => take[what].value === all[0][what].value) ? all[0][what].value : 'mixed');
  return el('li', {}, el('h4', {}, 'All takes'),
    chooser(0, 'picture', 'Picture', every('pictures'), same('picture'), {}),
    chooser(0, 'sound', 'Sound', every('sounds'), same('sound'), {}));
}

const one = (take) => el('li', {}, el('h4', {}, `Take ${take.take}, ${take.seconds.toFixed(0)} s`),
  chooser(take.take, 'picture', 'Picture', take.pictures, take.picture.value, take.picture),
  chooser(take.take, 'sound', 'Sound', take.sounds, take.sound.value, take.sound),
  ...take.remarks.map((remark) => el('p', { class: 'small look' }, remark)));

function chooser(take, what, label, choices, now, { said = '', missed }) {
  const id = `source-${take}-${what}`;
  const select = el('select', { id, 'aria-label': `${label} of ${take ? `take ${take}` : 'all takes'}`, 'aria-describedby': `${id}-why`, 'data-now': now,
    onchange: (event) => ask({ do: 'choose', take, [what]: event.target.value }) },
  now === 'mixed' ? new Option('not the same for all', 'mixed') : '', new Option(missed ? `${missed} can\u2019t be used, so it\u2019s chosen for you` : 'chosen for you', 'auto'), ...choices.map(({ value, words }) => new Option(words, value)));
  select.value = now;
  return el('p', { class: 'source' }, el('label', { for: id, class: 'label' }, label), select, el('span', { id: `${id}-why`, class: 'small' }, said));
}
