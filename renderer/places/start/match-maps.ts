import type { MapSummary } from '#electron/contract/contract.ts';
import { plainText } from '../../language/plain-text.ts';
import { bodyStyleWords, driveSideLongWords, driveSideWords } from '../../language/words.ts';

/** Maps whose name, body or side of drive holds every word typed, in the order given. */
export function matchMaps(maps: readonly MapSummary[], typed: string): readonly MapSummary[] {
  const wanted = plainText(typed).split(/\s+/).filter(Boolean);
  return maps.filter((map) => {
    const text = plainText(
      [
        map.name,
        bodyStyleWords[map.bodyStyle],
        driveSideWords[map.driveSide],
        driveSideLongWords[map.driveSide],
      ].join(' '),
    );
    return wanted.every((word) => text.includes(word));
  });
}
