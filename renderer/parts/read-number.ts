/** A comma with three digits behind it marks thousands for some and a fraction for others. */
const oneComma = /^-?[1-9]\d{0,2},\d{3}$/;
const thousands = /^-?[1-9]\d{0,2}(,\d{3}){2,}(\.\d*)?$|^-?[1-9]\d{0,2},\d{3}\.\d*$/;

const withoutSpaces = (text: string): string => text.replaceAll(/\s/g, '');

/** Whether a figure such as 1,200 was typed, which is 1200 to one reader and 1.2 to another. */
export function couldBeThousands(text: string): boolean {
  return oneComma.test(withoutSpaces(text));
}

/**
 * Reads what a person types: a point or a comma as decimal mark, spaces ignored, commas between thousands
 * where they can be nothing else. Null when it is no number, or could be two.
 */
export function readNumber(text: string): number | null {
  const typed = withoutSpaces(text);
  if (oneComma.test(typed)) return null;
  const plain = thousands.test(typed) ? typed.replaceAll(',', '') : typed.replace(',', '.');
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}
