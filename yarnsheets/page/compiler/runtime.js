/* What Python does and JavaScript does not, for emitted programs; everything else is emitted.
 *
 * A list or tuple is an array; a dict whose keys are all words is a plain object, any other a
 * Dict, and a set is a Dict of its members: both know keys by value. A dataclass is a class.
 */
(() => {
  const keyOf = (key) => (typeof key === "object" && key !== null ? JSON.stringify(key) : key);

  class Dict {
    #kept = new Map(); // by key as text or number: the key itself, and what is kept under it
    constructor(pairs = []) {
      for (const [key, value] of pairs) this.set(key, value);
    }
    has(key) {
      return this.#kept.has(keyOf(key));
    }
    get(key) {
      return this.#kept.get(keyOf(key))?.[1];
    }
    set(key, value) {
      this.#kept.set(keyOf(key), [this.#kept.get(keyOf(key))?.[0] ?? key, value]);
    }
    entries() {
      return [...this.#kept.values()];
    }
  }

  const py = {};
  const isPlain = (x) => Object.getPrototypeOf(x) === Object.prototype;
  const isDict = (x) => x instanceof Dict || isPlain(x);
  // a plain object would put keys that are whole numbers first
  const isWord = (key) => typeof key === "string" && !/^\d+$/.test(key);

  // ---- collections
  py.pairs = (x) => (x instanceof Dict ? x.entries() : Object.entries(x));
  py.iter = (x) => {
    if (Array.isArray(x)) return x;
    return isDict(x) ? py.pairs(x).map(([key]) => key) : [...x];
  };
  py.values = (x) => py.pairs(x).map(([, value]) => value);
  py.dict = (x) => {
    const pairs = isDict(x) ? py.pairs(x) : py.iter(x);
    const isPlainly = pairs.length > 0 && pairs.every(([key]) => isWord(key));
    return isPlainly ? Object.fromEntries(pairs) : new Dict(pairs);
  };
  py.set = (members = []) => new Dict(py.iter(members).map((member) => [member, member]));
  py.merge = (...all) =>
    all.every(isPlain) ? Object.assign({}, ...all) : new Dict(all.flatMap(py.pairs));
  py.len = (x) => (typeof x === "string" ? x.length : py.iter(x).length);
  py.item = (x, key) => {
    if (x instanceof Dict) return x.get(key);
    if (typeof x === "string" || Array.isArray(x)) return x.at(key) ?? null;
    return Object.hasOwn(x, key) ? x[key] : ([...x].at(key) ?? null);
  };
  py.setitem = (x, key, value) => {
    if (x instanceof Dict) x.set(key, value);
    else if (Array.isArray(x)) x[key < 0 ? x.length + key : key] = value;
    else if (isWord(key)) x[key] = value;
    else throw new TypeError(`a dict of words gets the key ${key}`);
  };
  py.get = (x, key, other = null) => (py.has(x, key) ? py.item(x, key) : other);
  py.has = (x, key) => {
    if (typeof x === "string") return x.includes(key);
    if (Array.isArray(x)) return x.some((member) => py.eq(member, key));
    return isPlain(x) ? Object.hasOwn(x, key) : x.has(key);
  };
  py.slice = (x, start, end) => x.slice(start ?? undefined, end ?? undefined);
  py.index = (x, member) => py.iter(x).findIndex((one) => py.eq(one, member));
  py.count = (x, member) => py.iter(x).filter((one) => py.eq(one, member)).length;
  py.extend = (x, more) => void x.push(...py.iter(more));
  py.counted = function* (...ends) {
    const [start, end, step] = ends.length === 1 ? [0, ends[0], 1] : [...ends, 1];
    for (let at = start; step > 0 ? at < end : at > end; at += step) yield at;
  };
  py.range = (...ends) => [...py.counted(...ends)];
  py.enumerate = (x, start = 0) => py.iter(x).map((member, at) => [at + start, member]);
  py.zip = (...all) => {
    const lists = all.map(py.iter);
    const shortest = Math.min(...lists.map((list) => list.length));
    return py.range(shortest).map((at) => lists.map((list) => list[at]));
  };
  py.zip_strict = (...all) => {
    if (new Set(all.map(py.len)).size > 1) throw new RangeError("lists of different lengths");
    return py.zip(...all);
  };
  py.reversed = (x) => (typeof x === "string" ? [...x].reverse().join("") : [...py.iter(x)].reverse());
  py.map = (make, ...all) => py.zip(...all).map((members) => make(...members));
  py.filter = (test, x) => py.iter(x).filter((one) => py.truth(test ? test(one) : one));
  py.next = (x, other) => {
    const [first = other] = py.iter(x);
    return first;
  };
  py.pairwise = (x) => py.zip(x, py.iter(x).slice(1));
  py.chain = (...all) => all.flatMap(py.iter);
  py.accumulate = (x, add = py.add) => {
    let total;
    return py.iter(x).map((member, at) => (total = at ? add(total, member) : member));
  };

  // ---- truth, sameness and order
  py.truth = (x) => {
    if (typeof x === "number") return x !== 0; // what is not a number is true
    if (x === null || typeof x !== "object") return Boolean(x);
    return Array.isArray(x) || isDict(x) ? py.len(x) > 0 : true;
  };
  py.and = (a, b) => (py.truth(a) ? b() : a);
  py.or = (a, b) => (py.truth(a) ? a : b());
  py.eq = (a, b) => {
    if (a === b || a === null || b === null) return a === b;
    if (typeof a !== "object" || typeof b !== "object") return false;
    if (Array.isArray(a) && Array.isArray(b))
      return a.length === b.length && a.every((member, at) => py.eq(member, b[at]));
    if (isDict(a) && isDict(b))
      return (
        py.len(a) === py.len(b) &&
        py.pairs(a).every(([key, value]) => py.has(b, key) && py.eq(value, py.item(b, key)))
      );
    const isOfOneKind = a.constructor === b.constructor;
    return isOfOneKind && Object.entries(a).every(([field, value]) => py.eq(value, b[field]));
  };
  py.order = (a, b) => {
    if (typeof a !== "object") return a < b ? -1 : a > b ? 1 : 0;
    const [ours, theirs] = [py.iter(a), py.iter(b)];
    const at = ours.findIndex(
      (member, place) => place < theirs.length && py.order(member, theirs[place]) !== 0,
    );
    return at < 0 ? ours.length - theirs.length : py.order(ours[at], theirs[at]);
  };
  py.sorted = (x, key = (member) => member, reverse = false) => {
    const sign = reverse ? -1 : 1;
    return [...py.iter(x)].sort((a, b) => sign * py.order(key(a), key(b)));
  };
  const extreme = (sign) => (x, key = (member) => member, other = undefined) => {
    const all = py.iter(x);
    if (!all.length) return other;
    return all.reduce((best, one) => (sign * py.order(key(one), key(best)) > 0 ? one : best));
  };
  py.min = extreme(-1);
  py.max = extreme(1);

  // ---- arithmetic
  py.add = (a, b) => (Array.isArray(a) ? [...a, ...py.iter(b)] : a + b);
  py.sum = (x, start = 0) => py.iter(x).reduce((total, member) => py.add(total, member), start);
  py.repeat = (x, times) => {
    if (typeof x === "number") return py.repeat(times, x);
    return typeof x === "string" ? x.repeat(times) : py.range(times).flatMap(() => x);
  };
  py.mod = (a, b) => {
    const rest = a % b;
    return rest && rest < 0 !== b < 0 ? rest + b : rest;
  };
  py.floordiv = (a, b) => Math.round((a - py.mod(a, b)) / b);
  // a whole nought has no sign
  py.floor = (x) => Math.floor(x) + 0;
  py.ceil = (x) => Math.ceil(x) + 0;
  py.int = (x) => Math.trunc(Number(x)) + 0;
  py.fsum = (x) => {
    let [total, lost] = [0, 0];
    for (const member of py.iter(x)) {
      const next = total + member;
      lost += Math.abs(total) >= Math.abs(member) ? total - next + member : member - next + total;
      total = next;
    }
    return total + lost;
  };
  py.mean = (x) => py.fsum(x) / py.len(x);
  py.median = (x) => {
    const [sorted, half] = [py.sorted(x), (py.len(x) - 1) / 2];
    return (sorted[Math.floor(half)] + sorted[Math.ceil(half)]) / 2;
  };
  py.harmonic_mean = (x) => py.len(x) / py.fsum(py.iter(x).map((member) => 1 / member));

  // ---- numbers as text
  const fixed = (x, decimals) => {
    if (Math.abs(x) < 1e21) return (Object.is(x, -0) ? "-" : "") + x.toFixed(decimals);
    return BigInt(x) + (decimals ? `.${"0".repeat(decimals)}` : "");
  };
  // JavaScript rounds an exact half away from nought, Python to the even neighbour
  const toEven = (write, digits) => {
    const text = write(digits);
    const beyond = write(digits + 25).slice(-25); // a half that is not exact shows by there
    const isTie = /^50*$/.test(beyond);
    return isTie && text.at(-1) % 2 ? text.slice(0, -1) + (text.at(-1) - 1) : text;
  };
  const withDecimals = (x, decimals) => toEven((digits) => fixed(x, digits), decimals);
  const withDigits = (x, digits) => {
    const short = (text) => (text.includes(".") ? text.replace(/\.?0*$/, "") : text);
    const power = Number(x.toExponential(digits - 1).split("e")[1]);
    if (power >= -4 && power < digits) return short(withDecimals(x, digits - 1 - power));
    const size = toEven((more) => x.toExponential(more).split("e")[0], digits - 1);
    return `${short(size)}e${power < 0 ? "-" : "+"}${String(Math.abs(power)).padStart(2, "0")}`;
  };
  const grouped = (text) => {
    const [whole, part] = text.split(".");
    return whole.replace(/\B(?=(\d{3})+$)/g, ",") + (part === undefined ? "" : `.${part}`);
  };
  py.round = (x, decimals) => {
    if (!Number.isFinite(x)) return x;
    const rounded = Number(withDecimals(x, decimals ?? 0));
    return decimals === undefined ? rounded + 0 : rounded; // a whole nought has no sign
  };
  py.with_decimals = (x, decimals) => {
    const [sign, size] = [x < 0 ? "−" : "", fixed(Math.abs(x), decimals)];
    return (Number(size) ? sign : "") + grouped(size); // a nought has no sign
  };
  py.format = (x, spec) => {
    if (!Number.isFinite(x)) return Number.isNaN(x) ? "nan" : x > 0 ? "inf" : "-inf";
    const [, comma, digits, kind] = spec.match(/^(,?)(?:\.(\d+))?([fdg%]?)$/);
    if (kind === "g") return withDigits(x, Number(digits ?? 6));
    if (kind === "%") return `${withDecimals(x * 100, Number(digits ?? 6))}%`;
    const isWhole = kind === "d" || (!kind && !digits);
    const text = isWhole ? py.str(x) : withDecimals(x, Number(digits ?? 6));
    return comma ? grouped(text) : text;
  };

  // ---- words
  py.str = (x) => {
    if (x === null) return "None";
    if (Array.isArray(x) || x.toString === Object.prototype.toString)
      throw new TypeError("a list, dict or dataclass as text");
    return typeof x === "boolean" ? (x ? "True" : "False") : `${x}`;
  };
  py.join = (between, x) => py.iter(x).join(between);
  py.split = (text, by = null) => (by === null ? text.split(/\s+/).filter(Boolean) : text.split(by));
  py.replaced = (text, part, other) => text.replaceAll(part, () => other);
  py.removeprefix = (text, start) => (text.startsWith(start) ? text.slice(start.length) : text);
  py.removesuffix = (text, end) =>
    end && text.endsWith(end) ? text.slice(0, -end.length) : text;
  py.lstrip = (text, signs) => {
    if (signs === undefined) return text.trimStart();
    return text && signs.includes(text[0]) ? py.lstrip(text.slice(1), signs) : text;
  };
  py.rstrip = (text, signs) => {
    if (signs === undefined) return text.trimEnd();
    return text && signs.includes(text.at(-1)) ? py.rstrip(text.slice(0, -1), signs) : text;
  };
  py.strip = (text, signs) => py.lstrip(py.rstrip(text, signs), signs);
  py.normalize = (form, text) => text.normalize(form);

  // ---- patterns: what was found is a list of the whole and its groups
  const parts = (found) => found && [...found].map((part) => part ?? null);
  py.fullmatch = (pattern, text) => parts(text.match(new RegExp(`^(?:${pattern.source})$`)));
  py.groups = (found) => found.slice(1);
  py.sub = (pattern, make, text) =>
    text.replace(new RegExp(pattern.source, "g"), (...found) =>
      typeof make === "string" ? make : make(parts(found.slice(0, -2))),
    );

  // ---- a dataclass with some fields changed, and what leaves the program: plain data
  py.replace = (x, changed) => Object.assign(Object.create(Object.getPrototypeOf(x)), x, changed);
  py.plain = (x) => {
    if (x === null || typeof x !== "object") return x;
    if (Array.isArray(x)) return x.map(py.plain);
    return Object.fromEntries(py.pairs(x).map(([key, value]) => [key, py.plain(value)]));
  };
  return py;
})()
