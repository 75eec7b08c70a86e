/** The part of svgdom that is used; the package brings no types. */
declare module 'svgdom' {
  export function createSVGWindow(): Window;
  export function createHTMLWindow(): Window;
}
