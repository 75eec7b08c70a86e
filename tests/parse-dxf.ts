import dxfParser, { type IDxf } from 'dxf-parser';

/** The package's types describe its ES module, Node loads its CommonJS one: there the import is the class itself. */
const Parser = dxfParser as unknown as new () => { parseSync(text: string): IDxf | null };

/** A DXF as dxf-parser reads it. Throws when it cannot. */
export function parseDxf(text: string): IDxf {
  const parsed = new Parser().parseSync(text);
  if (!parsed) throw new Error('dxf-parser read nothing');
  return parsed;
}
