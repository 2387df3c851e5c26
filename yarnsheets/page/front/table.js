/* A table to type into: a row of boxes for each thing, what the sheet says of it beside them. */

import { makeBring } from "./bring.js";
import { make, makeButton, setText } from "./dom.js";
import { saveFile, writeRows } from "./keep.js";

/**
 * @import {Cell, Column, Line, Row} from "./types"
 * @import {Controlled, Given} from "./fields.js"
 */

const MOST_SAID = 3; // cells that cannot be, that are told below the table; all are marked in it

/**
 * A row as it stands: what each cell holds, how that is spelt, and what is wrong with it.
 *
 * @typedef {{cells: Row, texts: string[], wrong: string[]}} Standing
 */

/**
 * Rows of cells, each read as a box is.
 *
 * @param {Given} given
 * @returns {Controlled}
 */
export function makeRows({ name, id, asked, numbers, typing, set, refuse }) {
  const { program } = numbers;
  const { columns, beside } = asked;
  const table = make("table", "ys-cells");
  table.setAttribute("aria-label", asked.title);
  table.tabIndex = -1; // where a reader is led who is to look at it
  const frame = make("div", "ys-grid");
  frame.append(table);

  let standing = /** @type {Standing[]} */ ([]);
  let known = ""; // the rows last given or taken, as one text
  let shown = numbers.shown;
  let last = { row: 0, column: 0 }; // where the reader was

  const more = make("input");
  more.type = "checkbox";
  more.id = `${id}-more`;
  more.addEventListener("change", () => render());
  const moreLabel = make("label", "", "All columns");
  moreLabel.htmlFor = more.id;
  const all = make("span", "ys-check");
  all.append(more, moreLabel);

  // ---- rows and their cells

  /** @param {Column} column */
  const nothing = (column) =>
    ({ words: "", readings: [] })[/** @type {string} */ (column.kind)] ?? null;
  /** @returns {Standing} */
  const blank = () => ({
    cells: columns.map(nothing),
    texts: columns.map(() => ""),
    wrong: columns.map(() => ""),
  });
  /** @param {Standing} row */
  const isEmpty = (row) => row.texts.every((text) => !text.trim());
  const filled = () => standing.filter((row) => !isEmpty(row));

  /**
   * @param {Standing} row
   * @param {number} at the column
   * @param {string} text
   * @param {string} [unit] of a number that names none, if it is not the one shown
   */
  function readInto(row, at, text, unit = "") {
    const column = /** @type {Column} */ (columns[at]);
    const [cell, wrong] = program.read_cell(column, text, unit, numbers.shown);
    row.wrong[at] = wrong;
    row.cells[at] = wrong ? nothing(column) : cell;
    row.texts[at] = wrong ? text : program.write_cell(column, cell, numbers.shown);
  }

  /** Tell the sheet what stands here, and the reader what of it cannot be. */
  function tell() {
    const rows = filled().map(({ cells }) => cells);
    known = JSON.stringify(rows);
    set(rows, table);
    const wrong = filled().flatMap((row, at) =>
      columns.flatMap(({ title }, place) =>
        row.wrong[place] ? [`Row ${at + 1}, ${title.toLowerCase()}: ${row.wrong[place]}`] : [],
      ),
    );
    const rest = wrong.length - MOST_SAID;
    const others =
      rest > 0 ? [`${rest} more of the cells marked in the table cannot be read.`] : [];
    if (wrong.length) refuse([...wrong.slice(0, MOST_SAID), ...others].join("\n"));
  }

  // ---- the table on the page

  const visible = () =>
    columns
      .map((column, at) => ({ column, at }))
      .filter(
        ({ column, at }) =>
          more.checked ||
          asked.first.includes(column.name) ||
          standing.some((row) => row.texts[at]?.trim()),
      );

  /** @param {Column} column */
  const heading = ({ title, dimension }) => {
    const unit = numbers.label(dimension);
    return unit ? `${title} (${unit})` : title;
  };

  /** Draw the whole table anew. */
  function render() {
    const end = standing.at(-1);
    if ((!end || !isEmpty(end)) && standing.length < asked.most) standing.push(blank());
    const head = make("tr");
    const [first, ...others] = visible().map(({ column }) => headed("col", heading(column)));
    const told = Object.keys(beside.columns).map((title) => headed("col", title));
    head.append(make("td"), ...(first ? [first] : []), ...told, ...others);
    const thead = make("thead");
    thead.append(head);
    const body = make("tbody");
    body.append(...standing.map(drawn));
    table.replaceChildren(thead, body);
    follow();
  }

  /**
   * @param {"col" | "row"} scope
   * @param {string} text
   */
  function headed(scope, text) {
    const th = make("th", "", text);
    th.scope = scope;
    return th;
  }

  /**
   * @param {Standing} row
   * @param {number} at
   */
  function drawn(row, at) {
    const tr = make("tr");
    const boxes = visible().map(({ column, at: place }) => {
      const field = make("input");
      field.autocomplete = "off";
      field.value = row.texts[place] ?? "";
      field.dataset["column"] = `${place}`;
      field.setAttribute("aria-label", `Row ${at + 1}, ${column.title.toLowerCase()}`);
      mark(field, row.wrong[place] ?? "");
      const td = make("td", `ys-${column.kind}`);
      td.append(field);
      return td;
    });
    const told = Object.keys(beside.columns).map((title) => {
      const td = make("td", "ys-told");
      td.dataset["told"] = title;
      return td;
    });
    // what is said of a row stands in sight, right behind what the row is called
    tr.append(headed("row", `${at + 1}`), ...boxes.slice(0, 1), ...told, ...boxes.slice(1));
    return tr;
  }

  /**
   * @param {HTMLInputElement} field
   * @param {string} wrong
   */
  function mark(field, wrong) {
    field.setAttribute("aria-invalid", String(Boolean(wrong)));
    field.title = wrong;
  }

  /** Say beside each row what the sheet found of it. */
  function follow() {
    const found = /** @type {Record<string, unknown>[]} */ (numbers.found[beside.table] ?? []);
    let next = 0; // rows that are empty are not told of
    standing.forEach((row, at) => {
      const says = isEmpty(row) ? undefined : found[next++];
      for (const td of body().rows[at]?.querySelectorAll("td[data-told]") ?? []) {
        const lines = /** @type {Line[]} */ (
          beside.columns[/** @type {HTMLElement} */ (td).dataset["told"] ?? ""]
        );
        const said = says
          ? program.said(lines, says, beside.dimensions, numbers.shown).join(" ")
          : "";
        setText(td, said);
      }
    });
  }

  const body = () =>
    /** @type {HTMLTableSectionElement} */ (table.tBodies[0] ?? table.createTBody());

  /**
   * @param {number} row
   * @param {number} column
   */
  const fieldAt = (row, column) =>
    /** @type {HTMLInputElement | null} */ (
      body().rows[row]?.querySelector(`[data-column="${column}"]`) ?? null
    );

  /** @param {Event} event */
  function placeOf({ target }) {
    if (!(target instanceof HTMLInputElement)) return null;
    const row = /** @type {HTMLTableRowElement} */ (target.closest("tr")).sectionRowIndex;
    return { field: target, row, column: Number(target.dataset["column"]) };
  }

  // ---- typing, and the keys of a table

  table.addEventListener("focusin", (event) => {
    const place = placeOf(event);
    if (!place) return;
    last = place;
    place.field.select();
  });
  table.addEventListener("input", (event) => {
    const place = placeOf(event);
    const row = place && standing[place.row];
    if (!row) return;
    row.texts[place.column] = place.field.value;
    if (place.row === standing.length - 1 && !isEmpty(row) && standing.length < asked.most) {
      standing.push(blank());
      body().append(drawn(/** @type {Standing} */ (standing.at(-1)), standing.length - 1));
    }
    typing();
  });
  table.addEventListener("change", (event) => {
    const place = placeOf(event);
    const row = place && standing[place.row];
    if (!row) return;
    readInto(row, place.column, place.field.value);
    place.field.value = row.texts[place.column] ?? "";
    mark(place.field, row.wrong[place.column] ?? "");
    tell();
  });
  table.addEventListener("keydown", (event) => {
    const place = placeOf(event);
    if (!place) return;
    const to = ledTo(event, place);
    if (!to) return;
    event.preventDefault();
    to.focus();
  });

  /**
   * Where a key leads: up and down always, left and right from the ends of what is typed.
   *
   * @param {KeyboardEvent} event
   * @param {{field: HTMLInputElement, row: number, column: number}} place
   */
  function ledTo({ key, shiftKey, ctrlKey, altKey, metaKey }, { field, row, column }) {
    if (ctrlKey || altKey || metaKey) return null;
    if (key === "Enter") return fieldAt(row + (shiftKey ? -1 : 1), column) ?? field;
    if (key === "ArrowDown") return fieldAt(row + 1, column);
    if (key === "ArrowUp") return fieldAt(row - 1, column);
    const { selectionStart: start, selectionEnd: end, value } = field;
    const isWhole = start === 0 && end === value.length;
    const places = visible().map(({ at }) => at);
    const here = places.indexOf(column);
    if (key === "ArrowLeft" && (isWhole || end === 0)) return fieldAt(row, places[here - 1] ?? -1);
    if (key === "ArrowRight" && (isWhole || start === value.length))
      return fieldAt(row, places[here + 1] ?? -1);
    return null;
  }

  // ---- rows from elsewhere

  const bring = makeBring({ id, asked, numbers, take });

  table.addEventListener("paste", (event) => {
    const place = placeOf(event);
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (!place || !/[\t\n\r]/.test(text.trim())) return; // one cell's own
    event.preventDefault();
    const rows = program.read_table(text);
    if (bring.hasHeadings(rows)) bring.offer(rows);
    else pasteAt(place, rows);
  });

  /**
   * @param {{row: number, column: number}} place
   * @param {string[][]} rows
   */
  function pasteAt({ row, column }, rows) {
    const places = visible().map(({ at }) => at);
    const from = places.indexOf(column);
    if (row + rows.length > asked.most) {
      refuse(`${rows.length} rows have no room here: ${asked.most} are the most.`);
      return;
    }
    rows.forEach((cells, down) => {
      while (standing.length <= row + down) standing.push(blank());
      cells.forEach((text, across) => {
        const at = places[from + across];
        if (at !== undefined) readInto(/** @type {Standing} */ (standing[row + down]), at, text);
      });
    });
    render();
    tell();
    fieldAt(row, column)?.focus();
  }

  /**
   * Take rows whose columns the reader has looked over.
   *
   * @param {string[][]} rows
   * @param {[column: number, unit: string][]} meant of each cell, the column; -1 for none
   * @param {boolean} isInstead whether they take the place of those that are there
   */
  function take(rows, meant, isInstead) {
    const stay = isInstead ? [] : filled();
    const added = rows.map((cells) => {
      const row = blank();
      meant.forEach(([at, unit], place) => {
        if (at >= 0) readInto(row, at, cells[place] ?? "", unit);
      });
      return row;
    });
    if (stay.length + added.length > asked.most) return false;
    standing = [...stay, ...added];
    render();
    tell();
    return true;
  }

  // ---- buttons

  const buttons = make("div", "ys-table-buttons");
  buttons.append(
    ...bring.buttons,
    makeButton("Remove this row", () => {
      if (standing.length < 2) return;
      standing.splice(Math.min(last.row, standing.length - 1), 1);
      render();
      tell();
      fieldAt(Math.min(last.row, standing.length - 1), last.column)?.focus();
    }),
    makeButton("Empty the table", () => {
      standing = [];
      render();
      tell();
      fieldAt(0, 0)?.focus();
    }),
    makeButton("Save the table (CSV)", () =>
      saveFile(`${numbers.description.name}-table.csv`, asText(), "text/csv"),
    ),
    all,
  );

  /** Write the table as it stands, with what is said beside it. */
  function asText() {
    const titles = Object.keys(beside.columns);
    const head = [...columns.map(heading), ...titles];
    const rows = standing.flatMap((row, at) => {
      if (isEmpty(row)) return [];
      const told = titles.map(
        (title) => body().rows[at]?.querySelector(`[data-told="${title}"]`)?.textContent ?? "",
      );
      return [[...row.texts, ...told]];
    });
    return writeRows([head, ...rows]);
  }

  return {
    field: table,
    parts: [frame, buttons, bring.el],
    follow,

    show() {
      const now = JSON.stringify(numbers.value(name));
      if (now !== known) {
        known = now;
        const rows = /** @type {Row[]} */ (numbers.value(name));
        standing = rows.map((cells) => ({
          cells,
          texts: columns.map((column, at) =>
            program.write_cell(column, /** @type {Cell} */ (cells[at]), numbers.shown),
          ),
          wrong: columns.map(() => ""),
        }));
        shown = numbers.shown;
        render();
      } else if (shown !== numbers.shown) {
        shown = numbers.shown;
        for (const row of standing)
          row.cells.forEach((cell, at) => {
            const column = /** @type {Column} */ (columns[at]);
            if (!row.wrong[at]) row.texts[at] = program.write_cell(column, cell, shown);
          });
        render();
      }
    },
  };
}
