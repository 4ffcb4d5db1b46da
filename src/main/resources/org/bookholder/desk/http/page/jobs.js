// What goes on in the background: each job with its bar, the time left, a stop, and what came of it.

import { byId, clock, el } from './words.js';

/** The job's element is kept while it lasts: a button that is rebuilt under the pointer would lose the click. */
const shown = new Map();

export const lasts = (job) => ['WAITING', 'RUNNING', 'STOPPING'].includes(job.step);

/** Shows all jobs in the rail; `open` shows the room of a kind of work. */
export function showJobs(home, act, open) {
  byId('background').hidden = home.jobs.length === 0;
  const list = byId('jobs');
  for (const [id, known] of shown) {
    if (!home.jobs.some((job) => job.id === id)) {
      known.element.remove();
      shown.delete(id);
    }
  }
  home.jobs.forEach((job, i) => {
    const known = shown.get(job.id);
    if (known?.step === job.step) {
      known.update(job);
    } else {
      const made = lasts(job) ? running(job, act) : over(job, act, open);
      made.element.id = `job-${job.id}`;
      shown.set(job.id, { ...made, step: job.step });
      if (known) replace(known.element, made.element);
      else list.insertBefore(made.element, list.children[i] ?? null);
    }
  });
}

/** Puts one element in another's place; the focus goes to its first button if the old one had it. */
function replace(old, made) {
  const focused = old.contains(document.activeElement);
  old.replaceWith(made);
  if (focused) made.querySelector('button, a')?.focus();
}

const name = (job) => el('p', { class: 'job-name' }, el('b', {}, job.title), ' ', el('span', { class: 'small' }, job.on));

/** A job that waits or is running, here and in its room. */
export function running(job, act) {
  const bar = el('progress', { max: '1', 'aria-label': `${job.title}: ${job.on}` });
  const told = el('p', { class: 'small', 'aria-live': 'off' });
  const stop = el('button', { type: 'button', class: 'quiet', onclick: () => act({ do: 'stop', id: job.id }) }, 'Stop');
  stop.setAttribute('aria-label', `Stop: ${job.title}, ${job.on}`);
  const update = (now) => {
    if (now.progress) bar.value = now.progress.done;
    stop.disabled = now.step === 'STOPPING';
    const text = standing(now);
    if (told.textContent !== text) told.textContent = text;
  };
  update(job);
  return { element: el('li', { class: 'job' }, name(job), bar, el('div', { class: 'job-foot' }, told, stop)), update };
}

/** How a job stands, one line. */
function standing(job) {
  if (job.step === 'STOPPING') return 'Stopping…';
  if (job.held) return job.step === 'WAITING' ? 'Begins when you have finished reading' : 'Paused while you read';
  if (job.step === 'WAITING') return 'Waiting for the work before it';
  if (!job.progress) return 'Going on';
  const { done, left, what } = job.progress;
  return [`${Math.round(done * 100)} %`, left === undefined ? '' : `about ${remaining(left)} left`,
    what && what !== job.on ? what : ''].filter(Boolean).join(' · ');
}

function remaining(seconds) {
  if (seconds < 60) return `${Math.max(1, Math.round(seconds))} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${clock(seconds).replace(/:\d\d$/, '')} h`;
}

/** What came of it, one line. */
export function outcome(job) {
  if (job.step === 'FAILED') return job.problem;
  if (job.step === 'STOPPED' && !job.result) return `Stopped; ${job.ifStopped}.`;
  return job.step === 'STOPPED' ? `Stopped. ${job.result.said}` : job.result.said;
}

function over(job, act, open) {
  const look = el('button', { type: 'button', onclick: () => open(job.kind) }, 'Look');
  look.setAttribute('aria-label', `Look: ${job.title}, ${job.on}`);
  const close = el('button', { type: 'button', class: 'quiet', onclick: () => act({ do: 'forget_job', id: job.id }) }, 'Close');
  close.setAttribute('aria-label', `Close: ${job.title}, ${job.on}`);
  return {
    element: el('li', { class: 'job' }, name(job), el('p', { class: job.step === 'FAILED' ? 'wrong' : 'small' }, outcome(job)),
      el('p', { class: 'choices' }, look, close)),
    update() {},
  };
}
