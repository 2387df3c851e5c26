/* The inputs of a sheet: each with its label, its control, what is wrong with it, and a hint. */

import { make, makeList, makePart, setText } from "./dom.js";
import { makeExplain } from "./explain.js";
import { makeBlank, makeDraw } from "./boxes.js";
import { makeNumber, makePairs, makePick, makeReadings, makeWords } from "./fields.js";
import { makeRows } from "./table.js";

/**
 * @import {Host, Value} from "./types"
 * @import {Controlled} from "./fields.js"
 * @import {Numbers} from "./numbers.js"
 */

/**
 * Make the inputs.
 *
 * @param {Numbers} numbers
 * @param {Host} host
 * @param {string} id starts the ids of the fields
 * @param {object} hear
 * @param {(name: string, value: Value, typedIn?: Element) => void} hear.change
 * @param {() => void} hear.stale when something else is wrong or unread than before
 */
export async function makeControls(numbers, host, id, hear) {
  const el = makePart("section", "ys-asked", "Your numbers");
  const first = make("div", "ys-inputs");
  const groups = makeGroups(numbers);
  const kinds = {
    number: makeNumber,
    blank: makeBlank,
    draw: makeDraw,
    readings: makeReadings,
    pairs: makePairs,
    pick: makePick,
    words: makeWords,
    rows: makeRows,
  };
  const wide = makePart("section", "ys-wide", "Your table");

  /** @type {Map<string, Controlled & {input: HTMLElement, group: HTMLDetailsElement | undefined, error: HTMLElement, last: unknown[]}>} */
  const controls = new Map();
  const errors = /** @type {Map<string, string>} */ (new Map());
  const unread = /** @type {Set<string>} */ (new Set()); // fields that are being typed in

  const explain = makeExplain(numbers.description, id);
  const hidden = numbers.program.unused(numbers.values);
  for (const [name, asked] of Object.entries(numbers.description.inputs)) {
    const control = await kinds[asked.kind]({
      name,
      id: `${id}-${name}`,
      asked,
      numbers,
      host,
      typing() {
        unread.add(name);
        hear.stale();
      },
      set(value, typedIn) {
        if (errors.delete(name)) showError(name);
        if (unread.delete(name)) hear.stale();
        hear.change(name, value, typedIn);
      },
      refuse(message) {
        unread.delete(name);
        errors.set(name, message);
        showError(name);
      },
    });
    const error = make("p", "ys-error");
    error.id = `${id}-${name}-error`;
    error.hidden = true;
    const isHidden = hidden.includes(name); // and what it says, not said yet
    const hint = isHidden ? make("p", "ys-hint", asked.measure) : explain.hint(asked);
    hint.id = `${id}-${name}-hint`;
    control.field.id = `${id}-${name}`;
    control.field.setAttribute("aria-describedby", `${error.id} ${hint.id}`);
    const label = make("label", "ys-label", asked.title);
    label.htmlFor = control.field.id;
    const input = make("div", `ys-input ys-${asked.kind}`);
    input.dataset["name"] = name;
    input.append(label, ...control.parts, error, hint, ...explain.drawing(asked));
    const group = groups.of(name);
    (asked.kind === "rows" ? wide : (group?.lastElementChild ?? first)).append(input);
    controls.set(name, { ...control, input, group, error, last: [] });
  }

  const { cautions } = numbers.description;
  if (cautions.length) {
    const aside = make("aside", "ys-cautions");
    aside.append(make("h2", "", "Before you start"), makeList("ul", cautions));
    groups.el.prepend(aside);
  }
  if (wide.children.length) el.append(wide); // what needs the whole width
  el.append(first, groups.el);

  /** @param {string} name */
  function unfold(name) {
    const group = controls.get(name)?.group;
    if (group) group.open = true;
  }

  /** @param {string} name */
  function showError(name) {
    const control = controls.get(name);
    if (!control) return;
    const message = errors.get(name);
    setText(control.error, message ?? "");
    control.error.hidden = !message;
    if (message) unfold(name);
    control.field.setAttribute("aria-invalid", String(Boolean(message)));
    hear.stale();
  }

  return {
    el,
    first,

    /** Unfold what holds a number of the reader's own: one that is not the sheet's first. */
    unfold() {
      for (const [name, { default: usual }] of Object.entries(numbers.description.inputs))
        if (String(numbers.value(name)) !== String(usual)) unfold(name);
    },

    /**
     * Bring the controls to the present values.
     *
     * @param {Element} [typedIn] the field not to touch
     */
    update(typedIn) {
      const unused = numbers.program.unused(numbers.values);
      for (const [name, control] of controls) {
        control.input.hidden = unused.includes(name) && !errors.has(name);
        control.follow?.();
        // beside a grist stands its cut, by that factor
        const now = [numbers.value(name), numbers.shown, numbers.balanceFactor];
        if (now.every((part, at) => part === control.last[at])) continue;
        control.last = now;
        control.show(control.field === typedIn || errors.has(name) || unread.has(name));
      }
    },

    /**
     * Where an input stands, if it is not folded away.
     *
     * @param {string} name
     */
    placeOf(name) {
      const control = controls.get(name);
      return control && control.group?.open !== false ? control.input : null;
    },

    /**
     * Lead the reader to a box, with what stands in it ready to be typed over.
     *
     * @param {string} name
     */
    lead(name) {
      unfold(name);
      const field = controls.get(name)?.field;
      field?.focus();
      if (field instanceof HTMLInputElement) field.select();
      field?.scrollIntoView({ block: "nearest" });
    },

    /**
     * Forget what is wrong or unread in inputs that start anew.
     *
     * @param {string[]} names
     */
    forget(names) {
      for (const name of names) {
        const control = controls.get(name);
        if (control) control.last = []; // whatever stands in it is written anew
        unread.delete(name);
        if (errors.delete(name)) showError(name);
      }
      if (names.length) hear.stale();
    },

    /** The names of the inputs that hold something wrong. */
    wrong: () => [...errors.keys()],

    /** Whether a field holds what is not yet read. */
    isTyping: () => unread.size > 0,

    /** Read again what was refused: in another unit it may be right. */
    readAgain() {
      for (const name of [...errors.keys()]) controls.get(name)?.read?.();
    },

    /**
     * Write a number outside its range into its box, with the reason.
     *
     * @param {string} name
     * @param {number} value
     */
    refuse(name, value) {
      const control = controls.get(name);
      if (!control || control.field instanceof HTMLTableElement) return;
      control.field.value = numbers.program.written(numbers.asked(name), value, numbers.shown);
      control.read?.();
    },
  };
}

/**
 * Make the groups of inputs, each under its heading.
 *
 * @param {Numbers} numbers
 */
function makeGroups({ description }) {
  const el = make("div", "ys-groups");
  /** @type {Map<string, HTMLDetailsElement>} */
  const byInput = new Map();
  for (const { title, folded, inputs } of description.groups) {
    const group = make("details", "ys-group");
    group.open = !folded;
    group.append(make("summary", "", title), make("div"));
    el.append(group);
    for (const name of inputs) byInput.set(name, group);
  }
  return {
    el,
    /** @param {string} name */
    of: (name) => byInput.get(name),
  };
}
