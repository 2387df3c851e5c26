/* The tables of a sheet that are to be read, and printed on paper by themselves. */

import { make, makePart, setText } from "./dom.js";
import { today } from "./keep.js";

/**
 * @import {Column, Host, ListingDescription} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

const DIGITS = 4;

/**
 * Make the tables; each is there while it has rows.
 *
 * @param {Numbers} numbers
 * @param {Host} host
 */
export function makeListings(numbers, host) {
  const el = make("div", "ys-listings");
  const listings = numbers.description.listings.map((listing) =>
    makeListing(numbers, host, listing),
  );
  el.append(...listings.map((listing) => listing.el));
  return {
    /** Nothing, where a sheet has no tables. */
    el: listings.length ? el : null,
    update: () => listings.forEach((listing) => listing.update()),
    /** Draw the codes, when the numbers rest: each takes some milliseconds. */
    drawCodes: () => listings.forEach((listing) => listing.drawCodes()),
  };
}

/**
 * @param {Numbers} numbers
 * @param {Host} host
 * @param {ListingDescription} listing
 */
function makeListing(numbers, host, { table, title, columns, tags }) {
  const el = makePart("section", "ys-listing");
  el.classList.toggle(
    "ys-to-write",
    columns.some(({ dimension }) => dimension === "blank"),
  );
  const linkPlace = columns.findIndex(({ dimension }) => dimension === "link");
  el.classList.toggle("ys-tags", tags);
  el.tabIndex = 0; // it can be wider than a phone, and scrolls
  const heading = make("caption");
  const drawn = make("table");
  const head = make("thead");
  let body = make("tbody");
  drawn.append(heading, head, body);
  el.append(drawn);
  let codes = /** @type {Map<string, Element | undefined>} */ (new Map()); // by their link

  function placeCodes() {
    for (const cell of linked())
      cell.replaceChildren(codes.get(linkOf(cell))?.cloneNode(true) ?? "");
  }
  const linked = () => [...body.querySelectorAll("td")].filter((cell) => linkOf(cell));

  return {
    el,
    update() {
      const rows = /** @type {Record<string, unknown>[]} */ (numbers.found[table]);
      el.hidden = rows.length === 0;
      if (el.hidden) return;
      setText(heading, numbers.fill(title));
      el.setAttribute("aria-label", heading.textContent ?? "");
      head.replaceChildren(
        makeRow(
          "th",
          columns.map((column) => titled(numbers, column)),
        ),
      );
      const now = make("tbody");
      now.append(
        ...rows.map((row) =>
          makeRow(
            "td",
            columns.map((column) => written(numbers, column, row[column.field])),
          ),
        ),
      );
      body.replaceWith(now);
      body = now;
      rows.forEach((row, at) => {
        const cell = body.rows[at]?.cells[linkPlace];
        if (cell) cell.dataset["link"] = String(row[columns[linkPlace]?.field ?? ""]);
      });
      placeCodes();
    },
    drawCodes() {
      if (el.hidden) return;
      const links = linked().map(linkOf);
      const worksheet = columns[linkPlace]?.unit ?? "";
      codes = new Map(
        links.map((link) => [link, codes.get(link) ?? host.address?.code(worksheet, link)]),
      );
      placeCodes();
    },
  };
}

/** @param {HTMLElement} cell */
const linkOf = (cell) => cell.dataset["link"] ?? "";

/**
 * @param {"th" | "td"} tag
 * @param {string[]} texts
 */
function makeRow(tag, texts) {
  const row = make("tr");
  row.append(...texts.map((text) => make(tag, "", text)));
  return row;
}

/**
 * @param {Numbers} numbers
 * @param {Column} column
 */
function titled(numbers, { title, dimension, unit }) {
  const label = unit ? numbers.shown.labels[unit] : numbers.label(dimension);
  return label ? `${title} (${label})` : title;
}

/**
 * @param {Numbers} numbers
 * @param {Column} column
 * @param {unknown} value
 */
function written(numbers, { dimension, unit }, value) {
  if (dimension === "blank" || dimension === "link") return "";
  if (dimension === "day") return today();
  if (dimension === "word") return String(value);
  if (dimension === "template") return numbers.fill(String(value));
  const { program, shown } = numbers;
  const number = /** @type {number} */ (value);
  const inUnit = unit
    ? program.to_shown(number, dimension, unit, shown)
    : numbers.toShown(dimension, number);
  return program.show(inUnit, DIGITS);
}
