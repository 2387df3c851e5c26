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
      el.classList.toggle("ys-warned", !numbers.hasAnswer);
    },

    /** Say the answer aloud: only what has settled. */
    speak: () => setText(spoken, sentence.textContent ?? ""),

    /**
     * Mark the answer as one for other numbers than those typed.
     *
     * @param {string[]} wrong the names of the inputs to look at
     * @param {boolean} isTyping whether one is being typed
     */
    mark(wrong, isTyping) {
      const titles = wrong.map((name) => numbers.asked(name).title.toLowerCase());
      const typing = isTyping ? "Press Enter, or leave the box, for the new one." : "";
      const look = titles.length ? `Look at: ${titles.join(", ")}.` : typing;
      setText(stale, look && `This answer is for the last good numbers. ${look}`);
      stale.hidden = !look;
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
    el.hidden = !numbers.hasAnswer;
    if (!el.open || el.hidden) return;
    const now = makeList("ol", numbers.arithmetic);
    steps.replaceWith(now);
    steps = now;
  }
  el.addEventListener("toggle", update);
  return { el, update };
}
