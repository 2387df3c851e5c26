/* The address of a page, which holds the numbers of its first sheet. */

/** @import {Address} from "./types" */

let isTaken = false;

/**
 * Take the page's address; none for a second sheet, and none for a page inside another one, whose
 * address no reader sees.
 *
 * @returns {Address | null}
 */
export function pageAddress() {
  if (isTaken || window.top !== window) return null;
  isTaken = true;
  /** @param {string} link */
  const of = (link) => `${location.href.split("#")[0]}#${link}`;
  return {
    of,
    read: () => location.hash.slice(1),
    write: (link) => history.replaceState(history.state, "", of(link)),
    onChange: (listen) => addEventListener("hashchange", () => listen(location.hash.slice(1))),
    hasNeighbours: location.pathname.endsWith(".ipynb"),
  };
}
