// What is printed from home's pages: the sheet of the page that is shown, instead of the page.

import { byId } from './words.js';

/** Puts a sheet of the program's own making behind the page, for print; an empty one lets the page itself be printed. */
export function paper(markup) {
  byId('sheet').innerHTML = markup;
  document.body.classList.toggle('has-sheet', markup !== '');
}
