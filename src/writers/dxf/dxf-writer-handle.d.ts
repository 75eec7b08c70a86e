/** The static handle counter of dxf-writer, which its own types leave out. */
declare module 'dxf-writer/src/Handle.js' {
  const Handle: { seed: number };
  export default Handle;
}
