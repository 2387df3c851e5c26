/* Keep a handout in the browser, where it came over a network, and say so. */

import { make } from "./dom.js";

/** @import {Handout} from "./types" */

/** @param {Handout} handout */
export async function stay({ version, all }) {
  if (!location.protocol.startsWith("http")) return;
  try {
    const { scope } = await navigator.serviceWorker.register(`offline-${version}.js`);
    await navigator.serviceWorker.ready;
    const kept = await caches.open(`yarnsheets ${scope} ${version}`);
    await kept.add(location.href.replace(/[?#].*/, "")); // it came before the worker was there
  } catch {
    return; // a page inside another, or a browser that keeps nothing
  }
  const words = all
    ? "All pages of this handout are kept in your browser. They open again without a network."
    : "This page is kept in your browser. It opens again without a network.";
  const note = make("p", "", words);
  note.setAttribute("role", "status");
  document.querySelector("footer")?.append(note);
}
