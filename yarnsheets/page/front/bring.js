/* Rows from a file or a spreadsheet: which column of it is which, shown before any is taken. */

import { make, makeButton, setText } from "./dom.js";
import { readSpreadsheet } from "./spreadsheet.js";

/**
 * @import {Asked} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

const SAMPLES = 3; // cells that are shown of a column

/**
 * @param {object} given
 * @param {string} given.id starts the ids of the fields
 * @param {Asked} given.asked
 * @param {Numbers} given.numbers
 * @param {(rows: string[][], meant: [column: number, unit: string][], isInstead: boolean) => boolean}
 *   given.take false if they have no room
 */
export function makeBring({ id, asked, numbers, take }) {
  const { program } = numbers;
  const el = make("section", "ys-bring");
  el.hidden = true;
  el.tabIndex = -1;

  /** @param {string[]} headings */
  const meaning = (headings) =>
    headings.map((heading) => program.match_column(asked.columns, heading, numbers.shown));
  /** @param {string[][]} rows */
  const hasHeadings = (rows) => program.has_headings(asked.columns, rows[0] ?? [], numbers.shown);

  /**
   * Show what was found, and ask which column is which.
   *
   * @param {string[][]} rows
   */
  function offer(rows) {
    if (!rows.length) {
      say("There is nothing in it. Choose a file with a row of headings and a row a skein.");
      return;
    }
    const isHeaded = hasHeadings(rows);
    const width = Math.max(...rows.map((row) => row.length));
    const headings = Array.from({ length: width }, (_, at) => (isHeaded && rows[0]?.[at]) || "");
    const below = isHeaded ? rows.slice(1) : rows;
    const taken = new Set();
    const meant = meaning(headings).map(([at, unit]) => {
      if (taken.has(at)) return /** @type {[number, string]} */ ([-1, ""]);
      taken.add(at);
      return /** @type {[number, string]} */ ([at, unit]);
    });

    const title = make(
      "p",
      "",
      `${below.length} ${below.length === 1 ? "row" : "rows"}. ` +
        (isHeaded
          ? "Look whether each column is what it says."
          : "No heading is known: say what each column is."),
    );
    const table = make("table", "ys-meant");
    headings.forEach((heading, at) => table.append(line(heading, at, below, meant)));
    const trouble = make("p", "ys-error");
    trouble.hidden = true;
    /** @param {boolean} isInstead */
    const taking = (isInstead) => () => {
      if (take(below, meant, isInstead)) close();
      else {
        setText(trouble, `${asked.most} rows are the most here. Take fewer rows.`);
        trouble.hidden = false;
      }
    };
    const buttons = make("div", "ys-table-buttons");
    buttons.append(
      makeButton("Put them in place of these", taking(true)),
      makeButton("Add them below", taking(false)),
      makeButton("Leave it", close),
    );
    el.replaceChildren(title, table, trouble, buttons);
    el.hidden = false;
    el.focus();
    el.scrollIntoView({ block: "nearest" });
  }

  /**
   * A column of what was brought: its heading, some of its cells, and what it is.
   *
   * @param {string} heading
   * @param {number} at
   * @param {string[][]} rows
   * @param {[column: number, unit: string][]} meant
   */
  function line(heading, at, rows, meant) {
    const tr = make("tr");
    const called = heading || `column ${at + 1}`;
    const th = make("th", "", called);
    th.scope = "row";
    const samples = rows.map((row) => row[at] ?? "").filter(Boolean);
    const sample = make("td", "", samples.slice(0, SAMPLES).join(" · "));
    const select = make("select");
    select.id = `${id}-column-${at}`;
    select.setAttribute("aria-label", `What is ${called}?`);
    select.append(new Option("not used", "-1"));
    asked.columns.forEach((column, place) => select.append(new Option(column.title, `${place}`)));
    select.value = `${meant[at]?.[0] ?? -1}`;
    const unit = make("td", "", unitOf(meant[at]));
    select.addEventListener("change", () => {
      const place = Number(select.value);
      const columns = asked.columns.slice(Math.max(place, 0), place + 1);
      const named = columns.map((column) => ({ ...column, called: [heading] }));
      meant[at] = [place, program.match_column(named, heading, numbers.shown)[1]];
      setText(unit, unitOf(meant[at]));
    });
    const chosen = make("td");
    chosen.append(select);
    tr.append(th, sample, chosen, unit);
    return tr;
  }

  /** @param {[column: number, unit: string] | undefined} meant */
  function unitOf([at, unit] = [-1, ""]) {
    const column = asked.columns[at];
    if (!column || !numbers.hasUnit(column.dimension)) return "";
    return (unit && numbers.shown.labels[unit]) || numbers.label(column.dimension);
  }

  /** @param {string} text */
  function say(text) {
    el.replaceChildren(make("p", "ys-error", text), makeButton("Close", close));
    el.hidden = false;
    el.focus();
  }

  function close() {
    el.hidden = true;
    el.replaceChildren();
  }

  // ---- a file

  const file = make("input");
  file.type = "file";
  file.accept = ".csv,.tsv,.txt,.xlsx,.ods";
  file.hidden = true;
  file.setAttribute("aria-label", "A file of rows");
  file.addEventListener("change", async () => {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    const bytes = await chosen.arrayBuffer();
    file.value = ""; // the same one may be chosen again
    try {
      offer(isZip(bytes) ? await tableOf(bytes) : program.read_table(decoded(bytes)));
    } catch {
      say("This file cannot be read. In your spreadsheet, save it as CSV, and open that.");
    }
  });

  return {
    el,
    offer,
    hasHeadings,
    buttons: [makeButton("Open a file", () => file.click()), file],
  };
}

/** @param {ArrayBuffer} bytes */
const isZip = (bytes) => new TextDecoder().decode(bytes.slice(0, 2)) === "PK";

/**
 * A spreadsheet's rows, without those that are empty.
 *
 * @param {ArrayBuffer} bytes
 */
async function tableOf(bytes) {
  const rows = await readSpreadsheet(bytes);
  return rows.map((row) => row.map((cell) => cell.trim())).filter((row) => row.some(Boolean));
}

/**
 * Text of a file: as today's programs write it, or as older spreadsheets do.
 *
 * @param {ArrayBuffer} bytes
 */
function decoded(bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
