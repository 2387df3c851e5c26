/* The numbers of a sheet: what is asked, what the program finds, and how both are shown. */

/**
 * @import {Asked, Choice, Description, Dimensions, Found, Known, Line, Program, Shown, Value, Values}
 *   from "./types"
 */

/**
 * A piece of a text: the input whose number it is, or "", and whether it is the number wanted.
 *
 * @typedef {{text: string, input: string, isWanted: boolean}} Piece
 */

/** @type {Piece} */
const SPACE = { text: " ", input: "", isWanted: false };

export class Numbers {
  /**
   * @param {Description} description
   * @param {Program} program
   * @param {Values} values
   * @param {Choice} choice
   */
  constructor(description, program, values, choice) {
    this.description = description;
    this.program = program;
    this.values = values;
    this.choice = choice;
    /** @type {Dimensions} */
    this.dimensions = {};
    for (const part of [description.inputs, description.found])
      for (const [name, { dimension }] of Object.entries(part)) this.dimensions[name] = dimension;
    /** @type {Shown} */
    this.shown = this.#unitsShown();
    /** @type {Found} */
    this.found = this.program.work_out(this.values, this.choice);
    /** @type {Known} */
    this.known = { ...this.values, ...this.found };
  }

  /**
   * Change some inputs or the units, and work everything out again.
   *
   * @param {Values} values
   * @param {Partial<Choice>} [choice]
   */
  change(values, choice = {}) {
    const { measure, grist_unit } = this.choice;
    Object.assign(this.values, values);
    Object.assign(this.choice, choice);
    if (measure !== this.choice.measure || grist_unit !== this.choice.grist_unit)
      this.shown = this.#unitsShown(); // another object for other units
    this.found = this.program.work_out(this.values, this.choice);
    this.known = { ...this.values, ...this.found };
  }

  /** @returns {Shown} */
  #unitsShown() {
    const { measures, scales, unitLabels } = this.description;
    const units = measures.find(({ name }) => name === this.choice.measure)?.units;
    return { units: { ...units, grist: this.choice.grist_unit }, scales, labels: unitLabels };
  }

  /** @param {string} name */
  asked(name) {
    return /** @type {Asked} */ (this.description.inputs[name]);
  }

  /**
   * The inputs that start anew when another changes, as they were at the start.
   *
   * @param {string} changed the name of an input, or "measure"
   * @returns {Values}
   */
  startAnew(changed) {
    const anew = Object.entries(this.description.inputs).filter(([, asked]) =>
      asked.anew?.includes(changed),
    );
    return Object.fromEntries(anew.map(([name, asked]) => [name, asked.default]));
  }

  /** @param {string} name */
  value(name) {
    return /** @type {Value} */ (this.values[name]);
  }

  /** The balance's factor, where the sheet asks for it. */
  get balanceFactor() {
    return /** @type {number | undefined} */ (this.values["balance_factor"]);
  }

  /** @param {string} dimension */
  hasUnit(dimension) {
    return dimension in this.shown.scales;
  }

  /** @param {string} dimension */
  unit(dimension) {
    return /** @type {string} */ (this.shown.units[dimension]);
  }

  /** @param {string} dimension */
  label(dimension) {
    return this.hasUnit(dimension) ? (this.shown.labels[this.unit(dimension)] ?? "") : "";
  }

  /**
   * @param {string} dimension
   * @param {number} value
   */
  toShown(dimension, value) {
    if (!this.hasUnit(dimension)) return value;
    return this.program.to_shown(value, dimension, this.unit(dimension), this.shown);
  }

  /**
   * @param {string} dimension
   * @param {number} value
   */
  toOwn(dimension, value) {
    if (!this.hasUnit(dimension)) return value;
    return this.program.to_own(value, dimension, this.unit(dimension), this.shown);
  }

  /** @param {string} template */
  fill(template) {
    return this.program.fill(template, this.known, this.dimensions, this.shown);
  }

  /** @param {Line[]} lines */
  said(lines) {
    return this.program.said(lines, this.known, this.dimensions, this.shown);
  }

  /** The answer, or what is probably wrong: a headline, and what it rests on, each in pieces. */
  get answer() {
    const { answer } = this.description;
    const templates = this.hasAnswer
      ? answer.filter(([when]) => this.program.holds(when, this.known)).map(([, text]) => text)
      : this.found.warnings;
    const said = templates.map((template) => this.#pieces(template));
    const first = said.findIndex((pieces) => /[.?!]$/.test(textOf(pieces))) + 1; // one sentence
    const beside = spaced(said.slice(first));
    return {
      headline: spaced(said.slice(0, first)),
      beside: beside.length ? [SPACE, ...beside] : [],
    };
  }

  /**
   * Fill a template piece by piece, so that each number is known for what it is.
   *
   * @param {string} template
   * @returns {Piece[]}
   */
  #pieces(template) {
    const opened = this.program.opened(template, this.known, this.dimensions);
    return opened.split(/(\{[^{}]*\})/).map((piece) => {
      const [slot = "", name = ""] = piece.match(/^\{(\w+).*\}$/) ?? [];
      return {
        text: slot ? this.fill(slot) : piece,
        input: name in this.description.inputs ? name : "",
        isWanted: slot.includes("*"),
      };
    });
  }

  /** The whole answer as one text. */
  get sentence() {
    const { headline, beside } = this.answer;
    return textOf([...headline, ...beside]);
  }

  /** Whether there is an answer, and not what is probably wrong. */
  get hasAnswer() {
    return this.found.warnings.length === 0;
  }

  /** The arithmetic worked through, a line a step. */
  get arithmetic() {
    const lines = this.description.worked[`${this.choice.measure}|${this.choice.grist_unit}`];
    return this.said(lines ?? []);
  }
}

/** @param {Piece[]} pieces */
export const textOf = (pieces) => pieces.map(({ text }) => text).join("");

/**
 * Lines after one another, with a space between.
 *
 * @param {Piece[][]} lines
 * @returns {Piece[]}
 */
const spaced = (lines) => lines.flatMap((line, at) => (at ? [SPACE, ...line] : line));
