// Runs a sheet's program on the inputs it is given on a line each, and answers a line each.
const fs = require("node:fs");
const lines = fs.readFileSync(0, "utf8").split("\n").filter(Boolean);
const { description, text } = JSON.parse(lines.shift());
const program = new Function(`return ${text}`)();
const dimensions = {};
for (const part of [description.inputs, description.found])
  for (const [name, { dimension }] of Object.entries(part)) dimensions[name] = dimension;
// JSON has no such numbers
const write = (_, x) => (typeof x === "number" && !Number.isFinite(x) ? String(x) : x);
for (const line of lines) {
  const { values, choice, worked, typed } = JSON.parse(line);
  const found = program.work_out(values, choice);
  const units = description.measures.find((m) => m.name === choice.measure).units;
  const shown = {
    units: { ...units, grist: choice.grist_unit },
    scales: description.scales,
    labels: description.unitLabels,
  };
  const known = { ...values, ...found };
  const said = (lines) => program.said(lines, known, dimensions, shown);
  const answer = {
    found,
    unused: program.unused(values),
    sentence: found.warnings.length
      ? found.warnings.map((warning) => program.fill(warning, known, dimensions, shown)).join(" ")
      : said(description.answer).join(" "),
    arithmetic: found.warnings.length ? [] : said(description.worked[worked]),
    captions: description.charts.map((chart) => said(chart.caption)),
    labels: Object.values(description.labels).map((label) =>
      program.fill(label, known, dimensions, shown),
    ),
    typed: typed.map(([name, text]) => {
      const asked = description.inputs[name];
      const { read_lines: readings, read_pairs: pairs, read_number: number } = program;
      const read = { readings, pairs }[asked.kind] ?? number;
      return read(asked, text, shown);
    }),
    boxes: typed
      .filter(([name]) => description.inputs[name].kind === "number")
      .map(([name]) => {
        const [asked, value] = [description.inputs[name], values[name]];
        const box = program.written(asked, value, shown);
        return [box, program.read_number(asked, box, shown), program.round_above(value)];
      }),
  };
  console.log(JSON.stringify(answer, write));
}
