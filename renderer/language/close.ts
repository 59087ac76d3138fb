import type { CloseHindrance } from '#core/job/can-close.ts';
import type {
  AlongResult,
  ClockKind,
  CloseOutcome,
  DamageCause,
  DamageType,
  FindingResult,
  ProofCheck,
} from '#core/job/closing-words.ts';
import { noCurrentA } from '#core/job/looks-sound.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import type { FindProof, ProofOfCausePart } from '#core/job/proved-find.ts';
import type { RepairPractice, RubCure } from '#core/job/repair-practice-table.ts';
import type { RepairWarning } from '#core/job/repair-warnings.ts';
import type { SoundCapacitance } from '#core/job/sound-capacitance.ts';
import type { SoundExpectation } from '#core/job/sound-expectation.ts';
import { figureText, sayAmps, sayOhms, sayPicofarads, sayVolts } from './say-figure.ts';
import { type LengthSystem, saySmallLength } from './say-length.ts';

export const damageTypeWords: Readonly<Record<DamageType, string>> = {
  chafed: 'Chafed through',
  scuffed: 'Scuffed, not through',
  pinched: 'Pinched',
  cut: 'Cut',
  'broken-inside': 'Broken inside sound insulation',
  'heat-burned': 'Heat-burned',
  corroded: 'Corroded',
  'loose-terminal': 'Terminal loose',
  gnawed: 'Gnawed',
  pierced: 'Pierced',
  'wet-joint': 'Joint wet',
  none: 'No damage',
};

export const damageCauseWords: Readonly<Record<DamageCause, string>> = {
  'edge-touches': 'Rubs on an edge or flange',
  'fastener-through': 'Screw or pin through the loom',
  'fixing-missing': 'Fixing missing or broken',
  misrouted: 'Routed wrong',
  'too-short': 'Too short, pulled tight',
  'pinched-on-refit': 'Trapped when trim or seat went back',
  'moves-with-hinge': 'Bends with a hinge',
  'moves-with-seat': 'Pulled by the seat',
  'heat-nearby': 'Heat near by',
  'water-in': 'Water got in',
  'crushed-by-load': 'Crushed by load or feet',
  'added-wiring': 'Wiring or parts added later',
  gnawed: 'Animals',
  'earlier-repair': 'Earlier repair did not hold',
  'not-known': 'Not known',
};

export const findingResultWords: Readonly<Record<FindingResult, string>> = {
  'proved-cause': 'The cause',
  'damaged-not-cause': 'Damaged, not the cause',
  sound: 'Sound after all',
};

/** What was taken for the cause, by how far that is proved. */
export const findProofWords: Readonly<Record<FindProof, string>> = {
  proved: 'Proved cause',
  'not-given': 'Cause found, not proved yet',
  refused: 'Found, not proved to be the cause',
};

/** The heading of a find. */
export const findTitle = (result: FindingResult, proof: FindProof): string =>
  result === 'proved-cause' ? findProofWords[proof] : findingResultWords[result];

export const practiceWords: Readonly<Record<RepairPractice, string>> = {
  'crimp-and-sealed-sleeve': 'Closed crimp under adhesive-lined heat-shrink',
  'crimp-and-tape': 'Closed crimp and tape (inside the cabin only)',
  'new-length-let-in': 'New length let in: same colour, same section or larger',
  'joints-moved-off-the-bend': 'Joins moved off the bend, into the body',
  'joints-staggered': 'Joins staggered, 40 mm apart or more',
  'pair-kept-twisted': 'Pair kept twisted',
  'overlay-wire': 'New wire laid beside the old one',
  'part-loom-renewed': 'Part of the loom renewed',
  'terminal-renewed': 'Terminal renewed',
  'plug-cleaned': 'Plug cleaned',
  'plug-renewed': 'Plug renewed',
  'insulation-covered': 'Scuffed insulation covered',
};

export const cureWords: Readonly<Record<RubCure, string>> = {
  'fixing-renewed': 'Fixing renewed',
  'fixing-added': 'Fixing added',
  'edge-trim': 'Edge trim on the edge',
  'burr-filed': 'Burr filed, bare metal primed',
  'screw-shortened': 'Screw shortened or replaced',
  rerouted: 'Routed clear of it',
  'bracket-moved': 'Bracket moved',
  'foam-pad': 'Foam pad',
  sleeve: 'Sleeve',
  'split-tube-and-tape': 'Split tube, taped',
  'tie-and-wrap': 'Tie strap and wrap',
  'saddle-clamp': 'Saddle clamp',
  grommet: 'Pass-through seal renewed',
  'drain-opened': 'Drain opened, water kept out',
  'slack-given': 'Slack given for full travel',
  'load-moved': 'Load or part moved away',
};

export const alongWords: Readonly<Record<AlongResult, string>> = {
  sound: 'Sound',
  damaged: 'Damaged',
  'not-seen': 'Could not be seen',
  'none-there': 'None there',
};

export const clockWords: Readonly<Record<ClockKind, string>> = {
  find: 'Find',
  reach: 'Reach',
  repair: 'Repair',
  refit: 'Refit',
};

export const outcomeWords: Readonly<Record<CloseOutcome, string>> = {
  proved: 'Proved and cured',
  'not-found': 'Not found',
  'customer-stopped': 'Customer stopped',
};

export const proofCheckWords: Readonly<Record<ProofCheck, string>> = {
  reading: 'Test again',
  code: 'Fault code cleared and stayed clear',
  function: 'Function tried with everything in place',
  move: 'Loom moved where it failed, circuit watched',
  'airbag-lamp': 'Airbag lamp lights with the ignition and goes out',
};

export const proofPartWords: Readonly<Record<ProofOfCausePart, string>> = {
  damageSeen: 'The damage was seen',
  onFaultyCircuit: 'The damaged wire belongs to the faulty circuit',
  comesAndGoes: 'Moving it, or holding it clear, makes the fault come and go',
};

/** Every sentence of the place where a job is repaired, proved and closed. */
export const closeWords = {
  place: 'Repair and close',
  toSearch: 'Back to the search',
  report: 'Customer’s report',
  digSheet: 'Bench sheet',
  sections: {
    found: 'What was found',
    repair: 'Repair, and what stops it rubbing now',
    along: 'Look along the loom',
    proof: 'Proof: the same tests again',
    refit: 'Refit',
    money: 'Time and money',
    end: 'Close the job',
  },
  done: 'done',
  unchosen: 'Not said yet',
  open: 'open',
  found: {
    none: 'Nothing found yet. Mark what a look showed in the search: the cause, or damage that is not it.',
    inPart: (part: string): string => `In ${part}`,
    inWire: 'In the wire beside it',
    whichPart: 'What was it in?',
    describe: 'Describe this find',
    damage: 'Damage',
    wire: 'Damaged wire',
    noWire: 'Not among the circuits of this map',
    cause: 'Why',
    result: 'What it is',
    note: 'Note',
    noteHint: 'What rubbed on what, how many wires.',
    damageMissing: 'Say what is wrong with the wire.',
    causeMissing: 'Say why, or choose “Not known”.',
    keep: 'Keep this find',
    repairToo: 'Not the cause. The job stays open: repair it too, or leave it and say so in the report.',
    proof: 'Is this the fault? All three, or search on.',
    proofByLook: 'Is this the fault? Both, or search on. This wiring is not moved to see.',
    proved: 'Proof of the cause',
    keepProof: 'Keep the proof',
    notProved: 'Not all of it holds yet: it may be other damage. Complete the proof, or search on.',
    notTheCause: 'Not the cause: search on',
    takeBack: (what: string): string => `Take back: ${what}`,
    takeBackShort: 'Take back',
  },
  photo: {
    add: 'Add a photo',
    hint: 'Choose a file, drop it here, or paste it.',
    original: 'Keep the camera’s own file as well',
    working: (name: string): string => `Making ${name} ready`,
    stop: 'Stop',
    remove: 'Leave out',
    caption: (n: number): string => `Words under photo ${n}`,
    alt: (n: number, caption: string): string => (caption === '' ? `Photo ${n} of the find` : caption),
    gone: 'This photo is not kept here.',
  },
  repair: {
    practices: 'What was done',
    joints: 'Joins',
    cures: 'What stops it rubbing now',
    makerAllows: 'Does the vehicle maker allow a repair of this wiring?',
    maker: { yes: 'Yes', no: 'No', 'not-asked': 'Not looked up' },
    note: 'Note',
    keep: 'Keep the repair',
    another: 'Add to the repair',
    none: 'Describe a find first.',
    warnings: 'Look at this again',
  },
  along: {
    hint: (each: string): string =>
      `Other rub marks ${each} each way, and the same place at the other side or the next fixing. Stacked faults bring the car back.`,
    beside: 'Along the loom, each way',
    twin: 'The twin place',
    missing: 'Say what was seen, or that it could not be seen.',
    keep: 'Keep the look',
    damagedToo: 'More damage: mark it in the search, then describe and repair it here.',
    markIt: 'Mark it in the search',
    note: 'What was seen',
  },
  proof: {
    before: 'Before',
    after: 'After',
    goodIs: 'Good is',
    figure: 'Reading after the repair',
    current: 'Current after the repair',
    currentBad: 'Still flowing. With what the far end shows, the search can go on from here.',
    millivolts: 'Drop to the far end',
    beeper: 'The buzzer',
    beeps: 'Beeps',
    silent: 'Silent',
    shown: 'A reading taken after the repair still shows a fault',
    closedShown: 'The fault is back',
    closedShownHint:
      'The job opens again and the search goes on: everything entered is kept, readings from before the repair no longer count.',
    openLine: 'Open line',
    tried: 'Times moved',
    changed: 'Times it changed',
    good: 'Good',
    bad: 'Still bad',
    wasGood: 'Good',
    wasBad: 'Still bad',
    again: 'Try again',
    unlike: 'This is not what a sound circuit shows. Check the leads, or mark it still bad.',
    noRepair: 'The tests count from the repair on. Keep the repair first.',
    beforePower:
      'Fuse of the right size in, load on. Airbag parts connected, nobody in the car, before the ignition goes on.',
    lookOnly: 'Nothing is measured or moved on this wiring. The vehicle maker’s procedure takes precedence.',
    stillThere: 'The fault is still there',
    stillThereHint:
      'One repair was not all of it. Search on: readings from before the repair no longer count, everything seen so far does.',
    searchOn: 'Search on with what is left',
  },
  refit: {
    none: 'Everything that came off is back on.',
    cautions: 'Before the ignition goes on',
    srs: 'Airbag and belt units connected before ignition on; then the airbag lamp must light and go out.',
    handing:
      'Handing back: airbag lamp proves out, horn, lamps, locks and belts checked; recall look-up advised.',
    loom: 'Loom back in its fixings before the trim goes on.',
    read: 'Read and understood',
  },
  money: {
    clocks: 'Clocks',
    clockFor: (clock: string): string => `Clock: ${clock}`,
    running: 'runs',
    adjust: 'Put a clock right',
    adjustBy: 'Minutes to add (minus takes off)',
    adjustKeep: 'Put right',
    clock: 'Clock',
    agreed: 'Agreed with the customer',
    noLimit: 'No limit agreed yet',
    measure: 'Limit in',
    measures: { minutes: 'Minutes', amount: 'Money' },
    first: 'Limit',
    more: 'On top of the limit',
    by: 'Agreed by',
    keepFirst: 'Keep the limit',
    keepMore: 'Keep the extension',
    stage: (amount: string, by: string): string => (by === '' ? amount : `${amount}, agreed by ${by}`),
    extension: 'Extension',
    limit: 'Limit',
    of: 'of',
    over: 'Over the limit: ask before going on',
    near: 'Close to the limit: ask now',
    next: 'To read out: the next three places',
    nextLine: (minutes: string, refit: string, chance: string): string =>
      `${minutes} min to open and look, ${refit} min to put back, and a ${chance} % chance of having found it.`,
    nextAmount: (amount: string): string => `About ${amount} for that.`,
    nothingNext: 'Nothing left to open.',
    foundNow: 'The cause is found: no further place to open.',
    noRate: 'Set an hourly rate in the settings to have it in money.',
  },
  end: {
    outcome: 'How it ends',
    reason: 'Why',
    reasonHint: 'Such as: not seen again in 12 km; customer wants no more taken apart.',
    advice: 'Advice for the customer',
    close: 'Close the job',
    missing: 'Still missing',
    reminders: 'Worth a second thought',
    ready: 'Nothing is missing.',
    closed: (outcome: string): string => `Closed: ${outcome}`,
    closedHint: 'What was found is part of this model’s history now.',
    reopen: 'Open again',
    another: 'Next car of this model',
  },
  shop: {
    title: 'Workshop',
    name: 'Name on reports',
    address: 'Address or telephone',
    rate: 'Hourly rate',
    currency: 'Currency',
    logo: 'Logo',
    setLogo: 'Choose a logo',
    noLogo: 'Leave the logo out',
    paper: 'Paper',
    papers: { a4: 'A4', letter: 'Letter' },
    perHour: 'per hour',
  },
  header: {
    toClose: 'Repair and close',
    spent: 'spent',
    noClock: 'Clock stopped',
    min: 'min',
  },
} as const;

/** What a sound circuit shows. */
export function expectationSentence(expected: SoundExpectation): string {
  switch (expected.what) {
    case 'figure': {
      const text = figureText(
        expected.unit === 'ohm' ? sayOhms(rounded(expected.value)) : sayVolts(rounded(expected.value)),
      );
      return expected.rough ? `about ${text}, by the usual size of what is plugged in` : `about ${text}`;
    }
    case 'open-line':
      return 'open line';
    case 'beeps':
      return `beeps: the sound wire has ${soundOhms(expected.ohms)}`;
    case 'silent':
      return `silent: the sound circuit has ${soundOhms(expected.ohms)}`;
    case 'may-beep':
      return `may beep or not: the sound circuit has ${soundOhms(expected.ohms)}, close to where a buzzer starts. Measure ohms instead.`;
    case 'current':
      return currentSentence(expected.amps, expected.rough);
    case 'capacitance':
      return capacitanceSentence(expected);
    case 'symptom-gone':
      return 'the fault does not show';
    case 'no-change':
      return 'no change, however it is moved';
    case 'works':
      return 'works as it should';
    case 'as-sound':
      return 'as a sound circuit';
  }
}

const soundOhms = (ohms: number | 'open-line'): string =>
  ohms === 'open-line' ? 'an open line' : `about ${figureText(sayOhms(rounded(ohms)))}`;

function currentSentence(amps: number, rough: boolean): string {
  if (amps < noCurrentA) return `no current: under ${figureText(sayAmps(noCurrentA))}, lamp dark`;
  const text = `about ${figureText(sayAmps(rounded(amps)))}`;
  return rough ? `at most ${text}, by the usual size of what is plugged in` : text;
}

function capacitanceSentence({ fromPf, toPf, by, beforePf }: SoundCapacitance): string {
  const from = figureText(sayPicofarads(rounded(fromPf)));
  const to = figureText(sayPicofarads(rounded(toPf)));
  if (by === 'both-ends') return `${from} to ${to}: what both ends showed before, together`;
  const more = beforePf === null ? '' : `, and more than the ${figureText(sayPicofarads(beforePf))} before`;
  return `${from} to ${to}, by the usual wire of this length${more}`;
}

const rounded = (value: number): number => Number(value.toPrecision(2));

/** What is missing before a job can be closed, and what to do. */
export function hindranceSentence(
  hindrance: CloseHindrance,
  nameOf: (id: string) => string,
  testName: (item: ProofItem) => string = ({ check }) => proofCheckWords[check],
): string {
  switch (hindrance.code) {
    case 'no-cause-found':
      return 'No cause is described. Describe what was found, or close as not found.';
    case 'not-proved':
      return `The cause is not proved: ${hindrance.missing.map((part) => lower(proofPartWords[part])).join('; ')}.`;
    case 'not-repaired':
      return hindrance.isCause
        ? 'The cause is not repaired.'
        : 'Other damage was found and is not repaired. Repair it, or leave it and say so.';
    case 'still-rubs':
      return 'Nothing is entered that stops it rubbing now.';
    case 'not-looked-along':
      return 'The loom was not looked along each way and at the twin place.';
    case 'test-missing':
      return `Not tried after the repair: ${lower(testName(hindrance.item))}.`;
    case 'test-bad':
      return `Still bad after the repair: ${lower(testName(hindrance.item))}.`;
    case 'shown-after-repair':
      return hindrance.entryIds.length === 1
        ? 'A reading taken after the repair still shows a fault. Search on, or take the test again.'
        : `${String(hindrance.entryIds.length)} readings taken after the repair still show a fault. Search on, or take the tests again.`;
    case 'panels-off':
      return `Still off: ${hindrance.panelIds.map(nameOf).join(', ')}.`;
    case 'no-reason':
      return 'Write down why it ends here.';
  }
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What is wrong with a repair as entered, and what to do instead. */
export function repairWarningSentence(
  warning: RepairWarning,
  nameOf: (id: string) => string,
  lengths: LengthSystem,
): string {
  switch (warning.code) {
    case 'join-in-flexing-part':
      return warning.trait === 'crosses-hinge'
        ? 'A join where the loom bends with a hinge breaks again. Let in a longer piece and put the joins in the body.'
        : 'A join where the loom moves with the seat breaks again. Let in a longer piece and put the joins where it lies still.';
    case 'joins-side-by-side':
      return `${warning.joints} joins: stagger them so that no two sit side by side, or they chafe each other.`;
    case 'fixing-not-renewed':
      return 'A fixing is missing here on the map. Without it the loom moves again: renew it.';
    case 'cause-not-removed':
      return 'Say what stops it rubbing now. A new wire on the old edge fails again, and its neighbours are next.';
    case 'join-not-sealed':
      return 'This run gets wet. Tape alone lets water in: seal the join with adhesive-lined heat-shrink.';
    case 'join-near-plug':
      return `The join sits ${figureText(saySmallLength(warning.gapMm, lengths))} from ${nameOf(warning.nodeId)}. Keep joins 50 mm away from plugs and branches.`;
    case 'pair-untwisted':
      return 'Data line: keep the pair twisted, untwist less than 50 mm and offset the joins.';
    case 'maker-must-allow':
      return warning.duty === 'high-voltage'
        ? 'High-voltage wiring is repaired by trained people to the maker’s procedure only.'
        : 'Airbag wiring: many makers forbid any repair. Look it up, and repair only what the maker allows.';
    case 'no-heat-near-fuel':
      return 'Fuel near by: no heat gun, no flame. Use a cold seal or move the work away.';
    case 'shield-trim-from-heat':
      return 'Hot air: shield trim, headlining and airbag fabric.';
  }
}

/** Codes whose words hold a typed word, so that a search for “rubs” finds the cause by its meaning. */
export function codesMeant(word: string): readonly string[] {
  const typed = word.toLowerCase();
  return [...Object.entries(damageTypeWords), ...Object.entries(damageCauseWords)]
    .filter(([code, words]) => words.toLowerCase().includes(typed) || code.includes(typed))
    .map(([code]) => code);
}
