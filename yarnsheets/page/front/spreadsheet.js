/* The first sheet of a spreadsheet's file as rows of cells: XLSX and ODS.
 *
 * Both are XML in a zip, and a browser opens either by itself.
 */

const MOST_BYTES = 20e6;
const MOST_COLUMNS = 200; // a row of ODS may say that it goes on for ever

/**
 * @param {ArrayBuffer} bytes
 * @returns {Promise<string[][]>}
 */
export async function readSpreadsheet(bytes) {
  if (bytes.byteLength > MOST_BYTES) throw new RangeError("too large");
  const parts = partsOf(bytes);
  const ods = parts.get("content.xml");
  return ods ? readOds(await xml(ods)) : readXlsx(parts);
}

// ---- the zip

/** @typedef {{bytes: Uint8Array<ArrayBuffer>, isPacked: boolean}} Part */

/**
 * The files in a zip, by the directory at its end (PKWARE's application note, 4.3).
 *
 * @param {ArrayBuffer} buffer
 * @returns {Map<string, Part>}
 */
function partsOf(buffer) {
  const view = new DataView(buffer);
  let end = buffer.byteLength - 22;
  while (view.getUint32(end, true) !== 0x06054b50) end -= 1; // past the start it throws
  const parts = new Map();
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
    const [name, extra, comment] = [28, 30, 32].map((place) => view.getUint16(at + place, true));
    const size = view.getUint32(at + 20, true);
    const local = view.getUint32(at + 42, true);
    const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const called = new TextDecoder().decode(new Uint8Array(buffer, at + 46, name));
    parts.set(called, {
      bytes: new Uint8Array(buffer, start, size),
      isPacked: view.getUint16(at + 10, true) === 8,
    });
    at += 46 + (name ?? 0) + (extra ?? 0) + (comment ?? 0);
  }
  return parts;
}

/** @param {Part | undefined} part */
async function xml(part) {
  if (!part) throw new TypeError("a part is missing");
  const blob = new Blob([part.bytes]);
  const stream = part.isPacked
    ? blob.stream().pipeThrough(new DecompressionStream("deflate-raw"))
    : blob.stream();
  return new DOMParser().parseFromString(await new Response(stream).text(), "text/xml");
}

/**
 * @param {Document | Element} parent
 * @param {string} name without its prefix
 */
const all = (parent, name) => [...parent.getElementsByTagNameNS("*", name)];

// ---- XLSX

/** @param {Map<string, Part>} parts */
async function readXlsx(parts) {
  const strings = parts.get("xl/sharedStrings.xml");
  const shared = strings ? all(await xml(strings), "si").map(textOf) : [];
  const sheet = await xml(parts.get(await firstSheet(parts)));
  return all(sheet, "row").map((row) => {
    /** @type {string[]} */
    const cells = [];
    for (const cell of all(row, "c")) {
      const at = columnOf(cell.getAttribute("r") ?? "") ?? cells.length;
      while (cells.length < at) cells.push("");
      cells[at] = cellOf(cell, shared);
    }
    return cells;
  });
}

/**
 * The address of the first sheet: the workbook names it, its relations know where it is.
 *
 * @param {Map<string, Part>} parts
 */
async function firstSheet(parts) {
  const [first] = all(await xml(parts.get("xl/workbook.xml")), "sheet");
  const id = first && [...first.attributes].find((each) => each.localName === "id")?.value;
  const relations = all(await xml(parts.get("xl/_rels/workbook.xml.rels")), "Relationship");
  const target = relations.find((each) => each.getAttribute("Id") === id)?.getAttribute("Target");
  return target?.startsWith("/") ? target.slice(1) : `xl/${target}`;
}

/**
 * @param {Element} cell
 * @param {string[]} shared
 */
function cellOf(cell, shared) {
  const [value] = all(cell, "v");
  const text = value?.textContent ?? "";
  switch (cell.getAttribute("t")) {
    case "s":
      return shared[Number(text)] ?? "";
    case "inlineStr":
      return textOf(cell);
    case "str":
    case "e":
      return text;
    default:
      return numberOf(text);
  }
}

/** @param {Element} parent the text in it, without how it is spoken */
const textOf = (parent) =>
  all(parent, "t")
    .filter((each) => each.parentElement?.localName !== "rPh")
    .map((each) => each.textContent)
    .join("");

/** @param {string} text a number as a file spells it: 4.0999999999999996 is 4.1 */
const numberOf = (text) => (text && Number.isFinite(Number(text)) ? `${Number(text)}` : text);

/** @param {string} reference such as "AB12" */
function columnOf(reference) {
  const [letters] = /^[A-Z]+/.exec(reference) ?? [];
  if (!letters) return undefined;
  return [...letters].reduce((at, letter) => at * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

// ---- ODS

/** @param {Document} content */
function readOds(content) {
  const [table] = all(content, "table");
  return all(table ?? content, "table-row").map((row) => {
    /** @type {string[]} */
    const cells = [];
    for (const cell of row.children) {
      const times = Number(attribute(cell, "number-columns-repeated") ?? 1);
      const text =
        attribute(cell, "value-type") === "float"
          ? numberOf(attribute(cell, "value") ?? "")
          : all(cell, "p")
              .map((each) => each.textContent)
              .join("\n");
      for (let left = Math.min(times, MOST_COLUMNS); left > 0; left -= 1) cells.push(text);
    }
    while (cells.at(-1) === "") cells.pop();
    return cells;
  });
}

/**
 * @param {Element} element
 * @param {string} name without its prefix
 */
const attribute = (element, name) =>
  [...element.attributes].find((each) => each.localName === name)?.value;
