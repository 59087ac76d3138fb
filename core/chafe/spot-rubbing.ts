import type { RubSpot } from '../map/records.ts';
import { alike, meanContact, meanTail } from './mean-contact.ts';
import { quickTail } from './quick-tail.ts';
import type { RunContext } from './run-context.ts';
import { type RunMotion, swingsOfSpan } from './run-motion.ts';
import type { SpotMeeting } from './spot-meeting.ts';
import type { SpotTrail } from './spot-trail.ts';

/** A swing whose motion rises over a slice by less than this share is taken to move alike all through it. */
const notableRise = 0.1;

/** Filled anew for every spot; nothing is kept in it. */
const room = {
  /** Of every swing, how far it may hang or stray towards the spot at mid-span. */
  droopMm: new Float64Array(0),
  /** Of every span, how near is near. */
  reachMm: new Float64Array(0),
  rubbed: new Float64Array(0),
  touched: new Float64Array(0),
};

/**
 * For every span of a run, the distance beyond which none of its swings, clips gone or not, brings the loom to a
 * spot. Good until asked for the next spot.
 * @example
 * fillReaches({ spans: [{}], assumptions: defaultAssumptions }, { sigmaMm: [3, -1, -1], slackMm: [1], sagMm: [2] }, 'below', { tauMm: 4, offsetMm: 0, sigmas: 3 })[0] // => 18
 */
export function fillReaches(
  { spans, assumptions }: Pick<RunContext, 'spans' | 'assumptions'>,
  { sigmaMm, slackMm, sagMm }: RunMotion['swings'],
  side: RubSpot['side'],
  { tauMm, offsetMm, sigmas }: SpotMeeting,
): Float64Array {
  const swings = swingsOfSpan * spans.length;
  if (room.droopMm.length < swings) {
    room.droopMm = new Float64Array(2 * swings);
    room.reachMm = new Float64Array(2 * swings);
  }
  for (let i = 0; i < spans.length; i++) {
    let gapMm = 0;
    for (let at = swingsOfSpan * i; at < swingsOfSpan * (i + 1); at++) {
      const sigma = sigmaMm[at] as number;
      if (sigma < 0) continue;
      const slack = slackMm[at] as number;
      const droopMm = side === 'above' ? 0 : side === 'below' ? slack + (sagMm[at] as number) : slack;
      room.droopMm[at] = droopMm;
      const farMm = droopMm + sigmas * Math.sqrt(sigma * sigma + tauMm * tauMm);
      if (farMm > gapMm) gapMm = farMm;
    }
    room.reachMm[i] = Math.min(assumptions.reachMm, gapMm - offsetMm);
  }
  return room.reachMm;
}

/**
 * `rubWork` times wear in each cell along a trail, every swing with its chance, N mm/s per mm over the capacity;
 * cells off the trail hold what other spots left. `fillReaches` of the same run and spot comes first, and the
 * trail is not empty. Good until asked for the next spot. O(pieces).
 * @example
 * spotRubbing({ count: 1, cell: [0], slice: [0] }, { spanOf: [0], swings: { sigmaMm: [-1, -1, -1] } }, { tauMm: 4, offsetMm: 0, sigmas: 3 }, 0, 0.3)[0] // => 0
 */
export function spotRubbing(
  trail: SpotTrail,
  motion: RunMotion,
  meeting: SpotMeeting,
  forceN: number,
  motionAtClip: number,
): Float64Array {
  const { count, slice } = trail;
  const rubbed = clear('rubbed', trail);
  let from = 0;
  while (from < count) {
    const span = motion.spanOf[slice[from] as number] as number;
    let to = from + 1;
    while (to < count && motion.spanOf[slice[to] as number] === span) to++;
    for (let k = 0; k < swingsOfSpan; k++) {
      const swing = swingsOfSpan * span + k;
      if ((motion.swings.sigmaMm[swing] as number) < 0) continue;
      addSwung(trail, from, to, k, motion, meeting, swing, forceN, motionAtClip);
    }
    from = to;
  }
  return rubbed;
}

function clear(what: 'rubbed' | 'touched', { count, cell }: SpotTrail): Float64Array {
  const endCell = (cell[count - 1] as number) + 1;
  if (room[what].length < endCell) room[what] = new Float64Array(2 * endCell);
  return room[what].fill(0, cell[0] as number, endCell);
}

/** Adds what one swing does over some pieces of its span, each piece's mean. */
function addSwung(
  { cell, slice, start, part, fromMm, toMm }: SpotTrail,
  first: number,
  end: number,
  k: number,
  { share, sine, sineRise, worth, swings }: RunMotion,
  { tauMm, offsetMm, sigmas }: SpotMeeting,
  swing: number,
  forceN: number,
  motionAtClip: number,
): void {
  const { rubbed } = room;
  const midSigmaMm = swings.sigmaMm[swing] as number;
  const droopMm = room.droopMm[swing] as number;
  const steady = forceN > 0 ? forceN * (swings.slipOverWork[swing] as number) : 0;
  const moving = 1 - motionAtClip;
  const tau2 = tauMm * tauMm;
  const alikeMm = alike * tauMm;
  const sigmas2 = sigmas * sigmas;
  // A hair more than mid-span allows: no shape is larger than one but by rounding.
  const far2 = 1.01 * sigmas2 * (midSigmaMm * midSigmaMm + tau2);
  for (let i = first; i < end; i++) {
    const from = (fromMm[i] as number) + offsetMm;
    const to = (toMm[i] as number) + offsetMm;
    const nearestMm = Math.min(from, to) - droopMm;
    if (nearestMm > 0 && nearestMm * nearestMm > far2) continue;
    const s = slice[i] as number;
    const at = swingsOfSpan * s + k;
    const height = sine[at] as number;
    const rise = sineRise[at] as number;
    const startsAt = start[i] as number;
    const long = part[i] as number;
    const middle = startsAt + long / 2 - 0.5;
    const shape = motionAtClip + moving * (height + rise * middle);
    const sigmaMm = midSigmaMm * shape;
    const open2 = sigmaMm * sigmaMm + tau2;
    if (nearestMm > 0 && nearestMm * nearestMm > sigmas2 * open2) continue;
    const perOpen = 1 / Math.sqrt(open2);
    const gapFromMm = from - droopMm * (height + rise * (startsAt - 0.5));
    const gapToMm = to - droopMm * (height + rise * (startsAt + long - 0.5));
    const wayMm = gapToMm - gapFromMm;
    // Nearly all pieces lie off the spot and pass it aslant; the others are worked out apart.
    const plain = gapFromMm > 0 && gapToMm > 0 && (wayMm > alikeMm || wayMm < -alikeMm);
    let contact = plain
      ? meanTail(gapFromMm * perOpen, gapToMm * perOpen)
      : meanContact(gapFromMm, gapToMm, 1 / perOpen, tauMm);
    // The loom moves more on one side of the piece and touches more on one: the mean is not the product of means.
    const twiceRise = 2 * moving * rise;
    const meanShape = motionAtClip + moving * height;
    if (twiceRise > notableRise * meanShape || twiceRise < -notableRise * meanShape) {
      const riseOver = twiceRise / meanShape;
      const contactRise =
        quickTail(gapToMm > 0 ? gapToMm * perOpen : gapToMm / tauMm) -
        quickTail(gapFromMm > 0 ? gapFromMm * perOpen : gapFromMm / tauMm);
      contact += riseOver * (middle * contact + (long * contactRise) / 12);
    }
    if (steady > 0) {
      const hungMm = droopMm * (height + rise * middle);
      contact += (steady / shape) * meanContact(from - hungMm, to - hungMm, tauMm, tauMm);
    }
    const c = cell[i] as number;
    const weight = (long * (share[s] as number)) / 2;
    rubbed[c] = (rubbed[c] as number) + weight * (worth[at] as number) * contact;
  }
}

/**
 * Wear times the chance that the loom touches when it hangs still, in each cell along a trail; otherwise as
 * `spotRubbing`.
 * @example
 * spotTouching({ count: 1, cell: [0], slice: [0], start: [0], part: [1], fromMm: [0], toMm: [0] }, { spanOf: [0], share: [1], sine: [0], sineRise: [0], wear: [3] }, { tauMm: 4, offsetMm: 0 })[0] // => 0.75
 */
export function spotTouching(
  trail: SpotTrail,
  { share, sine, sineRise, spanOf, wear }: RunMotion,
  { tauMm, offsetMm }: SpotMeeting,
): Float64Array {
  const { count, cell, slice, start, part, fromMm, toMm } = trail;
  const touched = clear('touched', trail);
  for (let i = 0; i < count; i++) {
    const s = slice[i] as number;
    const at = swingsOfSpan * s;
    const droopMm = room.droopMm[swingsOfSpan * (spanOf[s] as number)] as number;
    const height = sine[at] as number;
    const rise = sineRise[at] as number;
    const startsAt = start[i] as number;
    const long = part[i] as number;
    const gapFromMm = (fromMm[i] as number) + offsetMm - droopMm * (height + rise * (startsAt - 0.5));
    const gapToMm = (toMm[i] as number) + offsetMm - droopMm * (height + rise * (startsAt + long - 0.5));
    const weight = (long * (share[s] as number)) / 2;
    const c = cell[i] as number;
    touched[c] =
      (touched[c] as number) + weight * (wear[s] as number) * meanContact(gapFromMm, gapToMm, tauMm, tauMm);
  }
  return touched;
}
