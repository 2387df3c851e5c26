/* What a teacher chose for the pages of a handout, as its pages say in their heads; a page that is
 * served says nothing.
 */

/** @import {Handout} from "./types" */

const PLACE = "yarnsheets-handout";

/** @returns {Handout | null} */
function read() {
  const found = document.getElementById(PLACE);
  return found ? JSON.parse(found.textContent) : null;
}

export const handout = read();
