/* The choice of units, where it changes something on the sheet. */

import { make } from "./dom.js";

/**
 * @import {Choice, Host} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

/**
 * Make the pickers of units.
 *
 * @param {Numbers} numbers
 * @param {Host} host
 * @param {string} id starts the ids of the fields
 * @param {(choice: Partial<Choice>) => void} choose
 */
export async function makeUnits(numbers, host, id, choose) {
  const el = make("div", "ys-units");
  const { measures, gristUnits } = numbers.description;
  const dimensions = Object.values(numbers.dimensions);
  const isMeasured = dimensions.some(
    (dimension) => new Set(measures.map(({ units }) => units[dimension])).size > 1,
  );

  /** @type {(() => void)[]} */
  const updates = [];
  /**
   * @param {keyof Choice} name
   * @param {string} text
   * @param {string[]} options
   */
  const add = async (name, text, options) => {
    const picker = await host.pick(name);
    picker.field.id = `${id}-${name}`;
    const label = make("label", "ys-label", text);
    label.htmlFor = picker.field.id;
    const group = make("div", "ys-unit-choice");
    group.append(label, picker.el);
    el.append(group);
    picker.field.addEventListener("change", () => {
      const chosen = options[picker.field.selectedIndex] ?? "";
      choose(name === "measure" ? withGrist(numbers, chosen) : { [name]: chosen });
    });
    updates.push(() => {
      picker.field.selectedIndex = options.indexOf(numbers.choice[name]);
    });
  };
  if (isMeasured)
    await add(
      "measure",
      "Length, weight",
      measures.map(({ name }) => name),
    );
  if (dimensions.includes("grist"))
    await add(
      "grist_unit",
      "Grist",
      gristUnits.map(({ unit }) => unit),
    );

  return {
    /** Nothing, where no choice of units changes anything. */
    el: el.children.length ? el : null,
    update: () => updates.forEach((update) => update()),
  };
}

/**
 * Grist goes with the other units, unless the reader has chosen a unit of her own for it.
 *
 * @param {Numbers} numbers
 * @param {string} measure
 * @returns {Partial<Choice>}
 */
function withGrist({ choice, description }, measure) {
  /** @param {string} name */
  const gristOf = (name) => description.measures.find((each) => each.name === name)?.grist;
  const grist = gristOf(measure);
  const isOwn = choice.grist_unit !== gristOf(choice.measure);
  return isOwn || !grist ? { measure } : { measure, grist_unit: grist };
}
