// @ts-check
"use strict";

/** Unpacks what is packed by deflate (RFC 1951): for browsers that cannot do it themselves.
 * @param {Uint8Array} packed @returns {Uint8Array<ArrayBuffer>} */
function inflated(packed) {
  let at = 0, bit = 0, out = new Uint8Array(packed.length * 4), end = 0;
  /** @param {number} count */
  const bits = (count) => {
    let value = 0;
    for (let i = 0; i < count; i++) {
      if (at >= packed.length) throw new Error("what is packed is cut off");
      value |= ((packed[at] >> bit) & 1) << i;
      if (++bit === 8) { bit = 0; at++; }
    }
    return value;
  };
  /** @param {number} more */
  const grow = (more) => {
    if (end + more <= out.length) return;
    const larger = new Uint8Array(Math.max(out.length * 2, end + more));
    larger.set(out);
    out = larger;
  };
  // Codes of a tree: how many of each length, and the symbols in the order of their codes.
  /** @param {number[]} lengths */
  const tree = (lengths) => {
    const counts = new Array(16).fill(0);
    for (const length of lengths) if (length > 0) counts[length]++;
    const starts = [0, 0];
    for (let length = 1; length < 15; length++) starts.push(starts[length] + counts[length]);
    /** @type {number[]} */
    const symbols = [];
    lengths.forEach((length, symbol) => { if (length > 0) symbols[starts[length]++] = symbol; });
    return { counts, symbols };
  };
  /** @param {{ counts: number[], symbols: number[] }} tree */
  const symbol = ({ counts, symbols }) => {
    let code = 0, first = 0, index = 0;
    for (let length = 1; length < 16; length++) {
      code |= bits(1);
      if (code - counts[length] < first) return symbols[index + code - first];
      index += counts[length];
      first = (first + counts[length]) << 1;
      code <<= 1;
    }
    throw new Error("what is packed makes no sense");
  };
  /** @param {number} base @param {number} step  how many codes add one more bit */
  const ranges = (base, step) => {
    /** @type {[number, number][]} */
    const all = [];
    for (let code = 0, start = base; code < 30; code++) {
      const extra = Math.max(0, Math.floor(code / step) - 1);
      all.push([start, extra]);
      start += 1 << extra;
    }
    return all;
  };
  const lengths = ranges(3, 4), distances = ranges(1, 2);
  lengths[28] = [258, 0];
  const fixed = () => [
    tree(Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8))),
    tree(new Array(30).fill(5)),
  ];
  const given = () => {
    const literals = bits(5) + 257, far = bits(5) + 1, coded = bits(4) + 4;
    const order = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
    const small = new Array(19).fill(0);
    for (let i = 0; i < coded; i++) small[order[i]] = bits(3);
    const code = tree(small);
    /** @type {number[]} */
    const all = [];
    while (all.length < literals + far) {
      const what = symbol(code);
      if (what < 16) all.push(what);
      else {
        const [value, times] = what === 16 ? [all[all.length - 1], 3 + bits(2)] : [0, what === 17 ? 3 + bits(3) : 11 + bits(7)];
        for (let i = 0; i < times; i++) all.push(value);
      }
    }
    return [tree(all.slice(0, literals)), tree(all.slice(literals))];
  };
  const stored = () => {
    if (bit > 0) { bit = 0; at++; }
    const length = packed[at] | (packed[at + 1] << 8);
    grow(length);
    out.set(packed.subarray(at + 4, at + 4 + length), end);
    at += 4 + length;
    end += length;
  };
  /** @param {{ counts: number[], symbols: number[] }[]} trees */
  const block = ([literal, distance]) => {
    for (let what = symbol(literal); what !== 256; what = symbol(literal)) {
      if (what < 256) { grow(1); out[end++] = what; continue; }
      const [long, more] = lengths[what - 257], length = long + bits(more);
      const [far, further] = distances[symbol(distance)], back = far + bits(further);
      grow(length);
      for (let i = 0; i < length; i++, end++) out[end] = out[end - back];
    }
  };
  for (let last = 0; last === 0; ) {
    last = bits(1);
    const kind = bits(2);
    if (kind === 0) stored();
    else if (kind === 1) block(fixed());
    else if (kind === 2) block(given());
    else throw new Error("what is packed makes no sense");
  }
  return out.slice(0, end);
}
