// The list of pages at the left, the same on all of them.

import { ROOMS } from './rooms.js';
import { byId, el } from './words.js';

/** Title and view of the pages of a course, of the program's other pages, and of those for long work. */
const COURSE = [['Scripts', 'scripts'], ['Plan and dates', 'plan'], ['Lists', 'lists'], ['Finished?', 'gate'], ['Papers', 'papers']];
const DESK = [['Board', 'board'], ['Pickups', 'pickups'], ['Sessions', 'sessions']];
const PROGRAM = [['The day', 'day'], ['Before you read', 'before-room'], ['Settings', 'settings']];
const WORK = [['The film', 'film'], ...Object.entries(ROOMS).filter(([, { rare }]) => !rare).map(([view, { title }]) => [title, view]), ['More tools', 'tools']];

/** Here the list is shown only when it is asked for; home.css has the same width. */
const NARROW = matchMedia('(max-width: 720px)');

const at = (root, view) => `${root}?view=${view}`;

/**
 * The pages of a course and of the program, each with its address.
 *
 * @param name the course's name in addresses; empty if none is open
 * @param root the way to the program's own page
 */
export const rooms = (name, root = '') => [
  ['Today', root || './', 'today'],
  ...(name ? [...COURSE.map(([title, view]) => [title, at(root, view), view]),
    ...DESK.map(([title, view]) => [title, at(root ? '' : `course/${name}/`, view), view])] : []),
  ...PROGRAM.map(([title, view]) => [title, at(root, view), view]),
];

export const works = (root = '') => WORK.map(([title, view]) => [title, at(root, view), view]);

/** The views that are pages of the desk, not of home itself. */
export const ofDesk = (view) => DESK.some(([, own]) => own === view);

/**
 * Links to pages.
 *
 * @param current the view that is shown
 * @param go shows another view without leaving the page; undefined for one that has to be loaded
 */
export const links = (kind, list, current, go) => list.map(([title, href, view], i) => {
  const here = go(view);
  return el('li', {}, el('a', {
    id: `${kind}-${i}`, href, 'aria-current': view === current && 'page',
    onclick: here && ((event) => { event.preventDefault(); here(); foldRail(); }),
  }, title));
});

/** Closes the list on a narrow screen, and leaves the focus on what opens it. */
export function foldRail() {
  const rail = byId('rail');
  if (NARROW.matches && rail.contains(document.activeElement)) rail.querySelector('summary').focus();
  rail.open = !NARROW.matches;
}

NARROW.addEventListener('change', foldRail);
