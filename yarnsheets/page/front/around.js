/* What every page has around its sheet. It runs in the head, before anything is drawn. */

import { isAlone, tellHeight } from "./frame.js";
import { handout } from "./handout.js";
import { makeLookChoices, showLook } from "./look.js";
import { stay } from "./stay.js";

showLook();
document.documentElement.toggleAttribute("data-alone", isAlone);
addEventListener("DOMContentLoaded", () => {
  makeLookChoices();
  tellHeight();
  if (handout) stay(handout);
});
