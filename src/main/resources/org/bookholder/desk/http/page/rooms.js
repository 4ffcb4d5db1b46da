// The rooms for long work: what each is good for, and what its form asks for.

import { choice } from './fields.js';

const lesson = ({ number, title, file }) => [file, `${number} · ${title}`];

export const ROOMS = {
  time: {
    title: 'Running times',
    good: 'Says how long your lessons will run, at the target pace and at your own, and what in them is hard to say.',
    button: 'Work it out',
    fields: [choice('place', 'Of', (home) => [
      ...(home.course.folder ? [[home.course.folder, 'all lessons of this course']] : []), ...home.shelf.lessons.map(lesson)])],
  },
};
