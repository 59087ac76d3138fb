import type { DriveSide } from '#core/map/kinds.ts';

/** How the two sides of a car are said. Records always keep left and right, facing forward. */
export const sideNamings = ['left-right', 'near-off'] as const;
export type SideNaming = (typeof sideNamings)[number];

/**
 * A name as the user wants sides said. Names keep left and right, seen facing forward; the near side is
 * the kerb side, which is the left where the driver sits on the right.
 */
export function saySide(name: string, driveSide: DriveSide, sides: SideNaming): string {
  if (sides === 'left-right') return name;
  const near = driveSide === 'right' ? 'left' : 'right';
  return name.replaceAll(/\b(left|right)(-hand)?\b/gi, (word, side: string) => {
    const said = side.toLowerCase() === near ? 'near side' : 'off side';
    return /^[A-Z]/.test(word) ? said.charAt(0).toUpperCase() + said.slice(1) : said;
  });
}
