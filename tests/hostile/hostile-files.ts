import { deflateSync } from 'node:zlib';

/** A file that somebody made to hold the program up, and the command that is to read it; at most 1 MB. */
export interface HostileFile {
  readonly name: string;
  readonly command: 'inspect' | 'redraw' | 'print-check' | 'sheets';
  readonly ending: 'svg' | 'dxf' | 'pdf' | 'csv';
  /** Tried by day as well, since it once took longest or fell over. */
  readonly byDay?: true;
  readonly content: () => string | Uint8Array;
}

const times = (count: number, one: (k: number) => string) => Array.from({ length: count }, (_, k) => one(k)).join('');
const blanks = (count: number) => ' '.repeat(count);

const svg = (content: string, head = 'width="100mm" height="100mm" viewBox="0 0 100 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${head}>${content}</svg>`;
const tags = (...pairs: readonly (readonly [number, string | number])[]) => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
const section = (name: string, content: string) => tags([0, 'SECTION'], [2, name]) + content + tags([0, 'ENDSEC']);
const dxf = (entities: string, blocks = '') => section('BLOCKS', blocks) + section('ENTITIES', entities) + tags([0, 'EOF']);
const block = (name: string, content: string) => tags([0, 'BLOCK'], [2, name], [10, 0], [20, 0]) + content + tags([0, 'ENDBLK']);
const insert = (name: string, columns = 1, rows = 1) =>
  tags([0, 'INSERT'], [8, 0], [2, name], [10, 0], [20, 0], [70, columns], [71, rows], [44, 1], [45, 1]);
const line = (x1: number, y1: number, x2: number, y2: number) => tags([0, 'LINE'], [8, 'C'], [10, x1], [20, y1], [11, x2], [21, y2]);

const stream = (id: number, content: string, packed: boolean) => {
  const bytes = packed ? deflateSync(Buffer.from(content, 'latin1'), { level: 9 }).toString('latin1') : content;
  return `${id} 0 obj\n<< /Length ${bytes.length}${packed ? ' /Filter /FlateDecode' : ''} >>\nstream\n${bytes}\nendstream\nendobj\n`;
};
const pdf = (contents: string, ...objects: readonly string[]) =>
  Buffer.from(
    `%PDF-1.4\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Kids [3 0 R] >>\nendobj\n3 0 obj\n<< /Type /Page /MediaBox [0 0 900 900] /Contents ${contents} >>\nendobj\n${objects.join('')}`,
    'latin1',
  );

const csv = (...rows: readonly string[]) => `length,width,quantity\n${rows.join('\n')}\n`;

export const HOSTILE_FILES: readonly HostileFile[] = [
  // A pattern that tries every way to share the blanks out takes the square of their number, or the cube.
  {
    name: 'blanks in a transform',
    command: 'inspect',
    ending: 'svg',
    byDay: true,
    content: () => svg(`<g transform="${blanks(60_000)}x"/>`),
  },
  {
    name: 'blanks between transforms',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<g transform="scale(1)${blanks(500_000)},${blanks(400_000)}("/>`),
  },
  {
    name: 'digits in a length',
    command: 'inspect',
    ending: 'svg',

    content: () => svg(`<rect width="${'1'.repeat(900_000)}!" height="9"/>`),
  },
  { name: 'blanks behind a length', command: 'inspect', ending: 'svg', content: () => svg('', `width="1${blanks(900_000)}!" height="9"`) },
  {
    name: 'numbers run together in a path',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<path d="M0 0${times(99_900, () => ' 1e5 .5-.5')}"/>`),
  },
  // Each with each.
  {
    name: '15,000 concentric circles',
    command: 'inspect',
    ending: 'svg',

    content: () => svg(times(15_000, (k) => `<circle cx="50" cy="50" r="${(k + 1) / 400}"/>`)),
  },
  {
    name: '60,000 open runs',
    command: 'inspect',
    ending: 'svg',
    byDay: true,
    content: () => svg(`<path d="${times(60_000, (k) => `M${k % 300} ${Math.floor(k / 300)}h.5`)}"/>`),
  },
  {
    name: '450 x 450 crossing lines',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(times(450, (k) => `<path d="M${k + 0.5} 0V450"/><path d="M0 ${k + 0.5}H450"/>`)),
  },
  {
    name: 'a comb of edges that all lie over each other',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<path d="M0 0${times(80_000, (k) => `h${k % 2 === 0 ? 90 : -90}v1`)}"/>`),
  },
  { name: 'one line 20,000 times', command: 'inspect', ending: 'dxf', content: () => dxf(times(20_000, () => line(0, 0, 9, 9))) },
  {
    name: 'squares on squares, each drawn on by the next',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(times(20_000, (k) => `<path d="M${-k} ${-k}h${2 * k + 1}v${2 * k + 1}h${-2 * k - 1}z"/>`)),
  },
  {
    name: '50,000 layers',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(times(20_000, (k) => `<g id="${k}"><path d="M0 ${k}h9"/></g>`)),
  },
  // The same long thing read again and again.
  {
    name: '9,000 uses of a long text',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<text id="t">${blanks(300_000)}x</text>${times(9000, () => '<use href="#t"/>')}`),
  },
  {
    name: '9,000 uses of a long style',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<g id="t" style="${times(50_000, (k) => `a${k}:b;`)}"/>${times(9000, () => '<use href="#t"/>')}`),
  },
  {
    name: '9,000 uses of a long path that draws nothing',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<path id="t" d="M0 0${blanks(500_000)}"/>${times(9000, () => '<use href="#t"/>')}`),
  },
  {
    name: '30,000 rules for 20,000 elements',
    command: 'inspect',
    ending: 'svg',
    content: () => svg(`<style>${times(30_000, (k) => `.a${k}{x:y}`)}</style>${times(20_000, () => '<g class="a1 a2"/>')}`),
  },
  {
    name: 'inserts of a long text',
    command: 'inspect',
    ending: 'dxf',
    content: () =>
      dxf(
        times(9, () => insert('A', 100, 100)),
        block('A', tags([0, 'MTEXT'], [8, 0]) + tags([3, 'long']).repeat(100_000)),
      ),
  },
  {
    name: 'inserts of a shape of many points that is not read',
    command: 'inspect',
    ending: 'dxf',
    content: () => dxf(insert('A', 300, 300), block('A', tags([0, 'HATCH'], [8, 0]) + tags([10, 1], [20, 2]).repeat(60_000))),
  },
  {
    name: 'inserts of a polyline without points on it',
    command: 'inspect',
    ending: 'dxf',
    content: () =>
      dxf(
        insert('A', 300, 300),
        block('A', tags([0, 'POLYLINE'], [8, 0]) + tags([0, 'VERTEX'], [70, 16]).repeat(60_000) + tags([0, 'SEQEND'])),
      ),
  },
  {
    name: 'blocks in blocks',
    command: 'inspect',
    ending: 'dxf',
    content: () => dxf(insert('A', 500, 500), block('A', insert('A', 500, 500))),
  },
  { name: 'nothing but group codes', command: 'inspect', ending: 'dxf', content: () => dxf(tags([0, 'X']) + '5\n\n'.repeat(330_000)) },
  // What swells.
  {
    name: 'deflated blanks',
    command: 'inspect',
    ending: 'pdf',
    byDay: true,
    content: () => pdf('4 0 R', stream(4, blanks(60_000_000), true)),
  },
  {
    name: 'fifteen streams of deflated blanks',
    command: 'inspect',
    ending: 'pdf',
    content: () =>
      pdf(`[${times(15, (k) => `${4 + k} 0 R `)}]`, ...Array.from({ length: 15 }, (_, k) => stream(4 + k, blanks(60_000_000), true))),
  },
  {
    name: 'one stream 900 times',
    command: 'inspect',
    ending: 'pdf',

    content: () => pdf(`[${'4 0 R '.repeat(900)}]`, stream(4, '1 '.repeat(5_000_000), true)),
  },
  {
    name: 'one form 90,000 times',
    command: 'inspect',
    ending: 'pdf',
    content: () =>
      pdf(
        '4 0 R /Resources << /XObject << /F 5 0 R >> >>',
        stream(4, '/F Do '.repeat(90_000), true),
        stream(5, blanks(100_000), true).replace('<<', '<< /Subtype /Form'),
      ),
  },
  {
    name: 'marked content that never ends',
    command: 'inspect',
    ending: 'pdf',
    content: () => pdf('4 0 R', stream(4, '/A BMC '.repeat(50_000) + '0 0 m 9 9 l S '.repeat(16_000), false)),
  },
  {
    name: 'objects of a stream that are all the same long one',
    command: 'inspect',
    ending: 'pdf',
    content: () => {
      const heads = times(50_000, (k) => `${k + 10} 0 `);
      return pdf(
        '[]',
        stream(4, `${heads}[${'1 '.repeat(200_000)}]`, true).replace('<<', `<< /Type /ObjStm /N 50000 /First ${heads.length}`),
      );
    },
  },
  { name: 'deflated blanks, redrawn', command: 'redraw', ending: 'pdf', content: () => pdf('4 0 R', stream(4, blanks(60_000_000), true)) },
  // Beginnings without an end.
  {
    name: '60,000 empty metadata',
    command: 'redraw',
    ending: 'svg',
    byDay: true,
    content: () => svg(`${'<metadata/>'.repeat(60_000)}<metadata></metadata>`),
  },
  {
    name: '60,000 empty metadata, printed',
    command: 'print-check',
    ending: 'svg',
    content: () => svg(`${'<metadata/>'.repeat(60_000)}<metadata></metadata>`),
  },
  { name: '90,000 beginnings of a stream', command: 'redraw', ending: 'pdf', content: () => pdf('[]', 'stream\n'.repeat(90_000)) },
  {
    name: '60,000 comments of inputs',
    command: 'redraw',
    ending: 'dxf',
    content: () => `999\nknucklewright inputs 1/999999999 [${blanks(900_000)}\n${tags([0, 'SECTION'])}`,
  },
  // Many pieces.
  { name: '100,000 tiny pieces', command: 'sheets', ending: 'csv', content: () => csv('0.1,0.1,100000') },
  {
    name: '5,000 rows of 100,000',
    command: 'sheets',
    ending: 'csv',
    content: () => csv(...Array.from({ length: 5000 }, () => '150,20,100000')),
  },
  {
    name: '20,000 pieces that cannot fit',
    command: 'sheets',
    ending: 'csv',
    byDay: true,
    content: () => csv(...Array.from({ length: 20_000 }, () => '2500,2500,1')),
  },
  {
    name: '20,000 sizes',
    command: 'sheets',
    ending: 'csv',
    content: () => csv(...Array.from({ length: 20_000 }, (_, k) => `${100 + (k % 997) / 10},${20 + (k % 13)},1`)),
  },
];
