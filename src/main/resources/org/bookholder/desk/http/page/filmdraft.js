// The draft on the film's page: the newest one, or the beginning of one that is being made.

import { question } from './ask.js';
import { byId, put, short } from './words.js';

/** How often the page asks whether there is more of it, in milliseconds. */
const EVERY = 1500;

/** The beginning that is there so far of the draft that is being made; empty if there is none. */
let begun = '';

/** The film that is on show. */
let shown = '';

let asks = 0;

const encoded = (address) => address.split('/').map(encodeURIComponent).join('/');

/** Goes on with another file of the same film where the one before is, playing if that was, or had come to its end. */
function goOn(video, address) {
  const src = encoded(address);
  if (video.src.endsWith(src)) return;
  const { currentTime, paused, ended } = video;
  const follows = video.src.includes('/begun-');
  video.src = src;
  video.hidden = false;
  if (!follows) return;
  video.addEventListener('loadedmetadata', () => {
    video.currentTime = currentTime;
    if (!paused || ended) video.play().catch(() => {});
  }, { once: true });
}

/** Shows the draft of the board, unless the beginning of its next one is on show. */
export function showDraft(board, place) {
  const video = byId('film-video');
  const { draft } = board;
  if (shown !== place) leave(video);
  shown = place;
  if (begun) return;
  video.hidden = !draft;
  if (draft) goOn(video, draft.address);
  put('film-draft-said', !draft ? 'No draft yet. A draft has a small picture, and plays here while it is being made.'
    : draft.fresh ? `The draft, ${short(board.seconds)} long.`
      : 'This draft was made before your last change. Make a draft again: only what changed is made anew.');
}

/** Nothing goes on in the film of another place. */
function leave(video) {
  begun = '';
  video.removeAttribute('src');
  video.load();
}

/** While a draft is being made, shows as much of it as there is; a piece that plays is played to its end first. */
export function watchDraft(making, place) {
  if (!making) {
    clearInterval(asks);
    asks = 0;
    begun = '';
  } else if (!asks) {
    asks = setInterval(() => look(place), EVERY);
    byId('film-video').onended = () => begun && goOn(byId('film-video'), begun);
  }
}

async function look(place) {
  const asked = place();
  const answer = await question('film', { place: asked, do: 'beginning' });
  if (!asks || asked !== place() || asked !== shown || !answer.begun || answer.begun === begun) return;
  begun = answer.begun;
  const video = byId('film-video');
  if (video.paused || video.ended || !video.src.includes('/begun-')) goOn(video, begun);
  put('film-draft-said', 'The beginning of the new draft. More follows while it is being made.');
}
