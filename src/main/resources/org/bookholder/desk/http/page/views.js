// Rooms of the program's own page that show themselves: each with its title, where it is listed, whether it needs the place beside
// it, and what shows it.

import { showScripts } from './scripts.js';
import { byId, el } from './words.js';

export const OWN = {
  scripts: { title: 'Scripts', part: 'course', wide: true, show: showScripts,
    changed: (home, act, has) => { if (has('course')) showScripts(home, act); } },
};

for (const name of Object.keys(OWN)) {
  byId('today').after(el('section', { id: name, 'aria-label': OWN[name].title, hidden: true }));
}
