/* The front end of a sheet: joins controls, sentences and charts in the browser.
 *
 * `mount` knows no Jupyter: it reads a sheet's description and is given a host, which brings
 * sliders, boxes and pickers and hears what has settled. `render`, at the end, is the host for
 * Jupyter and Voila. Numbers are worked out by the chart library from the very text that the
 * Python formulas emitted; nothing is computed here but units, steps and positions.
 */

const SETTLE_MS = 250;
const GAP = { right: 24, top: 34, bottom: 46 }; // and on the left, what the chart asks for

// ---- numbers and sentences: the same rules as text.py ------------------------------------

export function show(value, digits = 3, up = false) {
  if (!Number.isFinite(value)) return "–";
  const magnitude = value ? Math.floor(Math.log10(Math.abs(value))) : 0;
  const decimals = Math.min(Math.max(digits - 1 - magnitude, 0), 6);
  const step = 10 ** -decimals;
  const rounded = up ? Math.ceil(value / step - 1e-6) * step : value;
  let [whole, part = ""] = rounded.toFixed(decimals).split(".");
  part = part.replace(/0+$/, "");
  whole = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  return part ? `${whole}.${part}` : whole;
}

/* A sum of money, always with its hundredths. */
function money(value) {
  if (!Number.isFinite(value)) return "–";
  return value.toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ",");
}

const SLOT = /\{(\w+)(?:@([\w/*]+))?(?::(\d+))?([!^]*)\}/g;

/* A number as people write it, by the rules of units.parse_number; NaN if it is none. */
export function parseNumber(text) {
  const plain = [...text]
    .map((sign) =>
      /[\u00bc-\u00be\u2150-\u215e\u2189]/.test(sign) ? ` ${sign.normalize("NFKC")}` : sign,
    )
    .join("")
    .replaceAll("\u2044", "/")
    .replace(/[\u2212\u2013]/g, "-")
    .trim();
  const size = plain.replace(/^-\s*/, "");
  let number = NaN;
  const fraction = size.match(/^(?:(\d{1,3}(?:,\d{3})+|\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)$/);
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(size)) number = Number(size.replaceAll(",", ""));
  else if (/^(\d+(\.\d*)?|\.\d+|0,\d+|\d+,(?!\d{3}$)\d+)$/.test(size))
    number = Number(size.replace(",", "."));
  else if (fraction) {
    const [whole, top, bottom] = fraction
      .slice(1)
      .map((part) => Number((part ?? "0").replaceAll(",", "")));
    if (bottom > 0 && (fraction[1] === undefined || top < bottom)) number = whole + top / bottom;
  }
  return plain.startsWith("-") ? -number : number;
}

/* The round step (1, 2 or 5 times a power of ten) at or below a number. */
function roundStep(value) {
  const ten = 10 ** Math.floor(Math.log10(value) + 1e-9);
  return ten * ([5, 2].find((k) => value / ten >= k * (1 - 1e-9)) ?? 1);
}

/* The round number at or above one, for the end of an axis. */
function roundAbove(value) {
  if (!(value > 0) || !Number.isFinite(value)) return 1;
  const step = roundStep(value);
  return value <= step * (1 + 1e-9) ? step : roundStep(step * 2.5);
}

/* The other end of a range: in tex, the high end in yards per pound is the low one. */
const otherEnd = (name) =>
  name.replace(/_(low|high)$/, (_, end) => (end === "low" ? "_high" : "_low"));

function make(tag, className, text) {
  const el = document.createElement(tag);
  if (className) el.className = className;
  if (text) el.textContent = text;
  return el;
}

// ---- the sheet ---------------------------------------------------------------------------

let mounts = 0;

export async function mount(el, sheet, host) {
  const id = `yarnsheet-${++mounts}`;
  const { View, parse, compile } = await host.charts();

  const linked = readLink(host.address?.read() ?? "", sheet);
  const values = { ...host.values, ...linked.values };
  const choice = { ...host.choice, ...linked.choice };
  let found = host.found; // what Python alone could work out
  const errors = {};
  const controls = {};
  let held = null; // the chart whose point is being dragged; axes keep still meanwhile
  let settleTimer = 0;

  // -- units

  const measure = () => sheet.measures.find((m) => m.name === choice.measure);
  const unitOf = (dimension) =>
    dimension === "grist" ? choice.gristUnit : measure().units[dimension];
  const label = (unit) => sheet.unitLabels[unit] ?? "";
  const behind = (unit) => (unit === "percent" ? "%" : `\u00a0${label(unit)}`);
  const scaled = ([factor, power], value) => (power === 1 ? value * factor : factor / value);
  const unscaled = ([factor, power], value) => (power === 1 ? value / factor : factor / value);
  const scaleOf = (dimension, unit = unitOf(dimension)) => sheet.scales[dimension][unit];
  const hasUnit = (dimension) => dimension in sheet.scales;
  const toShown = (dimension, value, unit) =>
    hasUnit(dimension) ? scaled(scaleOf(dimension, unit), value) : value;
  const toOwn = (dimension, value) =>
    hasUnit(dimension) ? unscaled(scaleOf(dimension), value) : value;

  function unitParams() {
    const params = { grist_power: scaleOf("grist")[1] };
    for (const dimension of Object.keys(sheet.scales))
      params[`${dimension}_factor`] = scaleOf(dimension)[0];
    return params;
  }

  const given = Object.keys(sheet.inputs).filter((name) => sheet.inputs[name].kind === "number");

  /* What the numbers are worked out from. */
  function signals() {
    const inputs = Object.fromEntries(given.map((name) => [name, values[name]]));
    return { ...inputs, ...found.numbers, ...unitParams() };
  }

  // -- numbers: a chart without a picture, which computes the emitted text

  const reaches = Object.assign({}, ...sheet.charts.map((chart) => chart.reach));
  const numbers = new View(
    parse({
      signals: [
        ...Object.entries(signals()).map(([name, value]) => ({ name, value })),
        ...Object.entries(sheet.numbers).map(([name, n]) => ({ name, update: n.expr })),
        ...Object.entries(reaches).map(([name, expr]) => ({ name: `reach_${name}`, update: expr })),
      ],
    }),
    { renderer: "none" },
  ).run();
  const read = (name) => numbers.signal(name);
  const dimensionOf = (name) =>
    (sheet.inputs[name] ?? sheet.numbers[name] ?? sheet.results[name]).dimension;

  /* A number as shown: of a range, in a unit that runs the other way, the other end. */
  function readShown(name, unit) {
    const dimension = dimensionOf(name);
    const turned = hasUnit(dimension) && scaleOf(dimension, unit)[1] < 0;
    return toShown(dimension, read(turned ? otherEnd(name) : name), unit);
  }

  const fill = (template) =>
    template.replace(SLOT, (_, name, unit, digits, flags) => {
      const dimension = dimensionOf(name);
      if (typeof values[name] === "string") return values[name];
      if (typeof read(name) === "string") return read(name);
      if (dimension === "money") return money(read(name));
      const text = show(readShown(name, unit), Number(digits ?? 3), flags.includes("^"));
      if (flags.includes("!") || !hasUnit(dimension)) return text;
      return text + behind(unit ?? unitOf(dimension));
    });
  const said = (lines) =>
    lines.filter(([when]) => when === null || read(when)).map(([, text]) => fill(text));

  // -- the page

  const answer = make("section", "ys-answer");
  answer.setAttribute("aria-label", "Answer");
  const sentence = make("p", "ys-sentence");
  const stale = make("p", "ys-stale");
  stale.hidden = true;
  const spoken = make("p", "ys-spoken"); // for screen readers: only what has settled
  spoken.setAttribute("role", "status");
  answer.append(sentence, stale, spoken);

  const inputs = make("section", "ys-inputs");
  inputs.setAttribute("aria-label", "Your numbers");
  const figures = make("section", "ys-charts");
  figures.setAttribute("aria-label", "Charts");
  const details = make("details", "ys-worked");
  const steps = make("ol");
  details.append(make("summary", "", "The arithmetic, with your numbers"), steps);
  details.addEventListener("toggle", writeWorked);
  const root = make("div", "ys-sheet");
  const onward = make("nav", "ys-onward");
  const keep = make("section", "ys-keep");
  root.append(answer, inputs, figures, details, onward, keep);

  // a choice of units is offered where it changes something
  const described = [sheet.inputs, sheet.numbers, sheet.results].flatMap(Object.values);
  const unitsOf = {
    measure: ({ dimension }) => new Set(sheet.measures.map((m) => m.units[dimension])).size > 1,
    gristUnit: ({ dimension }) => dimension === "grist",
  };
  const units = make("div", "ys-units");
  for (const [name, text] of [
    ["measure", "Length, weight"],
    ["gristUnit", "Grist"],
  ]) {
    const picker = await host.pick(name);
    const select = picker.querySelector("select");
    select.id = `${id}-${name}`;
    const tag = make("label", "ys-label", text);
    tag.htmlFor = select.id;
    const group = make("div", "ys-unit-choice");
    group.append(tag, picker);
    if (described.some(unitsOf[name])) units.append(group);
    select.addEventListener("change", () => {
      choice[name] = optionsOf(name)[select.selectedIndex];
      changeUnits();
    });
    controls[name] = { select };
  }
  if (units.children.length) inputs.append(units);

  function optionsOf(name) {
    return name === "measure"
      ? sheet.measures.map((m) => m.name)
      : sheet.gristUnits.map((g) => g.unit);
  }

  const onTrack = (input, value) => (input.step === null ? Math.log10(value) : value);
  const offTrack = (input, at) => (input.step === null ? 10 ** at : at);
  const kinds = { number: addNumber, readings: addReadings, pick: addPick, words: addWords };
  const finer = make("details", "ys-finer");
  finer.append(make("summary", "", "Finer points"));

  for (const [name, input] of Object.entries(sheet.inputs)) {
    const group = make("div", `ys-input ys-${input.kind}`);
    group.dataset.name = name;
    const tag = make("label", "ys-label", input.title);
    tag.htmlFor = `${id}-${name}`;
    const error = make("p", "ys-error");
    error.id = `${id}-${name}-error`;
    error.hidden = true;
    const hint = make("p", "ys-hint", input.measure);
    hint.id = `${id}-${name}-hint`;
    controls[name] = { error };
    group.append(tag, ...(await kinds[input.kind](name, input)), error, hint);
    const field = controls[name].box;
    field.id = tag.htmlFor;
    field.setAttribute("aria-describedby", `${error.id} ${hint.id}`);
    (input.more ? finer : inputs).append(group);
  }
  if (finer.children.length > 1) inputs.append(finer);

  if (sheet.cautions.length) {
    const cautions = make("aside", "ys-cautions");
    const list = make("ul");
    list.append(...sheet.cautions.map((caution) => make("li", "", caution)));
    cautions.append(make("h3", "", "Before you start"), list);
    inputs.append(cautions);
  }

  async function addNumber(name, input) {
    const slider = await host.slider(name);
    const holder = await host.box(name);
    const box = holder.querySelector("input");
    box.inputMode = "decimal";
    box.autocomplete = "off";
    const unit = make("span", "ys-unit");
    const typed = make("div", "ys-typed");
    typed.append(holder, unit);
    slider.name(input.title);
    slider.onMove((at) => move(name, toShown(input.dimension, offTrack(input, at))));
    slider.el.addEventListener("keydown", (event) => pressed(name, event), { capture: true });
    box.addEventListener("input", () => type(name));
    box.addEventListener("blur", () => errors[name] ?? writeBox(name));
    const showNumber = (keepText) => {
      slider.set(onTrack(input, values[name]));
      unit.textContent = unitLabel(input);
      slider.say(`${show(toShown(input.dimension, values[name]), 6)} ${unit.textContent}`.trim());
      if (!keepText) writeBox(name);
    };
    Object.assign(controls[name], { box, type, show: showNumber });
    return [typed, slider.el];
  }

  async function addReadings(name, input) {
    const holder = await host.lines(name);
    const box = holder.querySelector("textarea");
    const unit = make("span", "ys-unit");
    box.addEventListener("input", () => typeLines(name));
    box.addEventListener("blur", () => errors[name] ?? writeLines(name));
    const showLines = (keepText) => {
      unit.textContent = `${unitLabel(input)}, one a line`.replace(/^, /, "");
      if (!keepText) writeLines(name);
    };
    Object.assign(controls[name], { box, type: typeLines, show: showLines });
    return [unit, holder];
  }

  async function addPick(name, input) {
    const holder = await host.pick(name);
    const box = holder.querySelector("select");
    const kept = Object.keys(input.options);
    box.addEventListener("change", () => set(name, kept[box.selectedIndex], box));
    Object.assign(controls[name], {
      box,
      show: () => (box.selectedIndex = kept.indexOf(values[name])),
    });
    return [holder];
  }

  async function addWords(name) {
    const holder = await host.box(name);
    const box = holder.querySelector("input");
    box.maxLength = MOST_LETTERS;
    box.addEventListener("input", () => set(name, box.value, box));
    Object.assign(controls[name], { box, show: (keepText) => keepText || (box.value = values[name]) });
    return [holder];
  }

  const unitLabel = ({ dimension }) => (hasUnit(dimension) ? label(unitOf(dimension)) : "");

  // -- changes

  const clamp = (input, value) => Math.min(Math.max(value, input.low), input.high);

  function stepAt(input, shown) {
    return input.step ?? roundStep(Math.max(shown * 0.01, 1e-9));
  }

  /* Set an input to the round number nearest to one shown. */
  function move(name, shown) {
    const input = sheet.inputs[name];
    const step = stepAt(input, shown);
    const round = Number((Math.round(shown / step) * step).toPrecision(12));
    set(name, clamp(input, toOwn(input.dimension, round)));
  }

  function pressed(name, event) {
    const input = sheet.inputs[name];
    const many = {
      ArrowRight: 1,
      ArrowUp: 1,
      ArrowLeft: -1,
      ArrowDown: -1,
      PageUp: 10,
      PageDown: -10,
    };
    if (event.key === "Home") set(name, input.low);
    else if (event.key === "End") set(name, input.high);
    else if (event.key in many) {
      const shown = toShown(input.dimension, values[name]);
      const towards =
        toShown(input.dimension, input.high) > toShown(input.dimension, input.low) ? 1 : -1;
      const step = stepAt(input, shown);
      move(name, Math.max(shown + towards * many[event.key] * step, step));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function type(name) {
    const input = sheet.inputs[name];
    const { box } = controls[name];
    const text = box.value.trim();
    if (text.endsWith("%") && input.percent) return complain(name, input.percent);
    const { value, wrong } = understand(input, text.replace(/\s*%$/, ""));
    if (wrong) return complain(name, wrong);
    set(name, input.step === 1 ? Math.round(value) : value, box);
  }

  function typeLines(name) {
    const input = sheet.inputs[name];
    const { box } = controls[name];
    const lines = box.value.split("\n").map((line) => line.trim());
    const understood = [];
    for (const [at, line] of lines.entries()) {
      if (!line) continue;
      const { value, wrong } = understand(input, line);
      if (wrong) return complain(name, `Line ${at + 1}: ${wrong}`);
      understood.push(value);
    }
    set(name, understood, box);
  }

  /* A typed number in the sheet's unit, or what is wrong with it in the reader's words. */
  function understand(input, text) {
    const number = parseNumber(text);
    const value = toOwn(input.dimension, number);
    const tolerance = 1e-9 * input.high;
    if (value >= input.low - tolerance && value <= input.high + tolerance)
      return { value: clamp(input, value) };
    const ends = [input.low, input.high].map((end) => toShown(input.dimension, end));
    const [low, high] = ends.sort((a, b) => a - b).map((end) => show(end));
    const unit = hasUnit(input.dimension) ? behind(unitOf(input.dimension)) : "";
    const range = `${input.title} can be ${low} to ${high}${unit}.`;
    if (!text) return { wrong: `Type a number here. ${range}` };
    if (Number.isNaN(number))
      return { wrong: `“${text}” is not a number such as 12, 9.5 or 9 3/8. ${range}` };
    return {
      wrong: `${show(number, 6)}${unit} is outside the range. ${range} Check the unit, or measure again.`,
    };
  }

  function complain(name, message) {
    errors[name] = message;
    showErrors();
  }

  function set(name, value, typedIn = null) {
    delete errors[name];
    values[name] = value;
    refresh(typedIn);
    clearTimeout(settleTimer);
    settleTimer = setTimeout(settle, SETTLE_MS);
  }

  function settle() {
    spoken.textContent = sentence.textContent;
    host.address?.write(writeLink(values, choice));
    pointOnward();
    host.settle({ ...values }, { ...choice });
  }

  /* Take what a link says; a number that it gives out of range stands in its box, with the reason. */
  function take({ refused }) {
    for (const [name, value] of Object.entries(refused)) {
      controls[name].box.value = written(sheet.inputs[name], value);
      controls[name].type(name);
    }
    settle();
  }

  function changeUnits() {
    embedAll();
    refresh();
    // What was refused in one unit may be right in another.
    for (const name of Object.keys(errors)) controls[name].type(name);
    settle();
  }

  // -- drawing

  const written = (input, value) => show(toShown(input.dimension, value), 6).replaceAll(",", "");

  function writeBox(name) {
    controls[name].box.value = written(sheet.inputs[name], values[name]);
  }

  /* Rewrite the lines only if they say something else: the reader's own spelling stays. */
  function writeLines(name) {
    const input = sheet.inputs[name];
    const { box } = controls[name];
    const now = values[name].map((value) => written(input, value));
    const said = box.value.split("\n").filter((line) => line.trim());
    const same =
      said.length === now.length &&
      said.every((line, at) => show(parseNumber(line), 6).replaceAll(",", "") === now[at]);
    if (!same) box.value = now.join("\n");
  }

  function showAnswer() {
    const warned = found.warnings.length > 0;
    sentence.textContent = warned ? found.warnings.join(" ") : said(sheet.answer).join(" ");
    answer.classList.toggle("ys-warned", warned);
    const busy = waiting();
    answer.setAttribute("aria-busy", busy);
    save.disabled = busy;
    showErrors();
  }

  /* Whether Python has yet to work out something for the present values. */
  const waiting = () =>
    Object.keys(sheet.results).length > 0 && JSON.stringify(found.for) !== JSON.stringify(values);

  function showErrors() {
    for (const name of Object.keys(sheet.inputs)) {
      const { error, box } = controls[name];
      error.textContent = errors[name] ?? "";
      error.hidden = !errors[name];
      box.setAttribute("aria-invalid", Boolean(errors[name]));
    }
    const wrong = Object.keys(errors);
    stale.hidden = !wrong.length;
    answer.classList.toggle("ys-old", wrong.length > 0);
    stale.textContent = wrong.length
      ? `This answer is for the last good numbers. Look at: ${wrong.map((name) => sheet.inputs[name].title.toLowerCase()).join(", ")}.`
      : "";
  }

  function writeWorked() {
    if (!details.open) return;
    const lines = said(sheet.worked[`${choice.measure}|${choice.gristUnit}`]);
    steps.replaceChildren(...lines.map((line) => make("li", "", line)));
  }

  /* Bring the whole page to the present values; `typedIn` is the box not to touch. */
  function refresh(typedIn = null) {
    for (const [name, value] of Object.entries(signals())) numbers.signal(name, value);
    numbers.run();

    showAnswer();
    for (const [name, control] of Object.entries(controls))
      control.show?.(control.box === typedIn || Boolean(errors[name]));
    writeWorked();
    charts.forEach(draw);
  }

  function draw(chart) {
    const words = said(chart.caption).join(" ");
    if (chart.words.textContent !== words) {
      chart.words.textContent = words;
      chart.frame.setAttribute("aria-label", `${chart.title}. ${words}`);
    }
    for (const name of chart.params) {
      if (name in sheet.labels) chart.view.signal(name, fill(sheet.labels[name]));
      else if (!(name in chart.reach)) chart.view.signal(name, read(name));
      else if (!held) chart.view.signal(name, roundAbove(read(`reach_${name}`)));
    }
    if (chart.found !== found) {
      for (const name of chart.tables) chart.view.data(name, structuredClone(found.tables[name]));
      chart.found = found;
    }
    chart.view.runAsync().then(() => placeGrip(chart));
  }

  function placeGrip({ view, grip, handle, left }) {
    if (!grip) return;
    handle.hidden = grip.when !== null && !read(grip.when);
    const at = (axis) => view.scale(axis)(toShown(dimensionOf(grip[axis]), read(grip[axis])));
    handle.style.transform = `translate(${at("x") + left}px, ${at("y") + GAP.top}px)`;
  }

  // -- taking the numbers along

  const button = (text, act) => {
    const el = make("button", "ys-button", text);
    el.type = "button";
    el.addEventListener("click", act);
    keep.append(el);
    return el;
  };
  const save = button("Save the numbers (CSV)", () =>
    saveFile(`${host.name}.csv`, writeRows(numberRows()), "text/csv"),
  );
  if (host.address) button("Copy a link to these numbers", copyLink);
  button("Print", () => window.print());
  const copied = make("div", "ys-copied");
  copied.setAttribute("role", "status");
  keep.append(copied);

  /* Show the link too: a page that is not from this machine may not copy by itself. */
  async function copyLink() {
    const box = make("input");
    box.readOnly = true;
    box.value = host.address.of(writeLink(values, choice));
    box.setAttribute("aria-label", "Link to these numbers");
    const note = make("span", "", "Copy this link: it opens wherever this page does.");
    copied.replaceChildren(note, box);
    box.select();
    try {
      await navigator.clipboard.writeText(box.value);
      note.textContent = "The link is copied. It opens wherever this page does.";
    } catch {
      // it stands there, selected
    }
  }

  const ways = (host.address ? sheet.onward : []).map((way) => {
    const link = make("a", "", way.question);
    const item = make("li");
    item.append(link);
    return { ...way, link, item };
  });
  if (ways.length) {
    const list = make("ul");
    list.append(...ways.map(({ item }) => item));
    onward.append(make("h3", "", "Go on with these numbers"), list);
    onward.setAttribute("aria-label", "Go on with these numbers");
    // Not at every move of a slider: when the numbers rest, and when a link is about to be used.
    for (const near of ["pointerover", "focusin"]) onward.addEventListener(near, pointOnward);
  }

  /* Let the links to other worksheets carry what those ask and this one knows. */
  function pointOnward() {
    for (const { worksheet, carries, link } of ways) {
      const known = Object.entries(carries)
        .map(([asked, name]) => [asked, name ? (values[name] ?? read(name)) : []])
        .filter(([, value]) => !Number.isNaN(value));
      link.href = `${worksheet}.ipynb#${writeLink(Object.fromEntries(known), choice)}`;
    }
  }

  /* Every number asked and found, in the units shown. */
  function numberRows() {
    const row = (part, dimension, what, value) => {
      if (typeof value === "string") return [part, what, value, ""];
      const unit = hasUnit(dimension) ? label(unitOf(dimension)) : "";
      return [part, what, Number(value.toPrecision(12)), unit];
    };
    const asked = Object.entries(sheet.inputs).flatMap(([name, { title, dimension, options }]) => {
      const value = options?.[values[name]] ?? values[name];
      if (typeof value === "string") return [row("asked", dimension, title, value)];
      if (!Array.isArray(value))
        return [row("asked", dimension, title, toShown(dimension, value))];
      return value.map((one, at) =>
        row("asked", dimension, `${title}, ${at + 1}`, toShown(dimension, one)),
      );
    });
    const worked = Object.entries({ ...sheet.numbers, ...sheet.results })
      .filter(([, { dimension }]) => dimension !== "flag")
      .map(([name, { dimension, what }]) => {
        const value = dimension === "word" ? read(name) : readShown(name);
        return row("found", dimension, what, value);
      })
      .filter(([, , value]) => value !== "" && !Number.isNaN(value));
    const answered = [["answer", sentence.textContent, "", ""]];
    return [["part", "what", "value", "unit"], ...asked, ...worked, ...answered];
  }

  const charts = sheet.charts.map((chart) => {
    const figure = make("figure", "ys-chart");
    figure.dataset.name = chart.name;
    const words = make("figcaption");
    const frame = make("div", "ys-frame");
    frame.setAttribute("role", "img");
    const picture = make("div", "ys-picture");
    frame.append(picture);
    figure.append(make("h3", "", chart.title), frame, words);
    figures.append(figure);
    const drawn = { ...chart, frame, picture, words };
    if (chart.grip) {
      drawn.handle = make("div", "ys-grip");
      drawn.handle.title = `Drag to change: ${sheet.inputs[chart.grip.input].title.toLowerCase()}`;
      drawn.handle.addEventListener("pointerdown", (event) => grab(drawn, event));
      frame.append(drawn.handle);
    }
    return drawn;
  });

  function grab(chart, event) {
    const { handle, grip, view, frame } = chart;
    event.preventDefault();
    held = chart;
    handle.setPointerCapture(event.pointerId);
    const drag = (moved) => {
      const px = moved.clientX - frame.getBoundingClientRect().left - chart.left;
      const inside = Math.min(Math.max(px, 1), view.width());
      move(grip.input, view.scale("x").invert(inside));
    };
    const drop = () => {
      held = null;
      handle.removeEventListener("pointermove", drag);
      refresh();
    };
    handle.addEventListener("pointermove", drag);
    handle.addEventListener("lostpointercapture", drop, { once: true });
  }

  const roomFor = ({ frame, left }) => Math.max(frame.clientWidth - left - GAP.right, 120);

  /* Make a chart's view: once, and again when units change its axis titles. */
  function embed(chart) {
    const titled = JSON.stringify(chart.spec).replace(/\{(\w+)_unit\}/g, (_, dimension) =>
      label(unitOf(dimension)),
    );
    const padding = { ...GAP, left: chart.left };
    const spec = { ...JSON.parse(titled), width: roomFor(chart), autosize: "none", padding };
    chart.view?.finalize();
    chart.found = null;
    chart.view = new View(parse(compile(spec).spec), {
      renderer: "svg",
      container: chart.picture,
      hover: false,
    });
    chart.picture.view = chart.view; // so that a console, or a test, can read the chart's data
    chart.params = chart.spec.params.map((param) => param.name);
  }
  const embedAll = () => charts.forEach(embed);

  host.onGiven((from, chosen) => {
    Object.assign(values, from);
    const changed = chosen.measure !== choice.measure || chosen.gristUnit !== choice.gristUnit;
    Object.assign(choice, chosen);
    if (changed) {
      showChoice();
      embedAll();
    }
    refresh();
  });
  host.onFound((results) => {
    found = results;
    refresh(document.activeElement);
    pointOnward();
    spoken.textContent = sentence.textContent;
  });

  function showChoice() {
    for (const name of ["measure", "gristUnit"])
      controls[name].select.selectedIndex = optionsOf(name).indexOf(choice[name]);
  }

  el.replaceChildren(root);
  showChoice();
  embedAll();
  refresh();
  pointOnward();
  spoken.textContent = sentence.textContent;
  if (host.address?.read()) take(linked);
  host.address?.onChange((link) => {
    const given = readLink(link, sheet);
    Object.assign(values, given.values);
    Object.assign(choice, given.choice);
    showChoice();
    embedAll();
    refresh();
    take(given);
  });

  const resized = new ResizeObserver(() => {
    for (const chart of charts) {
      if (chart.view.width() === roomFor(chart)) continue;
      chart.view.width(roomFor(chart));
      draw(chart);
    }
  });
  resized.observe(figures);
  return () => {
    resized.disconnect();
    clearTimeout(settleTimer);
    charts.forEach(({ view }) => view.finalize());
    numbers.finalize();
  };
}

// ---- the host for Jupyter and Voila ------------------------------------------------------

/* Voila's page carries the chart library as a file; elsewhere the kernel sends it once. */
function loadCharts(model) {
  const link = document.getElementById("yarnsheets-charts");
  if (link) return import(link.href);
  globalThis.yarnsheetsCharts ??= new Promise((resolve) => {
    model.on("msg:custom", (content, [file]) => {
      if (content.sent === "charts")
        resolve(import(URL.createObjectURL(new Blob([file], { type: "text/javascript" }))));
    });
    model.send({ send: "charts" });
  });
  return globalThis.yarnsheetsCharts;
}

let addressed = false;

/* The address of a worksheet's page holds the numbers of its first sheet; elsewhere there is none. */
function pageAddress() {
  const isPage = document.getElementById("yarnsheets-charts") && /\.ipynb$/.test(location.pathname);
  if (addressed || !isPage) return null;
  addressed = true;
  const of = (link) => `${location.href.split("#")[0]}#${link}`;
  return {
    read: () => location.hash.slice(1),
    of,
    write: (link) => history.replaceState(history.state, "", of(link)),
    onChange: (listen) => addEventListener("hashchange", () => listen(location.hash.slice(1))),
  };
}

async function jupyterHost(model) {
  const manager = model.widget_manager;
  const { inputs, units } = model.get("controls");
  const modelOf = (reference) => manager.get_model(reference.replace("IPY_MODEL_", ""));
  const viewOf = async (control) => {
    const view = await manager.create_view(control);
    view.el.removeAttribute("title");
    for (const titled of view.el.querySelectorAll("[title]")) titled.removeAttribute("title");
    return view;
  };
  const sliders = {};
  let telling = false; // so as not to hear ourselves

  return {
    values: model.get("values"),
    choice: model.get("choice"),
    found: model.get("found"),
    charts: () => loadCharts(model),
    address: pageAddress(),
    name: location.pathname.match(/([^/]+)\.ipynb$/)?.[1] ?? "yarnsheet",

    async slider(name) {
      const control = (sliders[name] = await modelOf(inputs[name].slider));
      const { el } = await viewOf(control);
      const track = el.querySelector(".noUi-target").noUiSlider;
      const thumb = el.querySelector(".noUi-handle");
      return {
        el,
        set: (at) => track.set(at, false),
        onMove: (listen) => track.on("slide", (_, __, [at]) => listen(at)),
        name: (text) => thumb.setAttribute("aria-label", text),
        say: (text) => thumb.setAttribute("aria-valuetext", text),
      };
    },

    async box(name) {
      return (await viewOf(await modelOf(inputs[name].box))).el;
    },

    async lines(name) {
      return (await viewOf(await modelOf(inputs[name].lines))).el;
    },

    async pick(name) {
      return (await viewOf(await modelOf(units[name] ?? inputs[name].pick))).el;
    },

    /* Tell the kernel, and let the stock controls' own state follow. */
    settle(values, choice) {
      for (const [name, slider] of Object.entries(sliders)) {
        if (slider.get("value") === values[name]) continue;
        slider.set("value", values[name]);
        slider.save_changes();
      }
      telling = true;
      model.set({ values, choice });
      telling = false;
      model.save_changes();
    },

    onGiven(listen) {
      const tell = () => telling || listen(model.get("values"), model.get("choice"));
      model.on("change:values", tell);
      model.on("change:choice", tell);
    },

    onFound(listen) {
      model.on("change:found", () => listen(model.get("found")));
    },
  };
}

async function render({ model, el }) {
  return mount(el, model.get("description"), await jupyterHost(model));
}

export default { render };
