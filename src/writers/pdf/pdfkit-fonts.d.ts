/** Metrics of a standard font, which the library's own types leave out. */
declare module 'pdfkit/standard-fonts/Helvetica' {
  const metrics: object;
  export default metrics;
}
declare module 'pdfkit/standard-fonts/HelveticaBold' {
  const metrics: object;
  export default metrics;
}
