/** FIPS 180-4, 4.2.2: the first 32 bits of the fractional parts of the cube roots of the first 64 primes; 5.3.3: of the square roots of the first 8. */
const PRIMES = firstPrimes(64);
const ROUND = Uint32Array.from(PRIMES, (p) => fraction(Math.cbrt(p)));
const START = Uint32Array.from(PRIMES.slice(0, 8), (p) => fraction(Math.sqrt(p)));

/** SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 hex digits. For Node and page alike, where only the one has it without waiting. */
export function sha256(text: string): string {
  const content = new TextEncoder().encode(text);
  const blocks = new Uint8Array(64 * Math.ceil((content.length + 9) / 64));
  blocks.set(content);
  blocks[content.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setBigUint64(blocks.length - 8, 8n * BigInt(content.length));
  const state = START.slice();
  for (let at = 0; at < blocks.length; at += 64) addBlock(state, view, at);
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('');
}

function addBlock(state: Uint32Array, view: DataView, at: number): void {
  const w = new Uint32Array(64);
  const word = (k: number) => w[k] as number;
  for (let t = 0; t < 64; t++) {
    if (t < 16) w[t] = view.getUint32(at + 4 * t);
    else {
      const [x, y] = [word(t - 15), word(t - 2)];
      w[t] = word(t - 16) + (turn(x, 7) ^ turn(x, 18) ^ (x >>> 3)) + word(t - 7) + (turn(y, 17) ^ turn(y, 19) ^ (y >>> 10));
    }
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < 64; t++) {
    const first = h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + (ROUND[t] as number) + word(t);
    const second = (turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
  }
  for (const [k, value] of [a, b, c, d, e, f, g, h].entries()) state[k] = (state[k] as number) + value;
}

function turn(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

function fraction(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function firstPrimes(count: number): readonly number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) if (primes.every((p) => n % p !== 0)) primes.push(n);
  return primes;
}
