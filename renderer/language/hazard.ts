import type { CauseFigures, CauseShare } from '#core/chafe/cause.ts';
import { type Covering, coverings, type RubSpotKind, rubSpotKinds } from '#core/map/kinds.ts';
import { type LengthSystem, saySmallLength } from './say-length.ts';
import { coveringWords, rubSpotKindWords } from './words.ts';

/** A share as a percentage; small ones are not said to be none. */
export function sayShare(share: number): string {
  if (share <= 0) return '0 %';
  if (share < 0.01) return 'under 1 %';
  return `${Math.round(share * 100)} %`;
}

/** A share in words, for those who do not read figures first. */
export function shareWords(exact: number): string {
  // As rounded in the figure beside it, so that the two never disagree.
  const share = Math.round(exact * 100) / 100;
  if (share >= 0.9) return 'nearly all';
  if (share >= 0.6) return 'most';
  if (share > 0.55) return 'more than half';
  if (share >= 0.45) return 'about half';
  if (share >= 0.2) return 'a good part';
  if (share >= 0.05) return 'a small part';
  return 'hardly any';
}

const size = (mm: number, lengths: LengthSystem): string => {
  const { value, unit } = saySmallLength(mm, lengths);
  return `${value} ${unit}`;
};

/** Words about how much hazard a place carries. */
export const hazardWords = {
  title: (share: number): string => `Why it can chafe (${sayShare(share)} of the map’s hazard)`,
  compares: 'Hazard only compares places with one another. It foretells no date.',
  ofMap: (share: number): string =>
    `This run carries ${shareWords(share)} of the whole map’s hazard: ${sayShare(share)}.`,
  strip: 'Hazard along the run. Press a place, or move along with the arrow keys.',
  place: 'Place along the run',
  placeSaid: (mm: number, from: string, lengths: LengthSystem): string => `${size(mm, lengths)} from ${from}`,
  around: (fromMm: number, toMm: number, from: string, lengths: LengthSystem): string =>
    `${size(fromMm, lengths)} to ${size(toMm, lengths)} from ${from}`,
  ofRun: (share: number): string => `${sayShare(share)} of this run’s hazard is on this stretch.`,
  worst: 'Worst place',
  reasons: 'Shares of the hazard here',
  none: 'Nothing makes this stretch worse than any other.',
  spot: {
    title: 'Hazard it adds',
    inList: (share: number): string => `${share > 0 && share < 0.01 ? '<1 %' : sayShare(share)} of hazard`,
    adds: (ofRun: number, run: string, ofMap: number): string =>
      `It makes ${shareWords(ofRun)} of the hazard on ${run} (${sayShare(ofRun)}) and ${sayShare(ofMap)} of the whole map’s.`,
    also: (ofRun: number, run: string): string => `${run}: ${sayShare(ofRun)} of that run’s hazard`,
    nothing: 'It adds nothing: no run comes near enough. Move it, or give the free gap as seen on the car.',
    kinds: 'What each kind does',
  },
  whatIf: {
    title: 'What if',
    adds: { clip: 'A fixing here', sleeve: 'A cover', 'edge-strip': 'An edge strip' },
    cover: 'Cover',
    spot: 'Over which edge',
    noSpot: 'No rub spot is near this run, so there is no edge to put a strip on.',
    best: 'Find the best place for it',
    before: 'Before',
    after: 'After',
    falls: (share: number): string => `The hazard of this run falls by ${sayShare(share)}.`,
    rises: (share: number): string => `The hazard of this run would rise by ${sayShare(share)}: not here.`,
    same: 'That changes next to nothing.',
    ofMap: (share: number): string => `Of the whole map’s hazard that is ${sayShare(share)}.`,
    setClip: 'It is fitted: put this fixing on the map',
    setCover: 'It is fitted: put this cover on the map',
    advice:
      'For the repair: fit the edge strip, then say on the rub spot what the loom meets now, such as a panel edge.',
    adviceFit: 'For the repair. Put it on the map only when the car has it.',
  },
} as const;

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** What one cause is, with the figures that make it so; without its share. */
export function causeWords(
  { cause, thing, figures }: CauseShare,
  nameOf: (id: string) => string,
  lengths: LengthSystem,
): string {
  switch (cause) {
    case 'rub-spot':
    case 'foot-load':
    case 'seat-slide': {
      const kind = figures.rubSpotKind ? rubSpotWord(figures.rubSpotKind) : '';
      const named = thing && (kind || cause === 'rub-spot') ? nameOf(thing) : '';
      const what = kind && named && named !== thing && named !== kind ? `${kind} (${named})` : kind || named;
      const away =
        figures.clearanceMm === undefined
          ? ''
          : figures.clearanceMm < 0.5
            ? ' touching the loom'
            : ` ${size(figures.clearanceMm, lengths)} away`;
      const how =
        cause === 'foot-load'
          ? 'Trodden on under the carpet'
          : cause === 'seat-slide'
            ? 'Dragged each time the seat slides'
            : '';
      const against = what === '' ? '' : `${how === '' ? what : lowerFirst(what)}${away}`;
      const found = figures.timesFound ? `, found here before: ${figures.timesFound}` : '';
      return `${[how, against].filter((part) => part !== '').join(' against ')}${found}`;
    }
    case 'bare-body':
      return 'Bare body beside the loom, nothing drawn';
    case 'clip-edge':
      return 'Working at the edge of a fixing';
    case 'pass-through':
      return thing ? `Goes through the body at ${nameOf(thing)}` : 'Goes through a hole in the body';
    case 'tight-bend':
      return figures.bendRadiusMm === undefined
        ? 'Bent tightly'
        : `Bent tightly, radius ${size(figures.bendRadiusMm, lengths)}`;
    case 'hinge-flex':
      return 'Bent each time the hinge moves';
    case 'wet':
      return 'Lies where water gets in';
    case 'joint':
      return thing ? `Pins and joints at ${nameOf(thing)}` : 'Pins and joints';
    case 'anywhere':
      return 'Nothing drawn here, chance by length alone';
  }
}

/** How the loom is held and covered on a stretch, from what its causes know: "fixings 340 mm apart, hangs 6 mm between them, PVC tape only". */
export function heldWords(causes: readonly CauseShare[], lengths: LengthSystem): string {
  const figures = causes.find(
    ({ figures: { spanMm, freeMm, unheld } }) => spanMm ?? freeMm ?? unheld,
  )?.figures;
  const covering = causes.find((each) => each.figures.covering !== undefined)?.figures.covering;
  const parts: string[] = [];
  if (figures) parts.push(spanWords(figures, lengths));
  if (figures?.sagMm !== undefined && figures.sagMm >= 0.5) {
    parts.push(`the loom hangs ${size(figures.sagMm, lengths)} between them`);
  }
  if (figures?.missingClips) {
    parts.push(figures.missingClips === 1 ? '1 fixing missing' : `${figures.missingClips} fixings missing`);
  }
  const cover = coverings.find((each): each is Covering => each === covering);
  if (cover) parts.push(coverPhrase(cover));
  const said = parts.join(', ');
  return said === '' ? '' : `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
}

/** How a span is held: "fixings 340 mm apart", or what is said where the next fixing is not on the run. */
export function spanWords(
  { spanMm, beyondRun, freeMm }: Pick<CauseFigures, 'spanMm' | 'beyondRun' | 'freeMm'>,
  lengths: LengthSystem,
): string {
  if (freeMm !== undefined) return `free for ${size(freeMm, lengths)} past the last fixing`;
  if (spanMm === undefined) return 'no fixing drawn on it';
  const said = `fixings ${size(spanMm, lengths)} apart`;
  return beyondRun ? `next ${said}, past this run’s end` : said;
}

function coverPhrase(cover: Covering): string {
  const word = cover.startsWith('pvc') ? coveringWords[cover] : coveringWords[cover].toLowerCase();
  return cover.endsWith('tape') ? `${word} only` : cover === 'bare' ? word : `in ${word}`;
}

function rubSpotWord(kind: string): string {
  const known = rubSpotKinds.find((each): each is RubSpotKind => each === kind);
  return rubSpotKindWords[known ?? 'other'];
}

/** Why each kind of rub spot wears a loom, in one line. Common practice, no source. */
export const rubSpotReasons: Readonly<Record<RubSpotKind, string>> = {
  burr: 'A hard point like a file tooth; little movement is enough.',
  'fastener-tip': 'A thread works like a rasp, and often it was fitted after the loom.',
  'raw-edge': 'A cut sheet edge that nobody folded; it slices tape first, then the wall.',
  'panel-edge': 'A folded edge: blunt, so it takes long, but many fixings leave the loom on it.',
  flange: 'Spot-welded lip with splashes along it; worst where the loom crosses.',
  bracket: 'Pressed or drilled edge that moves against the loom with the body.',
  'seat-mount': 'Bolt heads and rail ends; the seat is taken out and put back on the loom.',
  hinge: 'The loom bends here with every opening and can be caught by the hinge.',
  'moving-part': 'A shaft, pedal, slide or belt that runs past; every stroke rubs.',
  'clamp-edge': 'The edge of the clamp that holds it: close, and always pressed on.',
  'smooth-panel': 'Painted sheet without an edge; slow, but over a long stretch.',
  other: 'Something else that touches; say in the note what it is.',
};

/** Causes under this share do not go into a line. */
const leastInLine = 0.1;
const mostInLine = 2;

/**
 * Why a stretch can be worn, in one line for a sheet: "68 % screw tip (load rail) 2 mm away; 20 % bare body
 * beside the loom, nothing drawn. Fixings 180 mm apart, PVC tape only." Empty where nothing is known.
 */
export function whyLine(
  causes: readonly CauseShare[],
  nameOf: (id: string) => string,
  lengths: LengthSystem,
): string {
  const large = causes.filter(({ share }) => share >= leastInLine);
  const drawn = large.filter(({ cause }) => cause !== 'anywhere');
  const said = (drawn.length > 0 ? drawn : large).slice(0, mostInLine).map((cause) => {
    const words = causeWords(cause, nameOf, lengths);
    return drawn.length > 0 ? `${sayShare(cause.share)} ${lowerFirst(words)}` : words;
  });
  return [said.length > 0 ? `${said.join('; ')}.` : '', heldWords(causes, lengths)]
    .filter((part) => part !== '')
    .join(' ');
}
