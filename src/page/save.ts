/** Hands a file to the browser's own download, as the person asked for by a button; nothing is sent anywhere. */
export function saveAs(name: string, content: string | Uint8Array, type: string): void {
  const bytes = typeof content === 'string' ? content : new Uint8Array(content);
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has taken its own hold of the blob by the next turn of a slow machine.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
