/* The handle on a chart's marked point: dragging it moves an input. */

import { make } from "./dom.js";

/**
 * @import {View} from "vega"
 * @import {Grip} from "./types"
 * @import {Numbers} from "./numbers.js"
 */

/**
 * What a handle tells of the hand on it.
 *
 * @typedef {object} Hand
 * @property {(name: string, shown: number) => void} move an input to about a shown number
 * @property {() => void} hold
 * @property {() => void} drop
 */

/**
 * Make a handle. It has no place until the chart is drawn.
 *
 * @param {Numbers} numbers
 * @param {Grip} grip
 * @param {Hand} hand
 */
export function makeGrip(numbers, { input, x, y, when }, hand) {
  const el = make("div", "ys-grip");
  el.title = `Drag to change: ${numbers.asked(input).title.toLowerCase()}`;
  el.hidden = true;
  /** @type {View | undefined} */
  let view;
  let left = 0;

  el.addEventListener("pointerdown", (event) => {
    const frame = el.parentElement;
    if (!view || !frame) return;
    event.preventDefault();
    el.setPointerCapture(event.pointerId);
    hand.hold();
    const start = frame.getBoundingClientRect().left;
    const zoom = frame.currentCSSZoom ?? 1; // of large type
    /** @param {PointerEvent} moved */
    const drag = (moved) => {
      if (!view) return;
      const inside = Math.min(Math.max((moved.clientX - start) / zoom - left, 1), view.width());
      hand.move(input, view.scale("x").invert(inside));
    };
    el.addEventListener("pointermove", drag);
    el.addEventListener(
      "lostpointercapture",
      () => {
        el.removeEventListener("pointermove", drag);
        hand.drop();
      },
      { once: true },
    );
  });

  /** @param {string} name */
  const shown = (name) =>
    numbers.toShown(
      /** @type {string} */ (numbers.dimensions[name]),
      /** @type {number} */ (numbers.known[name]),
    );

  return {
    el,

    /**
     * Stand on the marked point of a chart as it is drawn now.
     *
     * @param {View} drawn
     * @param {{left: number, top: number}} gap around the chart
     */
    place(drawn, gap) {
      view = drawn;
      left = gap.left;
      el.hidden = !numbers.program.holds(when, numbers.known);
      const [across, up] = [drawn.scale("x")(shown(x)), drawn.scale("y")(shown(y))];
      el.style.transform = `translate(${across + left}px, ${up + gap.top}px)`;
    },
  };
}
