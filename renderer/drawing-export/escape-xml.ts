const named: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Whether an XML 1.0 document may hold a character (W3C XML 1.0, section 2.2): no control characters, no halves of letters. */
function mayStand(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code !== 0xfffe && code !== 0xffff);
}

/** A name as it may stand in the text and in the attributes of a drawing. */
export function escapeXml(text: string): string {
  return [...text]
    .filter((letter) => mayStand(letter.codePointAt(0) as number))
    .map((letter) => named[letter] ?? letter)
    .join('');
}
