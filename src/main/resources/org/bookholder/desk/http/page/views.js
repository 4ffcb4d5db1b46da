// Rooms of the program's own page that show themselves: each with its key, its title, whether it needs the place beside
// it, and what shows it.

import { showDay } from './day.js';
import { beforeChanged, showBeforeRoom } from './before.js';
import { showNewCourse } from './newcourse.js';
import { filmChanged, showFilm } from './film.js';
import { showGate } from './gate.js';
import { showLists } from './lists.js';
import { papersChanged, showPapers } from './papers.js';
import { showPlan } from './plan.js';
import { showScripts } from './scripts.js';
import { byId, el } from './words.js';

export const OWN = {
  scripts: { key: 'S', title: 'Scripts', wide: true, show: showScripts,
    changed: (home, act, has) => { if (has('course')) showScripts(home, act); } },
  plan: { key: 'P', title: 'Plan and dates', show: showPlan,
    changed: (home, act, has) => { if (has('course')) showPlan(home); } },
  gate: { key: 'F', title: 'Finished?', show: showGate,
    changed: (home, act, has) => { if (has('course')) showGate(home, act); } },
  lists: { key: 'L', title: 'Lists', show: showLists,
    changed: (home, act, has) => { if (has('course')) showLists(home); } },
  papers: { key: 'A', title: 'Papers', show: showPapers, changed: papersChanged },
  film: { key: 'V', title: 'The film', wide: true, show: showFilm, changed: filmChanged },
  day: { key: 'Y', title: 'The day', wide: true, show: showDay,
    changed: (home, act, has) => { if (has('day', 'course')) showDay(home); } },
  'before-room': { key: 'B', title: 'Before you read', wide: true, show: showBeforeRoom, changed: beforeChanged },
  new: { key: 'N', title: 'New course', wide: true, show: showNewCourse },
};

for (const name of Object.keys(OWN)) {
  byId('today').after(el('section', { id: name, 'aria-label': OWN[name].title, hidden: true }));
}
