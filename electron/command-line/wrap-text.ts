/** Width of a page in characters; terminals are seldom narrower than 80. */
const pageWidth = 88;

/**
 * A sentence as lines that fit the page, each indented; `lead` takes the indent's place on the first.
 * A word longer than a line stands alone.
 */
export function wrapText(text: string, indent: number, lead: string = ' '.repeat(indent)): string[] {
  const lines: string[] = [];
  let line = lead;
  let isEmpty = true;
  for (const word of text.split(' ')) {
    if (!isEmpty && line.length + 1 + word.length > pageWidth) {
      lines.push(line);
      line = ' '.repeat(indent);
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  lines.push(line);
  return lines;
}
