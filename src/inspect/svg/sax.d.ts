/** The part of sax that is used; the package brings no types. */
declare module 'sax' {
  export interface SaxParser {
    line: number;
    error: Error | null;
    onopentag: (node: { name: string; attributes: Record<string, string> }) => void;
    onclosetag: () => void;
    ontext: (text: string) => void;
    oncdata: (text: string) => void;
    ondoctype: (text: string) => void;
    onerror: (error: Error) => void;
    write(text: string): SaxParser;
    close(): SaxParser;
  }
  const sax: { parser(strict: boolean, options?: Record<string, boolean>): SaxParser };
  export default sax;
}
