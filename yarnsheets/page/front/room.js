/* The projector's page in a class: cuts come by themselves, and the sheet takes them. */

import { make } from "./dom.js";

/** @import {Choice, Room, Values} from "./types" */

/** @returns {Room | null} */
function read() {
  const found = document.getElementById("yarnsheets-room");
  return found ? JSON.parse(found.textContent) : null;
}

const room = read();

/**
 * Let a sheet have the cuts of the class as they come; nothing where there is no class.
 *
 * @param {(values: Values, choice: Partial<Choice>) => void} listen
 */
export function listenToClass(listen) {
  if (!room) return;
  listen({ cuts: [] }, {}); // not the example
  // it connects again by itself when the network was away
  new EventSource(room.cuts).addEventListener("message", ({ data }) => {
    const { cuts, arrived } = JSON.parse(data);
    listen({ cuts }, {});
    document.getElementById("arrived")?.replaceChildren(...arrived.map(makeRow));
  });
}

/** @param {{number: number, said: string, name: string}} cut */
function makeRow({ number, said, name }) {
  const row = make("li", "", name ? `${said}, ${name}` : said);
  row.value = number;
  if (room?.isTeacher) {
    const out = make("button", "ys-button", "Leave out");
    out.type = "button";
    out.setAttribute("aria-label", `Leave out cut ${number}`);
    out.addEventListener("click", () => ask({ do: "leave out", number }));
    row.append(" ", out);
  }
  return row;
}

/** @param {object} what the teacher wants */
function ask(what) {
  if (!room) return;
  fetch(room.cuts, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(what),
  });
}
