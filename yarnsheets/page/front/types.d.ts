/* What the parts of a page give each other, and what Python gives them. */

import type { changeset, View } from "vega";
import type { compile } from "vega-lite";

/** A sentence, and when it is said: by the name of a flag, by "not" and one, or always. */
export type Line = [when: string | null, template: string];

/** An input: what of it the page reads. Which fields there are depends on the kind. */
export interface Asked {
  kind: "number" | "blank" | "draw" | "readings" | "pairs" | "pick" | "words" | "rows";
  title: string;
  dimension: string;
  measure: string;
  drawing: string;
  default: Value;
  low: number;
  high: number;
  step: number | null;
  options: Record<string, string>;
  parts: Asked[];
  columns: Column[];
  /** The columns that are always shown. */
  first: string[];
  beside: Beside;
  /** How many rows it takes. */
  most: number;
  /** What a button says that takes the next one. */
  another: string;
  /** What makes it start anew when it changes: names of inputs, or "measure". */
  anew: string[];
}

/** A column of a table, an input itself; what a heading may call it. */
export interface Column extends Asked {
  name: string;
  called: string[];
}

/** What is said beside each row, by heading: lines of the same row of a table that was found. */
export interface Beside {
  table: string;
  columns: Record<string, Line[]>;
  dimensions: Dimensions;
}

/** What a cell holds: nothing, a number, several, or words. */
export type Cell = null | number | number[] | string;
export type Row = Cell[];

/** What a chart's marked point moves, where it stands, and the flag by which it is there. */
export interface Grip {
  input: string;
  x: string;
  y: string;
  when: string | null;
}

export interface ChartDescription {
  name: string;
  title: string;
  caption: Line[];
  grip: Grip | null;
  /** How far each axis must go, as an expression of Vega's. */
  reach: Record<string, string>;
  tables: string[];
  /** The room at the left. */
  left: number;
  spec: { params: { name: string }[] };
}

/** A column of a table to be read; of no unit, it is in the one chosen. */
export interface Column {
  title: string;
  field: string;
  dimension: string;
  unit: string;
}

export interface ListingDescription {
  table: string;
  title: string;
  columns: Column[];
  /** Each row stands by itself, to be cut out. */
  tags: boolean;
}

export interface Way {
  worksheet: string;
  carries: Record<string, string>;
  question: string;
}

/** A sheet as `Sheet.describe` gives it. */
export interface Description {
  name: string;
  question: string;
  inputs: Record<string, Asked>;
  /** The headings, each with what stands under it. */
  groups: { title: string; folded: boolean; inputs: string[] }[];
  /** What words mean. */
  glossary: Record<string, string>;
  /** SVG of how something is measured. */
  drawings: Record<string, string>;
  /** What is asked beside a grist, for the ways to give one. */
  ways: Record<string, Asked>;
  found: Record<string, { dimension: string; what: string }>;
  tables: string[];
  scales: Record<string, Record<string, [factor: number, power: number]>>;
  unitLabels: Record<string, string>;
  measures: { name: string; grist: string; units: Record<string, string> }[];
  gristUnits: { unit: string; name: string }[];
  answer: Line[];
  worked: Record<string, Line[]>;
  labels: Record<string, string>;
  cautions: string[];
  onward: Way[];
  charts: ChartDescription[];
  listings: ListingDescription[];
}

/** An input's value, in the sheet's own units. */
export type Value = number | number[] | number[][] | Row[] | string | null;
export type Values = Record<string, Value>;
/** The units chosen. */
export interface Choice {
  measure: string;
  grist_unit: string;
}

/** What the program finds: numbers, words and flags, tables, and what is probably wrong. */
export type Found = { warnings: string[] } & Record<string, unknown>;
export type Known = Record<string, unknown>;
export type Dimensions = Record<string, string>;

/** The units of a page, as the program takes them. */
export interface Shown {
  units: Record<string, string>;
  scales: Description["scales"];
  labels: Record<string, string>;
}

/** A sheet's program, compiled from Python: every rule of numbers and words that a page follows. */
export interface Program {
  work_out(values: Values, choice: Choice): Found;
  /** The inputs that make no difference beside the others. */
  unused(values: Values): string[];
  show(value: number, digits?: number, up?: boolean): string;
  fill(template: string, known: Known, dimensions: Dimensions, shown: Shown): string;
  opened(template: string, known: Known, dimensions: Dimensions): string;
  said(lines: Line[], known: Known, dimensions: Dimensions, shown: Shown): string[];
  holds(when: string | null, known: Known): boolean;
  in_unit(name: string, unit: string, known: Known, dimensions: Dimensions, shown: Shown): number;
  to_shown(value: number, dimension: string, unit: string, shown: Shown): number;
  to_own(value: number, dimension: string, unit: string, shown: Shown): number;
  read_number(asked: Asked, text: string, shown: Shown): [value: number | null, wrong: string];
  read_lines(asked: Asked, text: string, shown: Shown): [values: number[] | null, wrong: string];
  read_pairs(asked: Asked, text: string, shown: Shown): [pairs: number[][] | null, wrong: string];
  /** Of a sheet with a table. */
  read_table(text: string): string[][];
  has_headings(columns: Column[], cells: string[], shown: Shown): boolean;
  match_column(columns: Column[], heading: string, shown: Shown): [column: number, unit: string];
  read_cell(column: Column, text: string, unit: string, shown: Shown): [cell: Cell, wrong: string];
  write_cell(column: Column, cell: Cell, shown: Shown): string;
  takes(asked: Asked, value: number): boolean;
  outside(asked: Asked, number: number, shown: Shown): string;
  grist_from_cut(cut: number, factor: number): number;
  cut_from_grist(grist: number, factor: number): number;
  grist(length: number, mass: number): number;
  length(mass: number, grist: number): number;
  written(asked: Asked, value: number, shown: Shown): string;
  round_step(value: number): number;
  round_above(value: number): number;
}

/** What a handout says of itself. */
export interface Handout {
  version: string;
  /** Whether all pages are kept by a browser that opens one. */
  all: boolean;
  /** Whether a page may make no code of words, as Vega does unless told not to. */
  strict: boolean;
  /** The worksheets that are part of it. */
  worksheets: string[];
  /** The link with the numbers to start from. */
  start: string;
  choice: Partial<Choice>;
}

/** What the projector's page in a class knows. */
export interface Room {
  /** Where its cuts are. */
  cuts: string;
  isTeacher: boolean;
}

/** Of a service worker what is used here: TypeScript has its types apart from those of pages. */
export interface OfflineWorker {
  registration: { scope: string };
  skipWaiting(): Promise<void>;
  clients: { claim(): Promise<void> };
  addEventListener(name: string, listen: (event: FetchEvent) => void): void;
}
interface FetchEvent {
  request: Request;
  waitUntil(done: Promise<unknown>): void;
  respondWith(answer: Promise<Response>): void;
}

/** The chart library, as `charts.js` brings it. */
export interface Charts {
  view(spec: object, container?: Element): View;
  changeset: typeof changeset;
  compile: typeof compile;
  vegaVersion: string;
  vegaLiteVersion: string;
}

/** A stock control: what is put on the page, and what of it the reader types in or chooses from. */
export interface Control<Field extends HTMLElement> {
  el: HTMLElement;
  field: Field;
}

/** A slider, whose places are those of `track.js`. */
export interface Slider {
  el: HTMLElement;
  set(place: number): void;
  onMove(listen: (place: number) => void): void;
  name(text: string): void;
  /** Leave it out of the order of the Tab key. */
  skip(): void;
  say(text: string): void;
}

/** The part of the page's address that holds a sheet's numbers. */
export interface Address {
  read(): string;
  write(link: string): void;
  /** The whole address with a link in it. */
  of(link: string): string;
  onChange(listen: (link: string) => void): void;
  /** Where the page of another worksheet is, if it stands beside this one. */
  neighbour(worksheet: string): string | undefined;
  /** A code for phones that opens it with a link, if they can reach it. */
  code(worksheet: string, link: string): Element | undefined;
}

type Awaitable<T> = T | Promise<T>;

/** Where a sheet stands: what brings its controls and hears what has settled. */
export interface Host {
  values: Values;
  choice: Choice;
  /** None where the address of the page is not this sheet's. */
  address: Address | null;
  charts(): Promise<Charts>;
  slider(name: string): Awaitable<Slider>;
  box(name: string): Awaitable<Control<HTMLInputElement>>;
  lines(name: string): Awaitable<Control<HTMLTextAreaElement>>;
  /** A choice among an input's options, or of "measure" or "grist_unit". */
  pick(name: string): Awaitable<Control<HTMLSelectElement>>;
  settle(values: Values, choice: Choice): void;
  onGiven(listen: (values: Values, choice: Partial<Choice>) => void): void;
}

/** A widget's state in the browser, as Jupyter gives it. */
export interface Model {
  get(name: string): any;
  set(name: string, value: unknown): void;
  set(state: Record<string, unknown>): void;
  save_changes(): void;
  send(content: unknown): void;
  on(event: string, listen: (content: any, buffers: DataView[]) => void): void;
  widget_manager: {
    get_model(id: string): Promise<Model>;
    create_view(model: Model): Promise<{ el: HTMLElement }>;
  };
}

declare global {
  var yarnsheet_charts: Charts | undefined;
  /** The chart library on its way from a kernel. */
  var yarnsheet_charts_coming: Promise<Charts> | undefined;
  /** In Jupyter, what Python puts before the front end. */
  const yarnsheet_program: Program;
  /** In a service worker, what a handout puts before it. */
  const handout_version: string;
  const handout_files: string[];
}
