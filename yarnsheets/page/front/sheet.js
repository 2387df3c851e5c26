/* A sheet on a page: joins its numbers, its controls, its sentences and its charts.
 *
 * `mount` knows no Jupyter. It is given the sheet's description and program, which hold every
 * rule of numbers and words, and a host, which brings controls and hears what has settled.
 */

import { makeAnswer, makeArithmetic } from "./answer.js";
import { makeControls } from "./controls.js";
import { make } from "./dom.js";
import { makeFigures } from "./figures.js";
import { aboutToBeSeen } from "./frame.js";
import { makeKeep } from "./keep.js";
import { makeListings } from "./listings.js";
import { readLink, writeLink } from "./link.js";
import { Numbers } from "./numbers.js";
import { makeOnward } from "./onward.js";
import { roundNear } from "./track.js";
import { makeUnits } from "./units.js";

/** @import {Description, Host, Program, Value} from "./types" */

const SETTLE_MS = 250; // how long a hand rests before its numbers have settled

const NARROW = "screen and (max-width: 820px)"; // as sheet.css has it

let mounts = 0;

/**
 * Put a sheet into an element; give what takes it away again.
 *
 * @param {Element} el
 * @param {Description} description
 * @param {Program} program
 * @param {Host} host
 * @returns {Promise<() => void>}
 */
export async function mount(el, description, program, host) {
  const id = `yarnsheet-${++mounts}`;
  const root = make("div", "ys-sheet");
  const { address } = host;
  const linked = readLink(address?.read() ?? "", description, program);
  const numbers = new Numbers(
    description,
    program,
    { ...host.values, ...linked.values },
    { ...host.choice, ...linked.choice },
  );

  const answer = makeAnswer(numbers, (name) => controls.lead(name));
  const arithmetic = makeArithmetic(numbers);
  const onward = makeOnward(numbers, host);
  const keep = makeKeep(numbers, host);
  const listings = makeListings(numbers, host);
  const figures = makeFigures(numbers, (name, shown) => {
    change(name, roundNear(numbers, numbers.asked(name), shown));
  });
  const units = await makeUnits(numbers, host, `${id}-units`, (choice) => {
    const { measure = numbers.choice.measure } = choice;
    const anew = measure === numbers.choice.measure ? {} : numbers.startAnew("measure");
    numbers.change(anew, choice);
    controls.forget(Object.keys(anew));
    update();
    controls.readAgain();
    settle();
  });
  const controls = await makeControls(numbers, host, id, {
    change,
    stale() {
      const [wrong, isTyping] = [controls.wrong(), controls.isTyping()];
      answer.mark(wrong, isTyping);
      root.classList.toggle("ys-old", isTyping || wrong.length > 0);
    },
  });
  if (units.el) controls.first.prepend(units.el);

  let resting = 0; // the timer of a hand that has moved something

  /**
   * @param {string} name
   * @param {Value} value
   * @param {Element} [typedIn] the field not to touch
   */
  function change(name, value, typedIn) {
    const anew = value === numbers.value(name) ? {} : numbers.startAnew(name);
    numbers.change({ ...anew, [name]: value });
    controls.forget(Object.keys(anew));
    update(typedIn);
    clearTimeout(resting);
    resting = window.setTimeout(settle, SETTLE_MS);
  }

  /**
   * Bring the whole page to the present numbers.
   *
   * @param {Element} [typedIn] the field not to touch
   */
  function update(typedIn) {
    answer.update();
    units.update();
    controls.update(typedIn);
    arithmetic.update();
    listings.update();
    figures.update();
  }

  function settle() {
    clearTimeout(resting);
    answer.speak();
    onward.point();
    listings.drawCodes();
    address?.write(writeLink(numbers.values, numbers.choice));
    host.settle({ ...numbers.values }, { ...numbers.choice });
  }

  /**
   * Show what a link says; a number that cannot be stands in its box, with the reason.
   *
   * @param {ReturnType<typeof readLink>} link
   */
  function take({ refused }) {
    for (const [name, value] of Object.entries(refused)) controls.refuse(name, value);
    controls.unfold();
    settle();
  }

  root.append(answer.el, controls.el, figures.el, arithmetic.el, onward.el, keep.el);
  if (listings.el) figures.el.after(listings.el);
  el.replaceChildren(root);
  const narrow = matchMedia(NARROW);
  controls.unfold();
  const place = () => figures.place(narrow.matches, controls.placeOf);
  narrow.addEventListener("change", place);
  place();
  update();
  answer.speak();
  onward.point();
  if (address?.read()) take(linked);
  address?.onChange((text) => {
    const link = readLink(text, description, program);
    numbers.change(link.values, link.choice);
    update();
    take(link);
  });
  host.onGiven((values, choice) => {
    numbers.change(values, choice);
    update();
  });
  aboutToBeSeen(root).then(host.charts).then(figures.start);

  let fold = () => {};
  const onPrint = () => {
    fold = arithmetic.unfold();
    keep.date();
    listings.drawCodes();
  };
  const onPrinted = () => fold();
  addEventListener("beforeprint", onPrint);
  addEventListener("afterprint", onPrinted);

  return () => {
    removeEventListener("beforeprint", onPrint);
    removeEventListener("afterprint", onPrinted);
    clearTimeout(resting);
    narrow.removeEventListener("change", place);
    figures.end();
  };
}
