/* How the reader wants pages to look: light or dark, and large type for a projector. */

import { make } from "./dom.js";
import { keep, kept } from "./kept.js";

const KEPT = "yarnsheets-look";
const KEY = "l";
const LOOKS = { system: "as the system", light: "light", dark: "dark" };
const page = document.documentElement;

/** @type {{look: string, type: string}} */
const chosen = { look: "system", type: "usual", ...kept(KEPT) };

/** Have the page look as was chosen. */
export function showLook() {
  page.dataset["look"] = chosen.look;
  page.dataset["type"] = chosen.type;
}

/** @param {Partial<typeof chosen>} change */
function choose(change) {
  Object.assign(chosen, change);
  keep(KEPT, chosen);
  showLook();
}

/** Put what there is to choose at the top of the page. */
export function makeLookChoices() {
  const label = make("label", "", "Colours ");
  const picker = make("select");
  picker.append(...Object.entries(LOOKS).map(([value, words]) => new Option(words, value)));
  picker.value = chosen.look;
  picker.addEventListener("change", () => choose({ look: picker.value }));
  label.append(picker);

  const large = make("button", "", "Large type");
  large.type = "button";
  large.title = "For a projector; the key L does the same";
  const press = () => {
    choose({ type: chosen.type === "large" ? "usual" : "large" });
    large.setAttribute("aria-pressed", String(chosen.type === "large"));
  };
  large.setAttribute("aria-pressed", String(chosen.type === "large"));
  large.addEventListener("click", press);
  addEventListener("keydown", (event) => {
    const isTyping =
      event.target instanceof Element && event.target.matches("input, textarea, select");
    if (
      event.key.toLowerCase() !== KEY ||
      isTyping ||
      event.ctrlKey ||
      event.altKey ||
      event.metaKey
    )
      return;
    press();
  });

  const choices = make("div", "look");
  choices.append(large, label);
  document.querySelector("header")?.append(choices);
}
