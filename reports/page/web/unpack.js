// @ts-check
"use strict";

/** Unpacks the engine: a stream of LZMA with its head of 13 bytes. No browser does that by itself, and it takes a quarter less to
 * load than what they can unpack. @param {Uint8Array} packed @returns {Uint8Array<ArrayBuffer>} */
function unlzma(packed) {
  const literalContext = packed[0] % 9, rest = (packed[0] - literalContext) / 9, literalPlace = rest % 5, places = (1 << ((rest - literalPlace) / 5)) - 1;
  const out = new Uint8Array(new DataView(packed.buffer, packed.byteOffset).getUint32(5, true));
  let at = 13, end = 0, range = 0xffffffff, code = 0, state = 0, near = 1, second = 1, third = 1, fourth = 1;
  /** How likely a bit is 0, of 2,048. @param {number} count */
  const even = (count) => new Uint16Array(count).fill(1024);
  const shift = () => {
    if (range >= 0x1000000) return;
    if (at > packed.length) throw new Error("what is packed is cut off");
    range = (range << 8) >>> 0;
    code = ((code << 8) | packed[at++]) >>> 0;
  };
  /** @param {Uint16Array} odds @param {number} i */
  const bit = (odds, i) => {
    const bound = (range >>> 11) * odds[i], is = code < bound ? 0 : 1;
    if (is) { range -= bound; code -= bound; odds[i] -= odds[i] >>> 5; } else { range = bound; odds[i] += (2048 - odds[i]) >>> 5; }
    shift();
    return is;
  };
  /** @param {Uint16Array} odds @param {number} from @param {number} bits */
  const tree = (odds, from, bits) => {
    let node = 1;
    for (let i = 0; i < bits; i++) node = (node << 1) | bit(odds, from + node);
    return node - (1 << bits);
  };
  /** The same with its lowest bit first. @param {Uint16Array} odds @param {number} from @param {number} bits */
  const reversed = (odds, from, bits) => {
    let node = 1, value = 0;
    for (let i = 0; i < bits; i++) {
      const is = bit(odds, from + node);
      node = (node << 1) | is;
      value |= is << i;
    }
    return value;
  };
  const lengths = () => {
    const first = even(2), low = even(16 << 3), middle = even(16 << 3), high = even(256);
    return (/** @type {number} */ place) => {
      if (!bit(first, 0)) return 2 + tree(low, place << 3, 3);
      return bit(first, 1) ? 18 + tree(high, 0, 8) : 10 + tree(middle, place << 3, 3);
    };
  };
  const literals = even(0x300 << (literalContext + literalPlace)), matches = even(12 << 4), repeats = even(12), again = [even(12), even(12), even(12)];
  const short = even(12 << 4), slots = even(4 << 6), places2 = even(128), aligned = even(16), length = lengths(), lengthAgain = lengths();

  const literal = () => {
    const from = 0x300 * (((end & ((1 << literalPlace) - 1)) << literalContext) + ((end ? out[end - 1] : 0) >> (8 - literalContext)));
    let symbol = 1;
    if (state >= 7) {
      let match = out[end - near];
      for (let same = true; same && symbol < 0x100; match <<= 1) {
        const high = (match >> 7) & 1, is = bit(literals, from + ((1 + high) << 8) + symbol);
        symbol = (symbol << 1) | is;
        same = high === is;
      }
    }
    while (symbol < 0x100) symbol = (symbol << 1) | bit(literals, from + symbol);
    out[end++] = symbol;
    state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
  };
  /** How far back, after a length. @param {number} long */
  const distance = (long) => {
    const slot = tree(slots, Math.min(long - 2, 3) << 6, 6);
    if (slot < 4) return slot + 1;
    const bits = (slot >> 1) - 1, start = (2 | (slot & 1)) << bits;
    if (slot < 14) return start + reversed(places2, start - slot, bits) + 1;
    let value = 0;
    for (let i = 4; i < bits; i++) {
      range >>>= 1;
      const is = code >= range ? 1 : 0;
      if (is) code -= range;
      value = (value << 1) | is;
      shift();
    }
    return (start >>> 0) + (value << 4) + reversed(aligned, 0, 4) + 1;
  };
  const match = (/** @type {number} */ place) => {
    let long = 1;
    if (!bit(repeats, state)) {
      long = length(place);
      [near, second, third, fourth] = [distance(long), near, second, third];
      state = state < 7 ? 7 : 10;
    } else {
      let one = false;
      if (!bit(again[0], state)) one = !bit(short, (state << 4) + place);
      else if (!bit(again[1], state)) [near, second] = [second, near];
      else if (!bit(again[2], state)) [near, second, third] = [third, near, second];
      else [near, second, third, fourth] = [fourth, near, second, third];
      if (!one) long = lengthAgain(place);
      state = one ? (state < 7 ? 9 : 11) : state < 7 ? 8 : 11;
    }
    if (near > end) throw new Error("what is packed makes no sense");
    for (let i = 0; i < long && end < out.length; i++, end++) out[end] = out[end - near];
  };
  for (; at < 18; at++) code = ((code << 8) | packed[at]) >>> 0;
  while (end < out.length) {
    const place = end & places;
    if (bit(matches, (state << 4) + place)) match(place); else literal();
  }
  return out;
}

/** Bytes of a text that holds 15 bits a sign, from U+1000 on. @param {string} text */
function untexted(text) {
  const out = new Uint8Array(Math.floor(text.length * (15 / 8)));
  for (let i = 0, end = 0, held = 0, bits = 0; i < text.length; i += 1) {
    held |= (text.charCodeAt(i) - 0x1000) << bits;
    for (bits += 15; bits >= 8; bits -= 8, held >>>= 8) out[end++] = held & 255;
  }
  return out;
}
