// Drawings of other programs for `inspect`, each with the size that its program states: `node scripts/foreign-drawings.mjs FOLDER`.
// fixtures/foreign was made so; the nightly run makes them anew, since programs change, and judges the new ones.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import makerjs from 'makerjs';

const folder = process.argv[2];
if (!folder) throw new Error('name the folder that they go into');
mkdirSync(folder, { recursive: true });
const at = (name) => join(folder, name);
const run = (program, ...args) => execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
const sizes = {};
const stated = (names, by, width, height) => {
  for (const name of names) sizes[name] = { by, width: Math.round(width * 1e4) / 1e4, height: Math.round(height * 1e4) / 1e4 };
};

// Inkscape: a style sheet, a turned group; filled without a line, so that its box is that of the edges. It answers in px, 96 to the inch.
const source = at('source.tmp.svg');
writeFileSync(
  source,
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60"><style>.s{fill:#000;stroke:none}</style><g transform="rotate(30 50 30)"><rect class="s" x="20" y="20" width="60" height="20"/><circle class="s" cx="50" cy="30" r="5"/></g></svg>`,
);
const [, , , width, height] = run('inkscape', '--query-all', source).split('\n')[0].split(',').map(Number);
const inkscape = ['inkscape.svg', 'inkscape-plain.svg', 'inkscape.pdf', 'inkscape.svgz'];
run('inkscape', source, '--export-type=svg', `--export-filename=${at('inkscape.svg')}`);
run('inkscape', source, '--export-plain-svg', `--export-filename=${at('inkscape-plain.svg')}`);
run('inkscape', source, `--export-filename=${at('inkscape.pdf')}`);
run('inkscape', source, '--export-type=svgz', `--export-filename=${at('inkscape.svgz')}`);
stated(inkscape, 'inkscape --query-all', (width * 25.4) / 96, (height * 25.4) / 96);

// ezdxf: bulges, an ellipse, a block inserted and turned; as text of two releases and as binary of two releases.
const [w, h] = JSON.parse(
  run(
    '/usr/bin/python3',
    '-c',
    `
import json, sys, ezdxf
from ezdxf import bbox
for version in ('R12', 'R2010'):
    doc = ezdxf.new(version, setup=True)
    doc.units = 4
    block = doc.blocks.new('TAB')
    block.add_line((0, 0), (10, 0), dxfattribs={'layer': '0'})
    space = doc.modelspace()
    if version == 'R12':
        space.add_polyline2d([(0, 0, 0), (80, 0, 1), (80, 20, 0), (0, 20, 0)], format='xyb', close=True, dxfattribs={'layer': 'CUT'})
    else:
        space.add_lwpolyline([(0, 0, 0), (80, 0, 1), (80, 20, 0), (0, 20, 0)], format='xyb', close=True, dxfattribs={'layer': 'CUT'})
    space.add_circle((30, 10), 4, dxfattribs={'layer': 'CUT'})
    space.add_blockref('TAB', (50, 5), dxfattribs={'layer': 'MARK', 'rotation': 45})
    name = sys.argv[1] + '/ezdxf-' + version.lower()
    doc.saveas(name + '.dxf')
    doc.saveas(name + '-binary.dxf', fmt='bin')
box = bbox.extents(space)
print(json.dumps([box.extmax[0] - box.extmin[0], box.extmax[1] - box.extmin[1]]))
`,
    folder,
  ),
);
stated(['ezdxf-r12.dxf', 'ezdxf-r12-binary.dxf', 'ezdxf-r2010.dxf', 'ezdxf-r2010-binary.dxf'], 'ezdxf.bbox.extents', w, h);

// OpenSCAD: the size that its SVG states; the DXF is of the same model.
const model = at('model.tmp.scad');
writeFileSync(model, 'difference() { square([80, 20]); translate([20, 10]) circle(r = 3, $fn = 48); }');
run('openscad', '-o', at('openscad.svg'), model);
run('openscad', '-o', at('openscad.dxf'), model);
const [, sw, sh] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(readFileSync(at('openscad.svg'), 'utf8')) ?? [];
stated(['openscad.svg', 'openscad.dxf'], "OpenSCAD's own SVG", Number(sw), Number(sh));

// makerjs.
const plate = { models: { plate: new makerjs.models.RoundRectangle(80, 20, 4) }, paths: { hole: new makerjs.paths.Circle([20, 10], 3) } };
writeFileSync(at('makerjs.dxf'), makerjs.exporter.toDXF(plate, { units: makerjs.unitType.Millimeter }));
writeFileSync(at('makerjs.svg'), makerjs.exporter.toSVG(plate, { units: makerjs.unitType.Millimeter }));
const extents = makerjs.measure.modelExtents(plate);
stated(['makerjs.dxf', 'makerjs.svg'], 'makerjs.measure.modelExtents', extents.width, extents.height);

writeFileSync(at('sizes.json'), `${JSON.stringify(sizes, null, 2)}\n`);
for (const name of [source, model]) execFileSync('rm', ['-f', name]);
console.log(`${Object.keys(sizes).length} drawings in ${folder}`);
