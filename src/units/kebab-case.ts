/** `paperMargin` as it is typed in a flag: `paper-margin`. */
export function kebabCase(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
