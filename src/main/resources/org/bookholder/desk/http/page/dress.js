// Dark or light: follows the device's setting until someone switches it.

import { put } from './words.js';

const wanted = matchMedia('(prefers-color-scheme: dark)');

function theme() {
  return localStorage.getItem('theme') ?? (wanted.matches ? 'dark' : 'light');
}

export function dress() {
  document.documentElement.dataset.theme = theme();
  put('theme', theme() === 'dark' ? 'Light' : 'Dark');
}

export function turn() {
  localStorage.setItem('theme', theme() === 'dark' ? 'light' : 'dark');
  dress();
}

wanted.addEventListener('change', dress);
