/** Bounds of a figure in a form; without a bound on a side, infinite there. */
interface NumberBounds {
  readonly min: number;
  readonly max: number;
  readonly mayBeEmpty: boolean;
}

const plain = (value: number): string => String(Number(value.toFixed(1)));

/** Which two figures a text such as 1,200 can be, and how to say which. */
export function thousandsTrouble(text: string): string {
  const typed = text.trim();
  return `${typed} can be read in two ways. Enter ${typed.replace(',', '')} or ${Number(typed.replace(',', '.'))}.`;
}

/** What is wrong with a typed figure, and what to do. */
export function numberTrouble(text: string, couldBeThousands: boolean, bounds: NumberBounds): string {
  if (couldBeThousands) return thousandsTrouble(text);
  const { min, max, mayBeEmpty } = bounds;
  const span = Number.isFinite(min)
    ? Number.isFinite(max)
      ? ` from ${plain(min)} to ${plain(max)}`
      : ` of ${plain(min)} or more`
    : Number.isFinite(max)
      ? ` up to ${plain(max)}`
      : '';
  return `Enter a number${span}${mayBeEmpty ? ', or nothing' : ''}.`;
}
