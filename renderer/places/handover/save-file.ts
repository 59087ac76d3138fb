/** Hands a file to the browser, which saves it as it saves downloads. */
export function saveFile(fileName: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser reads the file after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
