import type { MapSummary } from '#electron/contract/contract.ts';
import { bodyStyleWords, driveSideLongWords, driveSideWords } from '../../language/words.ts';

/** Letters only, without accents or case, so that a name is found however it was typed. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase();

/** Maps whose name, body or side of drive holds every word typed, in the order given. */
export function matchMaps(maps: readonly MapSummary[], typed: string): readonly MapSummary[] {
  const wanted = plain(typed).split(/\s+/).filter(Boolean);
  return maps.filter((map) => {
    const text = plain(
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
