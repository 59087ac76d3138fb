const otherSide: Readonly<Record<string, string>> = { left: 'right', right: 'left', lh: 'rh', rh: 'lh' };

/** The other side's word in the letters the word was written in: LEFT, Left or left. */
function inLettersOf(word: string, other: string): string {
  if (word === word.toUpperCase()) return other.toUpperCase();
  return word.charAt(0) === word.charAt(0).toUpperCase()
    ? other.charAt(0).toUpperCase() + other.slice(1)
    : other;
}

/**
 * A name for the same thing on the other side of the car: the whole words left and right, LH and RH
 * change places; near side and off side stay, for they depend on the side of drive and are for the user to say.
 * @example
 * otherSideName('Left sill, front left corner') // => 'Right sill, front right corner'
 */
export function otherSideName(name: string): string {
  return name.replaceAll(/\b(left|right|lh|rh)\b/gi, (word) =>
    inLettersOf(word, otherSide[word.toLowerCase()] as string),
  );
}
