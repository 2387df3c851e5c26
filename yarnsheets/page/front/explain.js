/* What helps a reader on the spot: words explained where they first stand, and drawings. */

import { make } from "./dom.js";

/** @import {Asked, Description} from "./types" */

/**
 * Make what explains inputs; each word is explained once on a page.
 *
 * @param {Description} description
 * @param {string} id starts the ids of the explanations
 */
export function makeExplain({ glossary, drawings }, id) {
  const left = new Map(Object.entries(glossary));

  return {
    /**
     * Make an input's hint, with what explains the words that it or its title says first.
     *
     * @param {Asked} asked
     */
    hint({ title, measure }) {
      const el = make("p", "ys-hint", measure);
      for (const [word, meaning] of left) {
        const stem = word.replace(/s$/, "");
        if (!new RegExp(`\\b${stem}s?\\b`, "i").test(`${title} ${measure}`)) continue;
        left.delete(word);
        const popover = make("span", "ys-meaning", meaning);
        popover.id = `${id}-${word}`;
        popover.popover = "auto";
        const button = make("button", "ys-term", `What ${stem === word ? "is" : "are"} ${word}?`);
        button.type = "button";
        button.popoverTargetElement = popover;
        el.append(" ", button, popover);
      }
      return el;
    },

    /**
     * Make the drawing of how an input is measured, folded; nothing if there is none.
     *
     * @param {Asked} asked
     */
    drawing({ drawing, title }) {
      const svg = drawing && drawings[drawing];
      if (!svg) return [];
      const el = make("details", "ys-how");
      const summary = make("summary", "", "How do I measure this?");
      summary.setAttribute("aria-label", `How do I measure this? ${title}`);
      const picture = make("div");
      picture.innerHTML = svg; // of our own
      el.append(summary, picture);
      return [el];
    },
  };
}
