import sax from 'sax';
import { type Budget, LIMITS, LimitReached, Unreadable } from '../drawing.ts';

/** An element without its namespace prefix; attributes keep theirs. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  text: string;
}

const LONGEST_TEXT = 2_000_000;

/**
 * The tree of an XML text, read strictly. Only the five entities of XML and numbered ones are known: what a DOCTYPE declares is never
 * expanded, so that no file can blow itself up. Throws Unreadable with line and reason, LimitReached when it is too deep or too large.
 */
export function xmlTree(text: string, budget: Budget): XmlElement {
  const parser = sax.parser(true, { position: true });
  const stack: XmlElement[] = [];
  let root: XmlElement | null = null;
  parser.onopentag = ({ name, attributes }) => {
    budget.item();
    if (stack.length >= LIMITS.depth) throw new LimitReached(`elements stand more than ${LIMITS.depth} deep in each other`);
    const element: XmlElement = { name: name.replace(/^.*:/, ''), attributes, children: [], text: '' };
    if (stack.length === 0) root ??= element;
    stack.at(-1)?.children.push(element);
    stack.push(element);
  };
  parser.onclosetag = () => void stack.pop();
  const append = (more: string) => {
    const element = stack.at(-1);
    if (element && element.text.length < LONGEST_TEXT) element.text += more;
  };
  parser.ontext = append;
  parser.oncdata = append;
  parser.onerror = (error) => {
    throw new Unreadable(`not well-formed XML: ${error.message.split('\n')[0] ?? ''} (line ${parser.line + 1})`);
  };
  parser.write(text.replace(/^\uFEFF/, '')).close();
  if (!root) throw new Unreadable('the XML has no element');
  return root;
}
