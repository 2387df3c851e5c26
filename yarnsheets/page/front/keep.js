/* What a reader takes along: a file of the numbers, a link that holds them, a print. */

import { make, makeButton, makePart } from "./dom.js";
import { writeLink } from "./link.js";

/**
 * @import {Host, Row} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

/** @typedef {string | number} Cell */

/**
 * Make the buttons.
 *
 * @param {Numbers} numbers
 * @param {Host} host
 */
export function makeKeep(numbers, { address }) {
  const el = makePart("section", "ys-keep");
  /**
   * @param {string} text
   * @param {() => void} act
   */
  const add = (text, act) => el.append(makeButton(text, act));
  const copied = make("div", "ys-copied");
  copied.setAttribute("role", "status");

  add("Save the numbers (CSV)", () =>
    saveFile(`${numbers.description.name}.csv`, writeRows(rowsOf(numbers)), "text/csv"),
  );
  if (address)
    add("Copy a link to these numbers", () =>
      copyLink(copied, address.of(writeLink(numbers.values, numbers.choice))),
    );
  add("Print", () => window.print());
  const printed = make("p", "ys-printed"); // on paper only
  el.append(copied, printed);

  return {
    el,

    /** Write the day, and where the page is found again. */
    date() {
      const link = address?.of(writeLink(numbers.values, numbers.choice)) ?? "";
      printed.textContent = `${today()} ${link}`;
    },
  };
}

/** Write the day of today. */
export function today() {
  return new Date().toLocaleDateString("en-GB", { dateStyle: "long" });
}

/**
 * Copy a link, and show it too: a page that is not from this machine may not copy by itself.
 *
 * @param {Element} place
 * @param {string} link
 */
async function copyLink(place, link) {
  const box = make("input");
  box.readOnly = true;
  box.value = link;
  box.setAttribute("aria-label", "Link to these numbers");
  const note = make("span", "", "Copy this link: it opens wherever this page does.");
  place.replaceChildren(note, box);
  box.select();
  try {
    await navigator.clipboard.writeText(link);
    note.textContent = "The link is copied. It opens wherever this page does.";
  } catch {
    // it stands there, selected
  }
}

/**
 * Every number asked and found, in the units shown.
 *
 * @param {Numbers} numbers
 * @returns {Cell[][]}
 */
export function rowsOf(numbers) {
  const { inputs, found } = numbers.description;
  const { program, known, dimensions, shown } = numbers;
  /** @param {number} value */
  const exact = (value) => Number(value.toPrecision(12));

  const asked = Object.entries(inputs).flatMap(([name, each]) => {
    const { title, dimension, options, parts, columns } = each;
    const value = numbers.value(name);
    if (typeof value === "string") return [["asked", title, options?.[value] ?? value, ""]];
    if (value === null) return [];
    if (columns)
      return /** @type {Row[]} */ (value).flatMap((row, at) =>
        columns.map((column, which) => [
          "asked",
          `${column.title}, ${at + 1}`,
          program.write_cell(column, row[which] ?? null, shown),
          numbers.label(column.dimension),
        ]),
      );
    const unit = numbers.label(dimension);
    if (parts)
      return /** @type {number[][]} */ (value).flatMap((pair, at) =>
        parts.map((part, which) => [
          "asked",
          `${part.title}, ${at + 1}`,
          exact(numbers.toShown(part.dimension, pair[which] ?? NaN)),
          numbers.label(part.dimension),
        ]),
      );
    if (!Array.isArray(value))
      return [["asked", title, exact(numbers.toShown(dimension, value)), unit]];
    return /** @type {number[]} */ (value).map((one, at) => [
      "asked",
      `${title}, ${at + 1}`,
      exact(numbers.toShown(dimension, one)),
      unit,
    ]);
  });

  const worked = Object.entries(found).flatMap(([name, { dimension, what }]) => {
    const value = known[name];
    if (typeof value === "string") {
      const text = dimension === "template" ? numbers.fill(value) : value;
      return text ? [["found", what, text, ""]] : [];
    }
    if (typeof value !== "number" || Number.isNaN(value)) return [];
    if (!numbers.hasUnit(dimension)) return [["found", what, exact(value), ""]];
    const inUnit = program.in_unit(name, numbers.unit(dimension), known, dimensions, shown);
    return [["found", what, exact(inUnit), numbers.label(dimension)]];
  });

  const answer = ["answer", numbers.sentence, "", ""];
  return [["part", "what", "value", "unit"], ...asked, ...worked, answer];
}

/**
 * Write rows as comma-separated values, RFC 4180; what a spreadsheet would take for a formula is
 * not one.
 *
 * @param {Cell[][]} rows
 */
export function writeRows(rows) {
  /** @param {Cell} value */
  const cell = (value) => {
    const text = typeof value === "string" ? value.replace(/^[=+\-@]/, "'$&") : String(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return rows.map((row) => row.map(cell).join(",") + "\r\n").join("");
}

/**
 * Hand the reader a file.
 *
 * @param {string} name
 * @param {string} text
 * @param {string} type
 */
export function saveFile(name, text, type) {
  const link = make("a");
  // The mark in front tells a spreadsheet that the text is UTF-8.
  link.href = URL.createObjectURL(new Blob(["\ufeff", text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
