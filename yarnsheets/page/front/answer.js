/* The answer in words, and the arithmetic behind it. */

import { make, makeList, makePart, setText } from "./dom.js";
import { textOf } from "./numbers.js";

/** @import {Numbers, Piece} from "./numbers.js" */

/**
 * Make the answer: a headline, in sight all the time, and what it rests on.
 *
 * @param {Numbers} numbers
 * @param {(input: string) => void} lead the reader to the box of a number
 */
export function makeAnswer(numbers, lead) {
  const el = makePart("section", "ys-answer", "Answer");
  const sentence = make("p", "ys-sentence");
  const headline = make("span", "ys-headline");
  const beside = make("span", "ys-beside");
  sentence.append(headline, beside);
  const stale = make("p", "ys-stale");
  stale.hidden = true;
  const spoken = make("p", "ys-spoken"); // for screen readers
  spoken.setAttribute("role", "status");
  el.append(sentence, stale, spoken);

  /**
   * @param {Element} place
   * @param {Piece[]} pieces
   */
  function write(place, pieces) {
    if (place.textContent !== textOf(pieces))
      place.replaceChildren(...withLeads(numbers, pieces, lead));
  }

  return {
    el,

    update() {
      const now = numbers.answer;
      write(headline, now.headline);
      write(beside, now.beside);
      el.classList.toggle("ys-warned", !numbers.hasAnswer);
    },

    /** Say the answer aloud: only what has settled. */
    speak: () => setText(spoken, numbers.sentence),

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

  return {
    el,
    update,

    /**
     * Unfold the steps for paper; give what folds them again, if they were.
     *
     * @returns {() => void}
     */
    unfold() {
      const wasOpen = el.open;
      el.open = true;
      update();
      return () => {
        el.open = wasOpen;
      };
    },
  };
}

/**
 * Words with the number wanted large, and numbers of the reader's own as buttons that lead to
 * their boxes. One that is said again is no further stop of the Tab key.
 *
 * @param {Numbers} numbers
 * @param {Piece[]} pieces
 * @param {(input: string) => void} lead
 */
function withLeads(numbers, pieces, lead) {
  const met = new Set();
  return pieces.map(({ text, input, isWanted }) => {
    if (isWanted) return make("strong", "ys-wanted", text);
    if (!input) return text;
    const button = make("button", "ys-lead", text);
    button.type = "button";
    button.title = `Change: ${numbers.asked(input).title}`;
    if (met.has(input)) button.tabIndex = -1;
    met.add(input);
    button.addEventListener("click", () => lead(input));
    return button;
  });
}
