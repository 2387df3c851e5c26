/* The answer in words, and the arithmetic behind it. */

import { make, makeList, makePart, setText } from "./dom.js";

/** @import {Numbers} from "./numbers.js" */

/**
 * Make the answer: one sentence or a few, in sight all the time.
 *
 * @param {Numbers} numbers
 */
export function makeAnswer(numbers) {
  const el = makePart("section", "ys-answer", "Answer");
  const sentence = make("p", "ys-sentence");
  const stale = make("p", "ys-stale");
  stale.hidden = true;
  const spoken = make("p", "ys-spoken"); // for screen readers
  spoken.setAttribute("role", "status");
  el.append(sentence, stale, spoken);

  return {
    el,

    update() {
      setText(sentence, numbers.sentence);
      el.classList.toggle("ys-warned", numbers.found.warnings.length > 0);
    },

    /** Say the answer aloud: only what has settled. */
    speak: () => setText(spoken, sentence.textContent ?? ""),

    /**
     * Mark the answer as one for other numbers than those typed.
     *
     * @param {string[]} wrong the names of the inputs to look at
     */
    mark(wrong) {
      const titles = wrong.map((name) => numbers.asked(name).title.toLowerCase());
      stale.hidden = !wrong.length;
      el.classList.toggle("ys-old", wrong.length > 0);
      setText(
        stale,
        wrong.length
          ? `This answer is for the last good numbers. Look at: ${titles.join(", ")}.`
          : "",
      );
    },
  };
}

/**
 * Make the arithmetic, folded: it is written when it is unfolded.
 *
 * @param {Numbers} numbers
 */
export function makeArithmetic(numbers) {
  const el = make("details", "ys-worked");
  let steps = makeList("ol", []);
  el.append(make("summary", "", "The arithmetic, with your numbers"), steps);

  function update() {
    if (!el.open) return;
    const now = makeList("ol", numbers.arithmetic);
    steps.replaceWith(now);
    steps = now;
  }
  el.addEventListener("toggle", update);
  return { el, update };
}
