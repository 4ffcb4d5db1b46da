// The left column (pace, sound, clocks, guidance) and the page's header.

import { now } from './daytime.js';
import { byId, clock, count, el, figure, hours, put, short } from './words.js';
import { inTake, lengthOf, lengthOfAll, model } from './model.js';
import { pacePlot } from './plot.js';

const TOLERANCE = 0.1;
const FLOOR = -60;
let warned = '';

export function showHead() {
  put('title', model.script.title);
  put('live-name', model.live ? 'Live' : 'Script');
  byId('telling').hidden = !model.live;
  document.title = `${model.script.title} · desk`;
  const { takes } = model;
  const take = takes[takes.length - 1];
  if (!take) {
    put('take', 'no take yet');
  } else if (model.live) {
    const held = model.at.count === undefined ? 'held' : model.at.count ? 'counted in' : 'waits to be counted in';
    const how = model.at.rolling ? (model.at.held ? held : 'rolling') : 'cut';
    put('take', `take ${take.take} · ${how} ${clock(lengthOf(take))}${model.at.round ? ` · ${model.at.round.said}` : ''}`);
  } else {
    put('take', `${count(takes.length, 'take')} · ${clock(lengthOfAll())}`);
  }
}

export function showPace() {
  const { pace, script, at } = model;
  put('pace', figure(pace.figure));
  put('strip-pace', `${figure(pace.figure)} words a minute`);
  const band = pace.band === 'unknown' ? '' : `, ${pace.band}`;
  put('pace-target', `words a minute, target ${script.target}${band}`);
  const take = model.takes.length;
  pacePlot(byId('pace-plot'), model.points, take, script.target, TOLERANCE);
  put('pace-more', `lesson ${figure(pace.lesson)}, pauses left out ${figure(pace.articulation)}`);
  const planned = (script.words * 60) / script.target;
  const left = at.finished ? 'read to the end' : `${short(pace.left)} left`;
  put('pace-length', `Runs to ${short(pace.projected)}, planned ${short(planned)}; ${left}`);
}

/** What is said of a level that is neither right nor wrong. */
const LEVELS = { low: ', rather low', high: ', rather loud' };

export function showSound() {
  const { sound } = model;
  const part = (db) => `${Math.max(0, Math.min(100, (100 * ((db ?? FLOOR) - FLOOR)) / -FLOOR))}%`;
  byId('level').style.width = part(sound.rms);
  byId('peak').style.left = part(sound.hold);
  byId('meter').setAttribute('aria-valuenow', Math.round(Math.max(FLOOR, sound.rms ?? FLOOR)));
  const clipped = sound.clipped ? `, ${count(sound.clipped, 'sample')} clipped` : '';
  const lost = sound.lost ? `, ${sound.lost.toFixed(1)} s lost` : '';
  put('sound', model.at.rolling || sound.room !== null
    ? `peak ${figure(sound.hold)} dB${LEVELS[sound.level] ?? ''}${sound.room === null ? '' : `, quietest second ${figure(sound.room)} dB`}${clipped}${lost}`
    : 'no take is rolling');
  put('wrong', sound.wrong ? `${sound.wrong}, since ${clock(inTake(model.takes.length, sound.since))} of the take` : '');
}

export function showTired() {
  const { tired } = model;
  put('since', hours(tired.since_break));
  const next = tired.advice.filter((a) => a.reason === 'VOICE').map(({ left }) => `rest your voice ${
    left > 0 ? `in ${left} min` : left < 0 ? `now (${-left} min overdue)` : 'now'}`)[0] ?? 'no voice rest due';
  put('clocks', `Reading ${tired.reading_since_break} min since the break; ${next}. `
    + `Today: ${hours(tired.reading)} reading, ${hours(tired.on_camera)} on camera`);
  put('fluffs', tired.fluffs === null ? 'too few words so far'
    : `${tired.fluffs} in 100 words, first 20 min ${figure(tired.fluffs_at_first, 'not known')}`);
  const warnings = tired.advice.filter((a) => a.urgency !== 'NONE');
  byId('advice').replaceChildren(...warnings.map((a) =>
    el('li', { class: a.urgency.toLowerCase() }, a.text)));
  if (!byId('cautions').childElementCount) {
    byId('cautions').append(...model.cautions.map((c) => el('li', {}, c)));
  }
  // Advice does not stand without its cautions; whoever has read them may fold them.
  const urgent = warnings.map((a) => a.reason + a.urgency).join(' ');
  if (urgent && urgent !== warned) byId('care').open = true;
  warned = urgent;
  showBreak();
}

export function showBreak() {
  const since = model.people.break_since;
  const box = byId('resting');
  box.hidden = !since;
  if (since) box.textContent = `On a break, ${clock((now() - since) / 1000)}`;
}
