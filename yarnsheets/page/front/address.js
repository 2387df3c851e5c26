/* The address of a page, which holds the numbers of its first sheet. */

import { drawCode } from "./code.js";
import { isFramed } from "./frame.js";
import { handout } from "./handout.js";

/** @import {Address} from "./types" */

let isTaken = false;

/**
 * Take the page's address; none for a second sheet, and none for a page that has no address.
 *
 * @returns {Address | null}
 */
export function pageAddress() {
  if (isTaken || location.protocol === "about:") return null;
  isTaken = true;
  /** @param {string} link */
  const of = (link) => `${location.href.replace(/[?#].*/, "")}#${link}`;
  return {
    of,
    read: () => location.hash.slice(1) || (handout?.start ?? ""),
    write(link) {
      // no reader sees the address of a page inside another
      if (!isFramed) history.replaceState(history.state, "", of(link));
    },
    onChange: (listen) => addEventListener("hashchange", () => listen(location.hash.slice(1))),
    neighbour,
    code: neighbourCode,
  };
}

/** @param {string} worksheet */
function neighbour(worksheet) {
  if (isFramed) return; // it would open inside the frame
  if (handout) return handout.worksheets.includes(worksheet) ? `${worksheet}.html` : undefined;
  return location.pathname.endsWith(".ipynb") ? `${worksheet}.ipynb` : undefined;
}

/**
 * A code that opens another worksheet; none for a page that no phone can reach.
 *
 * @param {string} worksheet
 * @param {string} link
 */
function neighbourCode(worksheet, link) {
  const page = neighbour(worksheet);
  const isHere = ["localhost", "127.0.0.1", "[::1]"].includes(location.hostname);
  if (!page || isHere || !location.protocol.startsWith("http")) return undefined;
  return drawCode(`${new URL(page, location.href).href}#${link}`);
}
