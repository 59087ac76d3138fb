/**
 * A file's bytes, read piece by piece, telling the share read so far; null when it was stopped, is empty or
 * cannot be read, such as after it was moved.
 */
export async function readFile(
  file: File,
  onProgress: (share: number) => void,
  signal: AbortSignal | undefined,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const bytes = new Uint8Array(file.size);
  let at = 0;
  try {
    const reader = file.stream().getReader();
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
      if (signal?.aborted) {
        await reader.cancel();
        return null;
      }
      bytes.set(piece.value, at);
      at += piece.value.length;
      onProgress(at / Math.max(1, file.size));
    }
  } catch {
    return null;
  }
  return at === bytes.length && at > 0 ? bytes : null;
}
