/** A flat x, y list as an SVG path. */
export function picturePath(line: readonly number[]): string {
  let path = '';
  for (let i = 0; i + 1 < line.length; i += 2) path += `${i === 0 ? 'M' : 'L'}${line[i]} ${line[i + 1]}`;
  return path;
}

/**
 * The frame that holds all lines with a margin, for a drawing whose y is turned over: the car's right
 * side is up when its front is to the left. Null when there is nothing to show.
 */
export function pictureFrame(lines: readonly (readonly number[])[]): { readonly viewBox: string } | null {
  let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const line of lines) {
    for (let i = 0; i + 1 < line.length; i += 2) {
      minX = Math.min(minX, line[i] as number);
      maxX = Math.max(maxX, line[i] as number);
      minY = Math.min(minY, line[i + 1] as number);
      maxY = Math.max(maxY, line[i + 1] as number);
    }
  }
  if (!Number.isFinite(minX)) return null;
  const margin = Math.max(maxX - minX, maxY - minY, 1) * 0.03;
  const box = [minX - margin, -maxY - margin, maxX - minX + 2 * margin, maxY - minY + 2 * margin];
  return { viewBox: box.map((value) => Math.round(value)).join(' ') };
}
