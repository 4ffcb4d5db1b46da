// The part of the address that belongs to this browser, below which alone its cookie is sent, and how an open page comes back after the
// program was started again.

import { ask, sending } from './wire.js';

const PLACE = /^\/in\/[\w-]+(?=\/)/;

/** What this page needs to come back: in memory only, so that no other program that takes the port can read it. */
let back = null;

/** Whether the address is without such a part. */
export const bare = () => !PLACE.test(location.pathname);

function kept(name, fresh) {
  try {
    const value = localStorage.getItem(name) ?? fresh;
    if (fresh !== null) localStorage.setItem(name, value);
    return value;
  } catch {
    return fresh ?? '';
  }
}

/** By what this browser is told apart from others; no secret. */
const mark = () => kept('mark', Array.from(crypto.getRandomValues(new Uint32Array(4)), (n) => n.toString(36)).join(''));

/** Gives a code; the answer has the `place` of this browser's pages, or says what the `trouble` is, and whether the code is `wrong`. */
export async function join(code) {
  const answer = await ask('join', sending({ code, mark: mark() }));
  if (!answer.ok) return { trouble: await answer.text(), wrong: answer.status === 401 };
  const { place } = await answer.json();
  try {
    localStorage.setItem('place', place);
  } catch {
    // The page is then found by its own address only.
  }
  return { place };
}

/** Goes to the same page at the place that was given; false if it is there already, or none was given. */
export function goIn(answer) {
  const place = answer?.place;
  if (!place || location.pathname.startsWith(`${place}/`)) return false;
  location.replace(place + location.pathname.replace(PLACE, '') + location.search);
  return true;
}

/** Goes to this browser's place if it has been given one earlier. */
export const find = () => goIn({ place: kept('place', null) });

/** Notes what the program says of this device. */
export function remember({ device, prover, comesBackWith }) {
  if (comesBackWith) back = { device, prover, comesBackWith };
}

/**
 * After a restart: comes in again if this is the program that has let us in. `known` says whether we were in before, `same` whether it is
 * that program; if so, it can be asked once more who we are, since another tab may have come back a moment ago. Fails if the program
 * does not answer; what is needed to come back is then kept for the next time.
 */
export async function returned() {
  if (!back) return { known: false, same: false };
  const same = await proves();
  if (same) {
    const { wrong } = await join(back.comesBackWith);
    if (wrong) back = null;
  }
  return { known: true, same };
}

/**
 * Whether whoever answers here knows our secret. The cookie is not sent with this question. Browsers compute signatures only on pages
 * that came from this machine or over TLS; elsewhere all is sent in the open anyway.
 */
async function proves() {
  if (!crypto.subtle) return true;
  const challenge = Array.from(crypto.getRandomValues(new Uint32Array(6)), (n) => n.toString(36)).join('');
  const bytes = (text) => new TextEncoder().encode(text);
  try {
    const answer = await ask(`proof?${new URLSearchParams({ challenge, device: back.device })}`, { credentials: 'omit' });
    const { proof } = await answer.json();
    const key = await crypto.subtle.importKey('raw', bytes(back.prover), { name: 'HMAC', hash: 'SHA-256' }, false, ['verify']);
    const signature = Uint8Array.from(atob(proof.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
    return await crypto.subtle.verify('HMAC', key, signature, bytes(`${challenge}.${location.host}`));
  } catch {
    return false;
  }
}
