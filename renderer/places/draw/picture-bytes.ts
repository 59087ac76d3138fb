/** Bytes as base64, as they cross to the host. Read by the browser itself: a loop over megabytes is slow. */
export function base64Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).split(',', 2)[1] ?? '');
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(new Blob([bytes]));
  });
}

/** A file made of base64 text. */
export function blobOf(base64: string, mediaType: string): Blob {
  const letters = atob(base64);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
  return new Blob([bytes], { type: mediaType });
}
