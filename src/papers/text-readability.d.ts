/** What the tests use of the library, which has no types of its own. */
declare module 'text-readability' {
  const readability: { syllableCount(text: string): number };
  export default readability;
}
