// The rooms for long work: what each is good for, and what its form asks for.

import { choice, files, folder, line, tick, ticks } from './fields.js';
import { linesRead, when } from './words.js';

const lesson = ({ number, title, file }) => [file, `${number} · ${title}`];

/** The sessions of the course, or one that a link has named first. */
const sessions = (home) => home.shelf.sessions.map((s) => [s.folder,
  `${s.number} · ${s.lesson}, ${when(s.began)}, ${linesRead(s)}${s.pickups ? `, ${s.pickups} to pick up` : ''}`]);

const others = (home) => home.shelf.others.map(({ folder: path, name }) => [path, name]);

const none = [['', 'No session has been recorded yet']];
const session = (more) => choice('session', 'Session', (home) => {
  const all = [...sessions(home), ...(more ? others(home) : [])];
  return all.length ? all : none;
});

const ofLesson = (home, number) => home.shelf.sessions.filter((s) => s.number === number);

/** The lessons that were read in several sessions. */
const inSeveral = (home) => home.shelf.lessons.filter((l) => ofLesson(home, l.number).length > 1);

const together = (count) => (count === 2 ? 'both sessions' : `all ${count} sessions`);

const lessonOrSession = choice('session', 'Lesson or session', (home) => {
  const all = [
    ...inSeveral(home).map((l) => [l.file, `${l.number} · ${l.title}, ${together(ofLesson(home, l.number).length)} as one`]),
    ...sessions(home)];
  return all.length ? all : none;
}, { first: lastRead });

/** The lesson that was read last if it has several sessions, otherwise its session. */
function lastRead(home) {
  const newest = home.shelf.sessions[0];
  if (!newest) return null;
  const several = inSeveral(home).find((l) => l.number === newest.number);
  return several
    ? { value: several.file, why: 'Chosen because this lesson was read last, in several sessions: each line comes from the one in which it is clean.' }
    : { value: newest.folder, why: `Chosen because it is the newest: ${linesRead(newest)}, ${newest.usable} good as they are.` };
}

const KINDS = [['pickups', 'lines to pick up'], ['log', 'log of the takes'], ['captions', 'captions'], ['edl', 'cut list (EDL)'],
  ['otio', 'timeline (OpenTimelineIO)'], ['cut', 'cut as a table'], ['listen', 'the cut to listen to'], ['takes', 'sound of the takes'],
  ['sync', 'sound in step with each camera']];
const RATES = ['23.976', '24', '25', '29.97', '30', '50', '59.94', '60'];

/** Options of a hand-off, out of the way. */
const handOff = [
  ticks('parts', 'Files', KINDS, { aside: true }),
  choice('rate', 'Frames a second', () => [['', 'as the camera, or 25'], ...RATES.map((rate) => [rate, rate])], { aside: true }),
  choice('drop', 'Timecode', () => [['', 'as the camera counts'], ['yes', 'drop-frame'], ['no', 'without dropped frames']],
    { aside: true, more: 'Drop-frame is for 29.97 and 59.94 frames a second.' }),
  line('size', 'Size of the delivered picture', '1920x1080', { aside: true, more: 'It limits how far a picture is enlarged to hide a cut.' }),
  tick('misread', 'Fill a line that has no clean attempt with a misread one, instead of a gap', { aside: true }),
  folder('out', 'Where the files go', 'a folder in the session, or beside the sessions of a lesson', { aside: true }),
];

export const ROOMS = {
  handoff: {
    title: 'Hand-off',
    good: 'Writes what your editor needs: which attempt of each line to use and where it lies, captions, the lines to pick up, and sound.',
    button: 'Write the files',
    fields: [lessonOrSession, tick('replace', 'Replace files that are there already'), ...handOff],
  },
  match: {
    title: 'Match camera files',
    good: 'Finds by their sound where camera and recorder files lie in a session. Then says which file gives the picture of each take and which its sound, for hand-off and film; you may choose others.',
    button: 'Match them',
    fields: [session(), files('files', 'Camera and recorder files', 'film',
      { more: 'Where several cameras show the same moment, the one that is first here is used, unless you choose another.' })],
  },
  log: {
    title: 'Log a finished shoot',
    good: 'Follows films that were shot without Bookholder as if you were reading now. You get the lines to pick up and the hand-off.',
    button: 'Log it',
    fields: [
      choice('script', 'Lesson', (home) => (home.shelf.lessons.length ? home.shelf.lessons.map(lesson) : [['', 'Open a course first']])),
      files('files', 'Camera or recorder files, in the order in which they were filmed', 'film',
        { more: 'Where a camera split one recording into several files, they become one take.' }),
      tick('apart', 'Make each file a take of its own, even where it goes on from the one before', { aside: true }),
      tick('byNumbers', 'Join numbered files also where they don\u2019t say at what time they were recorded', { aside: true }), ...handOff],
  },
  check: {
    title: 'Check exports',
    good: 'Checks finished films before they go out: file, picture and sound against what they have to be, and the words against the script.',
    button: 'Check them',
    fields: [
      files('files', 'Exported films', 'film'),
      choice('script', 'Script', (home) => [['', 'the one with the film\u2019s name'], ...home.shelf.lessons.map(lesson)],
        { aside: true, more: 'For one film only.' }),
      tick('captions', 'Write captions, a transcript and chapters in the film\u2019s time, into a folder \u201ccaptions\u201d beside it'),
      tick('noWords', 'Leave the words unchecked', { aside: true })],
  },
  time: {
    rare: true,
    title: 'Running times',
    good: 'Says how long your lessons will run, at the target pace and at your own, and what in them is hard to say.',
    button: 'Work it out',
    fields: [choice('place', 'Of', (home) => [
      ...(home.course.folder ? [[home.course.folder, 'all lessons of this course']] : []), ...home.shelf.lessons.map(lesson)])],
  },
  pack: {
    rare: true,
    title: 'Pack a session',
    good: 'Packs a session with its sound into one file, to keep it or to open it on another machine.',
    button: 'Pack it',
    fields: [session(true), folder('out', 'Where the file goes', 'choose a folder')],
  },
  unpack: {
    rare: true,
    title: 'Unpack a session',
    good: 'Puts a packed session back among yours, and checks that nothing in it is damaged.',
    button: 'Unpack it',
    fields: [files('files', 'Packed sessions', 'packed')],
  },
  repair: {
    rare: true,
    title: 'Repair a session',
    good: 'Saves what can be read of a damaged session. The files as they were are kept beside it.',
    button: 'Repair it',
    fields: [session(true)],
  },
};
