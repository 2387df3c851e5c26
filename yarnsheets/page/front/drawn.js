/* A table as a chart draws it.
 *
 * Rows that stay keep what is drawn of them: of a table that changed, only what differs is drawn
 * again.
 */

/** @import {Changeset} from "vega" */
/** @import {Charts} from "./types" */

/** @typedef {Record<string, unknown>} Row */

export class Drawn {
  /** The table as it was told. @type {Row[]} */
  #told = [];
  /** The same rows in the hands of Vega, which adds fields to them. @type {Row[]} */
  #rows = [];

  /** @param {Charts["changeset"]} changeset */
  constructor(changeset) {
    this.changeset = changeset;
  }

  /**
   * Take a table; give what changes in the one drawn, or nothing if both say the same.
   *
   * @param {Row[]} rows
   * @returns {Changeset | undefined}
   */
  take(rows) {
    const change = this.changeset();
    let isOther = rows.length !== this.#rows.length;
    for (const [at, drawn] of this.#rows.slice(0, rows.length).entries()) {
      const [row, told] = [rows[at] ?? {}, this.#told[at] ?? {}];
      for (const [field, value] of Object.entries(row)) {
        if (Object.is(value, told[field])) continue;
        change.modify(drawn, field, value);
        isOther = true;
      }
    }
    change.remove(this.#rows.splice(rows.length));
    const added = rows.slice(this.#rows.length).map((row) => ({ ...row }));
    this.#rows.push(...added);
    change.insert(added);
    this.#told = rows;
    return isOther ? change : undefined;
  }
}
