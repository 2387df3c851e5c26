/* The tables of a sheet that are to be read, and printed on paper by themselves. */

import { make, makePart, setText } from "./dom.js";

/**
 * @import {Column, ListingDescription} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

const DIGITS = 4;

/**
 * Make the tables; each is there while it has rows.
 *
 * @param {Numbers} numbers
 */
export function makeListings(numbers) {
  const el = make("div", "ys-listings");
  const listings = numbers.description.listings.map((listing) => makeListing(numbers, listing));
  el.append(...listings.map((listing) => listing.el));
  return {
    /** Nothing, where a sheet has no tables. */
    el: listings.length ? el : null,
    update: () => listings.forEach((listing) => listing.update()),
  };
}

/**
 * @param {Numbers} numbers
 * @param {ListingDescription} listing
 */
function makeListing(numbers, { table, title, columns }) {
  const el = makePart("section", "ys-listing");
  el.classList.toggle(
    "ys-to-write",
    columns.some(({ dimension }) => dimension === "blank"),
  );
  el.tabIndex = 0; // it can be wider than a phone, and scrolls
  const heading = make("caption");
  const drawn = make("table");
  const head = make("thead");
  let body = make("tbody");
  drawn.append(heading, head, body);
  el.append(drawn);

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
    },
  };
}

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
  if (dimension === "blank") return "";
  if (dimension === "template") return numbers.fill(String(value));
  const { program, shown } = numbers;
  const number = /** @type {number} */ (value);
  const inUnit = unit
    ? program.to_shown(number, dimension, unit, shown)
    : numbers.toShown(dimension, number);
  return program.show(inUnit, DIGITS);
}
