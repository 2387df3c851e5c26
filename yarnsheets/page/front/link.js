/* A link that holds a sheet's numbers, in the part of an address behind "#".
 *
 * It holds them in the sheet's own units, so it means the same whatever units were chosen, and
 * the units beside them.
 */

/**
 * @import {Asked, Cell, Choice, Column, Description, Program, Row, Value, Values} from "./types"
 */

export const MOST_LETTERS = 40; // of the reader's own words

/**
 * @param {Values} values
 * @param {Choice} choice
 */
export function writeLink(values, choice) {
  const link = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...values, ...choice }))
    link.set(name, Array.isArray(value) ? written(value) : String(value ?? ""));
  return link.toString();
}

/**
 * @param {number[] | number[][] | Row[]} values
 */
function written(values) {
  const [first] = values;
  const isTable = Array.isArray(first) && first.some((cell) => typeof cell !== "number");
  return isTable ? JSON.stringify(values) : values.join(" ");
}

/**
 * @param {Asked} asked
 * @param {string} text
 * @param {Program["takes"]} takes
 */
function readNumber(asked, text, takes) {
  return text.trim() && takes(asked, Number(text)) ? Number(text) : undefined;
}

const ONE_NUMBER = ["number", "draw", "blank"]; // the kinds that are one

/**
 * How each kind of input is read from a link; undefined if it cannot be.
 *
 * @type {Record<Asked["kind"], (asked: Asked, text: string, takes: Program["takes"]) =>
 *   Value | undefined>}
 */
const READ = {
  number: readNumber,
  draw: readNumber,
  blank: (asked, text, takes) => (text.trim() ? readNumber(asked, text, takes) : null),
  readings(asked, text, takes) {
    const numbers = text.split(" ").filter(Boolean).map(Number);
    return numbers.every((number) => takes(asked, number)) ? numbers : undefined;
  },
  pairs(asked, text, takes) {
    const pairs = text
      .split(" ")
      .filter(Boolean)
      .map((pair) => pair.split(",").map(Number));
    /** @param {number[]} pair */
    const isGood = (pair) =>
      pair.length === asked.parts.length &&
      asked.parts.every((part, at) => takes(part, pair[at] ?? NaN));
    return pairs.every(isGood) ? pairs : undefined;
  },
  rows(asked, text, takes) {
    const rows = parsed(text || "[]");
    return rows.every((row) => isRow(row, asked, takes)) ? rows.slice(0, asked.most) : undefined;
  },
  pick: (asked, text) => (Object.hasOwn(asked.options, text) ? text : undefined),
  words: (_, text) => text.slice(0, MOST_LETTERS),
};

/**
 * @param {string} text
 * @returns {Row[]} one that is no row, if it cannot be read
 */
function parsed(text) {
  try {
    const rows = JSON.parse(text);
    return Array.isArray(rows) ? rows : [[]];
  } catch {
    return [[]];
  }
}

/**
 * @param {Row} row
 * @param {Asked} asked
 * @param {Program["takes"]} takes
 */
function isRow(row, { columns }, takes) {
  /**
   * @param {Column} column
   * @param {Cell | undefined} cell
   */
  const holds = (column, cell) => {
    if (column.kind === "words") return typeof cell === "string";
    if (column.kind === "readings")
      return Array.isArray(cell) && cell.every((one) => takes(column, one));
    return cell === null || (typeof cell === "number" && takes(column, cell));
  };
  return (
    Array.isArray(row) &&
    row.length === columns.length &&
    columns.every((column, at) => holds(column, row[at]))
  );
}

/**
 * Read what a link says of this sheet. What it says of other sheets, or wrongly, is left out; a
 * number that cannot be is `refused`, to be told to the reader.
 *
 * @param {string} link
 * @param {Description} description
 * @param {Program} program
 */
export function readLink(link, { inputs, measures, gristUnits }, { takes }) {
  const values = /** @type {Values} */ ({});
  const choice = /** @type {Partial<Choice>} */ ({});
  const refused = /** @type {Record<string, number>} */ ({});
  for (const [name, text] of new URLSearchParams(link)) {
    const asked = Object.hasOwn(inputs, name) ? inputs[name] : undefined;
    const value = asked && READ[asked.kind](asked, text, takes);
    if (value !== undefined) values[name] = value;
    else if (
      asked &&
      ONE_NUMBER.includes(asked.kind) &&
      text.trim() &&
      Number.isFinite(Number(text))
    )
      refused[name] = Number(text);
    if (name === "measure" && measures.some((each) => each.name === text)) choice.measure = text;
    if (name === "grist_unit" && gristUnits.some((each) => each.unit === text))
      choice.grist_unit = text;
  }
  return { values, choice, refused };
}
