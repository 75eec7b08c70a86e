import { BINARY_DXF } from '../../units/file-format.ts';
import { type Budget, Unreadable } from '../drawing.ts';
import type { DxfTag } from './dxf-tags.ts';

type Kind = 'text' | 'double' | 'int16' | 'int32' | 'int64' | 'bool' | 'bytes';

/** What the value after a group code is, up to each code (DXF reference, "Group Code Value Types"). */
const KINDS: readonly (readonly [last: number, kind: Kind])[] = [
  [9, 'text'],
  [59, 'double'],
  [79, 'int16'],
  [99, 'int32'],
  [109, 'text'],
  [149, 'double'],
  [169, 'int64'],
  [179, 'int16'],
  [239, 'double'],
  [289, 'int16'],
  [299, 'bool'],
  [309, 'text'],
  [319, 'bytes'],
  [369, 'text'],
  [389, 'int16'],
  [399, 'text'],
  [409, 'int16'],
  [419, 'text'],
  [429, 'int32'],
  [439, 'text'],
  [459, 'int32'],
  [469, 'double'],
  [999, 'text'],
  [1003, 'text'],
  [1004, 'bytes'],
  [1009, 'text'],
  [1059, 'double'],
  [1070, 'int16'],
  [1071, 'int32'],
];

/** The tags of a binary DXF, its values as the text form would write them. Throws Unreadable when it breaks off within a tag. */
export function* binaryTags(bytes: Uint8Array, budget: Budget): Generator<DxfTag> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const letters = new TextDecoder('utf-8');
  let at = BINARY_DXF.length;
  // Release 12 and older write a group code as one byte, so that the first tag, 0 SECTION, has no second zero.
  const short = bytes[at + 1] !== 0;
  const take = (length: number) => {
    const from = at;
    at += length;
    if (at > bytes.byteLength) throw new Unreadable('the binary DXF breaks off within a value');
    return from;
  };
  const readCode = () => {
    if (!short) return view.getInt16(take(2), true);
    const code = view.getUint8(take(1));
    return code === 255 ? view.getInt16(take(2), true) : code;
  };
  const readValue = (kind: Kind): string => {
    if (kind === 'double') return String(view.getFloat64(take(8), true));
    if (kind === 'int16') return String(view.getInt16(take(2), true));
    if (kind === 'int32') return String(view.getInt32(take(4), true));
    if (kind === 'int64') return String(view.getBigInt64(take(8), true));
    if (kind === 'bool') return String(view.getUint8(take(1)));
    if (kind === 'bytes') {
      const length = view.getUint8(take(1));
      take(length);
      return '';
    }
    const end = bytes.indexOf(0, at);
    if (end < 0) throw new Unreadable('the binary DXF breaks off within a text');
    return letters.decode(bytes.subarray(take(end + 1 - at), end));
  };
  for (let count = 0; at < bytes.byteLength; count++) {
    if (count % 2000 === 0) budget.check();
    const code = readCode();
    const kind = KINDS.find(([last]) => code <= last)?.[1];
    if (kind === undefined || code < 0) throw new Unreadable(`the binary DXF holds the group code ${code}, which has no kind`);
    yield [code, readValue(kind)];
  }
}
