// The draft on the film's page: the newest one, or the beginning of one that is being made.

import { question } from './ask.js';
import { byId, put, short } from './words.js';

/** How often is asked whether more of it is there, in milliseconds. */
const EVERY = 1500;

let begun = '';
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

/** Shows the draft of the board. */
export function showDraft(board) {
  const video = byId('film-video');
  const { draft } = board;
  if (asks) return;
  video.hidden = !draft;
  if (draft) goOn(video, draft.address);
  put('film-draft-said', !draft ? 'No draft yet. It is made in a small picture, and plays here while it is being made.'
    : draft.fresh ? `The draft, ${short(board.seconds)} long.`
      : 'This draft was made before your last change. Make a draft again: only what changed is made anew.');
}

/** While a draft is being made, shows as much of it as there is; a piece that plays is played to its end first. */
export function watchDraft(making, place) {
  if (!making) {
    clearInterval(asks);
    asks = 0;
    begun = '';
  } else if (!asks) {
    asks = setInterval(() => look(place()), EVERY);
    byId('film-video').onended = () => begun && goOn(byId('film-video'), begun);
  }
}

async function look(place) {
  const answer = await question('film', { place, do: 'beginning' });
  if (!asks || !answer.begun || answer.begun === begun) return;
  begun = answer.begun;
  const video = byId('film-video');
  if (video.paused || video.ended || !video.src.includes('/begun-')) goOn(video, begun);
  put('film-draft-said', 'The beginning of the new draft. More follows while it is being made.');
}
