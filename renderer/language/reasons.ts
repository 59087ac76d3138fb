import type { CauseShare } from '#core/chafe/cause.ts';
import type { Reason } from '#core/job/ranking.ts';
import { type Covering, coverings, type RubSpotKind, rubSpotKinds } from '#core/map/kinds.ts';
import { type LengthSystem, saySmallLength } from './say-length.ts';
import { coveringWords, rubSpotKindWords } from './words.ts';

/** A cause under this share of a stretch's hazard does not explain why the stretch stands where it does. */
const leastShareSaid = 0.15;

/** Openings nearer than this to the mean are neither quick nor slow. */
const worthSaid = 1.3;

/**
 * Why a place ranks where it does, as one sentence: the main causes, then what the opening costs for
 * its chance. `nameOf` gives the user's name of a record.
 */
export function reasonSentence(
  reason: Reason,
  nameOf: (id: string) => string,
  lengths: LengthSystem = 'metric',
): string {
  const named = reason.causes.filter(({ share }) => share >= leastShareSaid);
  const marked = named.filter(({ cause }) => cause !== 'anywhere');
  const causes = (marked.length > 0 ? marked : named)
    .slice(0, 2)
    .map((cause) => causePhrase(cause, nameOf, lengths));
  const why = causes.length > 0 ? causes.join('; ') : causePhrase(evenCause, nameOf, lengths);
  const parts = [why, worthPhrase(reason)].filter((part) => part !== '');
  const sentence = parts.join('; ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}

const evenCause: CauseShare = { cause: 'anywhere', thing: null, share: 1, figures: {} };

/** One cause with the figures that make it so, in lower case for use inside a sentence. */
export function causePhrase(
  { cause, thing, figures }: CauseShare,
  nameOf: (id: string) => string,
  lengths: LengthSystem = 'metric',
): string {
  const size = (mm: number): string => {
    const { value, unit } = saySmallLength(mm, lengths);
    return `${value} ${unit}`;
  };
  const extras: string[] = [];
  const span = figures.spanMm === undefined ? '' : `a span of ${size(figures.spanMm)} between fixings`;
  switch (cause) {
    case 'rub-spot': {
      const named = thing ? nameOf(thing) : '';
      const kind = rubSpotWord(figures.rubSpotKind);
      if (figures.clearanceMm !== undefined) {
        extras.push(
          figures.clearanceMm < 0.5 ? 'touching the loom' : `${size(figures.clearanceMm)} from the loom`,
        );
      }
      if (span) extras.push(span);
      if (figures.missingClips) extras.push(missingWords(figures.missingClips));
      if (figures.timesFound) extras.push(foundWords(figures.timesFound));
      return withExtras(named && named !== thing ? `${kind} (${named})` : kind, extras);
    }
    case 'bare-body':
      if (figures.sagMm !== undefined) extras.push(`sags ${size(figures.sagMm)}`);
      if (figures.missingClips) extras.push(missingWords(figures.missingClips));
      return withExtras(span ? `loom free to move over ${span}` : 'loom lying on bare body', extras);
    case 'clip-edge':
      if (span) extras.push(span);
      return withExtras('loom working at the edge of a fixing', extras);
    case 'pass-through':
      return thing ? `goes through the body at ${nameOf(thing)}` : 'goes through a hole in the body';
    case 'tight-bend':
      if (figures.bendRadiusMm !== undefined) extras.push(`radius ${size(figures.bendRadiusMm)}`);
      if (figures.bundleDiameterMm !== undefined) extras.push(`loom ${size(figures.bundleDiameterMm)} thick`);
      return withExtras('bent tightly', extras);
    case 'hinge-flex':
      return 'bent each time the hinge moves';
    case 'seat-slide':
      return 'dragged each time the seat slides';
    case 'foot-load':
      return 'trodden on under the carpet';
    case 'wet':
      return 'lies where water gets in';
    case 'joint':
      return thing ? `pins and joints at ${nameOf(thing)}` : 'pins and joints';
    case 'anywhere':
      return coveringWord(figures.covering)
        ? `nothing marked here (${coveringWord(figures.covering)}); chance by length alone`
        : 'nothing marked here; chance by length alone';
  }
}

function worthPhrase({ worthRatio, alreadyOpen, secondLook }: Reason): string {
  if (secondLook) return 'a second look for what the first may have missed';
  if (alreadyOpen) return 'already open';
  if (worthRatio >= worthSaid) return `${worthRatio.toFixed(1)} times the usual chance for each minute`;
  if (worthRatio <= 1 / worthSaid) return 'slow to reach for its chance';
  return '';
}

function missingWords(count: number): string {
  return count === 1 ? 'a fixing is missing' : `${count} fixings are missing`;
}

function foundWords(count: number): string {
  return count === 1 ? 'found here once before' : `found here ${count} times before`;
}

function withExtras(words: string, extras: readonly string[]): string {
  return extras.length > 0 ? `${words}, ${extras.join(', ')}` : words;
}

function rubSpotWord(kind: string | undefined): string {
  const known = rubSpotKinds.find((each): each is RubSpotKind => each === kind);
  return (known ? rubSpotKindWords[known] : 'Rub spot').toLowerCase();
}

function coveringWord(covering: string | undefined): string {
  const known = coverings.find((each): each is Covering => each === covering);
  if (!known) return '';
  const said = coveringWords[known];
  return said.startsWith('PVC') ? said : said.toLowerCase();
}
