/* The ways on to other worksheets: links that carry what those ask and this one knows. */

import { make, makeList, makePart } from "./dom.js";
import { writeLink } from "./link.js";

/**
 * @import {Host, Value, Values, Way} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

const TITLE = "Go on with these numbers";

/**
 * Make the ways on.
 *
 * @param {Numbers} numbers
 * @param {Host} host
 */
export function makeOnward(numbers, { address }) {
  const el = makePart("nav", "ys-onward");
  const ways = numbers.description.onward.flatMap((way) => {
    const page = address?.neighbour(way.worksheet);
    return page ? [{ ...way, page, link: make("a", "", way.question) }] : [];
  });

  /* Not at every move of a slider: when the numbers rest, and when a link is about to be used. */
  function point() {
    for (const { link, page, carries } of ways)
      link.href = `${page}#${writeLink(carried(numbers, carries), numbers.choice)}`;
  }

  if (ways.length) {
    el.setAttribute("aria-label", TITLE);
    el.append(
      make("h2", "", TITLE),
      makeList(
        "ul",
        ways.map(({ link }) => link),
      ),
    );
    for (const near of ["pointerover", "focusin"]) el.addEventListener(near, point);
  }
  return { el, point };
}

/**
 * What another worksheet is given: a list that is to stay empty, and each number there is that is
 * not hidden here.
 *
 * @param {Numbers} numbers
 * @param {Way["carries"]} carries
 * @returns {Values}
 */
function carried(numbers, carries) {
  const unused = numbers.program.unused(numbers.values);
  const given = Object.entries(carries)
    .filter(([, name]) => !unused.includes(name))
    .map(([asked, name]) => [asked, /** @type {Value} */ (name ? numbers.known[name] : [])]);
  return Object.fromEntries(given.filter(([, value]) => !Number.isNaN(value)));
}
