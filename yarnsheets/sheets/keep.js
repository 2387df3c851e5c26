/* What a reader takes along from a sheet: a link that holds its numbers, and a file of them.
 *
 * Goes before sheet.js, as one module. A link holds numbers in the sheet's own units, so it means
 * the same whatever units were chosen, and the units beside them.
 */

/* The numbers and the units shown, as the part of an address behind "#". */
export function writeLink(values, choice) {
  const link = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...values, ...choice }))
    link.set(name, Array.isArray(value) ? value.join(" ") : value);
  return link.toString();
}

const MOST_LETTERS = 40; // of the reader's own words
const inside = ({ low, high }, value) => value >= low && value <= high;

/* How each kind of input is read from a link; undefined if it cannot be. */
const READ = {
  number: (input, text) => (text.trim() && inside(input, Number(text)) ? Number(text) : undefined),
  readings(input, text) {
    const numbers = text.split(" ").filter(Boolean).map(Number);
    return numbers.every((number) => inside(input, number)) ? numbers : undefined;
  },
  pick: (input, text) => (text in input.options ? text : undefined),
  words: (_, text) => text.slice(0, MOST_LETTERS),
};

/* What a link says of this sheet. What it says of other sheets, or wrongly, is left out; a number
 * outside its range is `refused`, to be told to the reader. */
export function readLink(link, sheet) {
  const given = { values: {}, choice: {}, refused: {} };
  for (const [name, text] of new URLSearchParams(link)) {
    const input = sheet.inputs[name];
    const value = input && READ[input.kind](input, text);
    if (value !== undefined) given.values[name] = value;
    else if (input?.kind === "number" && text.trim() && Number.isFinite(Number(text)))
      given.refused[name] = Number(text);
    if (name === "measure" && sheet.measures.some((m) => m.name === text))
      given.choice.measure = text;
    if (name === "gristUnit" && sheet.gristUnits.some((g) => g.unit === text))
      given.choice.gristUnit = text;
  }
  return given;
}

/* Rows as comma-separated values, RFC 4180; what a spreadsheet would take for a formula is not one. */
export function writeRows(rows) {
  const cell = (value) => {
    const text = typeof value === "string" ? value.replace(/^[=+\-@]/, "'$&") : String(value);
    return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return rows.map((row) => row.map(cell).join(",") + "\r\n").join("");
}

/* Hand the reader a file. */
function saveFile(name, text, type) {
  const link = document.createElement("a");
  // The mark in front tells a spreadsheet that the text is UTF-8.
  link.href = URL.createObjectURL(new Blob(["\ufeff", text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

