// What a room of the program's own page asks for: one question, one answer, or the reason why there is none.

import { AWAY, ask, sending } from './wire.js';

/** A recogniser may have to be loaded first. */
const PATIENCE = 60_000;

/** Asks at an address; gives the answer, or why there is none in `trouble`. */
export async function answered(path, options) {
  try {
    const answer = await ask(path, { signal: AbortSignal.timeout(PATIENCE), ...options });
    return answer.ok ? await answer.json() : { trouble: `${await answer.text()}.` };
  } catch (failure) {
    return { trouble: failure.name === 'TimeoutError' ? 'The program does not answer.' : AWAY };
  }
}

/** Rooms that belong to the course that is shown: another window may have opened another one meanwhile. */
const OF_COURSE = ['plan', 'scripts', 'lists', 'papers', 'work', 'film'];

let course = () => undefined;

/** Says how the course that the page shows is found out. */
export const askOf = (how) => { course = how; };

/** What belongs to the course that is shown names it, so that it is not done to another one. */
export const ofCourse = (what) => ({ of: course(), ...what });

/** Asks a room for something; the answer's `trouble` says why there is none. */
export const question = (room, what) => answered('ask',
  sending({ room, ...(OF_COURSE.includes(room) ? ofCourse(what) : what) }));

/** Asks about a file that was dropped on the page. */
export const dropped = (what, file) => answered(`dropped?${new URLSearchParams(what)}`, {
  method: 'POST', headers: { 'Content-Type': 'application/octet-stream' }, body: file });
