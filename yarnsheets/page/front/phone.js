/* A learner's page in a class: sends her cut, and again for as long as there is no network. */

import { keep, kept } from "./kept.js";

const AGAIN_MS = 3000;

const form = /** @type {HTMLFormElement} */ (document.getElementById("cut"));
const said = /** @type {HTMLElement} */ (document.getElementById("said"));
const address = form.dataset["cuts"] ?? "";
const WAITING = `yarnsheets-waiting ${address}`; // cuts on their way, kept if the phone falls asleep

/** @type {{cuts: Record<string, string>[]}} */
const waiting = { cuts: [], ...kept(WAITING) };
let isSending = false;

/** A name for a cut that no other has: sent twice, it counts once. */
function ownName() {
  const parts = crypto.getRandomValues(new Uint32Array(4));
  return [...parts].map((part) => part.toString(36)).join("");
}

/** @param {string} name */
const field = (name) => /** @type {HTMLInputElement} */ (form.elements.namedItem(name));

/** @param {Record<string, string>} wrong what is wrong with each field */
function showWrong(wrong) {
  for (const name of ["balance", "cut"]) {
    const place = document.getElementById(`${field(name).id}-wrong`);
    field(name).setAttribute("aria-invalid", String(name in wrong));
    if (!place) continue;
    place.textContent = wrong[name] ?? "";
    place.hidden = !(name in wrong);
  }
  const [first] = Object.keys(wrong);
  if (first) field(first).focus();
}

/** Send what waits, the first first. */
async function send() {
  const [cut] = waiting.cuts;
  if (!cut || isSending) return;
  isSending = true;
  let again = 0;
  try {
    const answer = await fetch(address, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(cut),
    });
    again = take(await answer.json());
  } catch {
    said.textContent =
      "There is no connection. Your cut is kept here, and sent as soon as there is one.";
    again = AGAIN_MS;
  }
  isSending = false;
  setTimeout(send, again);
}

/**
 * Take the server's answer; give how long to wait for the next cut.
 *
 * @param {{said?: string, wrong?: Record<string, string>, later?: string}} answer
 */
function take({ said: words, wrong, later }) {
  if (later) {
    said.textContent = later;
    return AGAIN_MS;
  }
  const cut = waiting.cuts.shift();
  keep(WAITING, waiting);
  said.textContent = words ?? "";
  showWrong(wrong ?? {});
  // what was refused stands in its box, to be put right
  if (wrong && cut && !field("cut").value) field("cut").value = cut["cut"] ?? "";
  return 0;
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const typed = /** @type {Record<string, string>} */ (Object.fromEntries(new FormData(form)));
  const missing = ["balance", "cut"].filter((name) => !typed[name]?.trim());
  if (missing.length) {
    showWrong(Object.fromEntries(missing.map((name) => [name, "Type a number here."])));
    return;
  }
  showWrong({});
  waiting.cuts.push({ id: ownName(), ...typed });
  keep(WAITING, waiting);
  field("cut").value = "";
  said.textContent = "On its way…";
  send();
});
addEventListener("online", send);
send();
