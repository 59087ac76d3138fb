import type { TestCaution } from '#core/job/closing-entries.ts';
import type { OpenBecause } from '#core/job/open-because.ts';
import type { RankWarning } from '#core/job/ranking.ts';
import type { Caution } from '#core/map/kinds.ts';

/** Why a look needs nothing taken off. */
export const openWords: Readonly<Record<OpenBecause, string>> = {
  'nothing-over-it': 'No trim marked over it: look here',
  'off-now': 'Already open: look here',
  'off-by-then': 'Open by then: look here',
};

/** Every sentence of the place where a fault is looked for, except problems and reasons. */
export const findWords = {
  place: 'Find the fault',
  boardLabel: 'Vehicle map with the circuit under search',
  header: {
    vehicle: 'Vehicle',
    complaint: 'Complaint',
    failure: 'Failure type',
    circuit: 'Circuit under search',
    noPlate: 'No plate or stock number',
    noComplaint: 'No complaint written down',
    noCircuit: 'No circuit chosen',
    change: 'Change intake',
    map: 'Vehicle map',
    size: 'mm²',
  },
  refit: {
    none: 'All panels on',
    some: (count: number): string => `${count} off, to refit`,
    label: 'Panels to refit',
    backOn: (panel: string): string => `Back on: ${panel}`,
    on: 'Back on',
  },
  list: {
    label: 'Where to open first',
    record: 'Record',
    stretches: 'Stretches',
    takeOffFirst: 'Take off first',
    nothingToTakeOff: openWords,
    lookAgain: 'Already open: look again',
    running: 'By then',
    runningTotal: 'found',
    minutes: 'min',
    percent: '%',
    off: 'Off',
    markOff: (panel: string): string => `${panel}: mark off`,
    opening: 'Opening',
    rest: (count: number): string => `Show ${count} more`,
    part: (plugs: string): string => `Part ${plugs} and look in`,
    expected: 'If it is in one of these places, found on average after',
  },
  verdict: {
    label: 'What the look showed',
    sound: 'Seen, sound',
    damaged: 'Seen, damaged, not the cause',
    found: 'Cause found',
    quality: 'How well could you see?',
    clear: 'Clear view',
    half: 'Half hidden',
    feel: 'By feel',
    alsoOff: (panels: string): string => `A clear view means these are off, and marks them so: ${panels}.`,
    picked: 'Picked stretch',
    letGo: 'Let go',
    provedHint:
      'It counts once it is proved: the damage is seen, it is on this circuit, and moving it makes the fault come and go.',
  },
  straight: {
    label: 'Loom laid straight',
    nothing: 'Nothing ranked yet',
    chanceOf: (percent: string): string => `chance ${percent}`,
  },
  pointed: (percent: string): string => `Chance that it is on this stretch: ${percent} %. What can wear it:`,
  classes: 'Kind of fault',
  thinking: 'Working out the order',
  warnings: (count: number): string =>
    count === 1 ? 'One thing to know about this order' : `${count} things to know about this order`,
  changed: {
    first: (name: string): string => `Now first: ${name}`,
    up: (names: string): string => `Moved up: ${names}`,
    down: (names: string): string => `Moved down: ${names}`,
    gone: (names: string): string => `No longer listed: ${names}`,
    came: (names: string): string => `New in the list: ${names}`,
    same: 'The order stays as it was.',
  },
  none: {
    title: 'Too little known to rank',
    noCircuit: 'Choose the circuit under search first. Then the list says where to open.',
    chooseCircuit: 'Choose the circuit',
    allSeen:
      'Every stretch that can be seen has been looked at. Take back a look that was not clear, or suspect a part, a plug or another circuit.',
    flat: 'Nothing on the map sets one stretch apart: no rub spots are drawn near this circuit. The order below follows minutes and length alone.',
    openMap: 'Open the vehicle map',
  },
  restraint: {
    title: 'Airbag or belt unit circuit',
    words:
      'Look only. No meter, no beeper, no lamp, no current and no piercing on this wiring. Follow the vehicle maker’s procedure. The list below is for looking.',
  },
  highVoltage: {
    title: 'High-voltage circuit',
    words:
      'Orange cables can kill. A trained person isolates, locks off and proves dead before anything is touched. No reading and no method is offered here.',
  },
  found: {
    exactly: (landmark: string): string => `Exact place: distance from ${landmark}`,
    setPlace: 'Set the place',
    next: 'What next',
    steps: [
      'Repair the wire: join or sleeve it so that it stays joined, dry and out of any bend that moves.',
      'Take away what rubbed: edge, screw or missing fixing. Say what stops it rubbing now.',
      'Look along the loom 300 mm each way, and at the same place on the other side of the car.',
      'Test again as before: fuse in, load on, move the loom where it failed.',
      'Refit what is off, and try the function with everything back in place.',
    ],
    stepsInPart: [
      'Renew or re-seat the pin and its seal, or the half of the plug; make sure that it locks.',
      'Say why it failed: water, pull, heat or a worn pin. Give the loom slack there and keep it dry.',
      'Look at the other pins of the plug, and at the same plug on the other side of the car.',
      'Test again as before: fuse in, load on, move plug and loom.',
      'Refit what is off, and try the function with everything back in place.',
    ],
    another: 'Start another job on this map',
    back: 'Search on',
  },
  record: {
    label: 'Record of this job',
    empty: 'Nothing entered yet. Enter a reading, tick panels off or say what a look showed.',
    takeBack: 'Take back',
    putRight: (first: string): string => `Put right; first entered ${first}.`,
    replaced: 'put right since',
    takenBack: 'Taken back',
    bringBack: 'Bring back',
    panelOff: (panel: string): string => `Off: ${panel}`,
    panelOn: (panel: string): string => `Back on: ${panel}`,
    looked: (result: string, where: string): string => `${result}: ${where}`,
    reading: 'Reading',
    note: 'Note',
    addNote: 'Add a note',
    noteLabel: 'Note for the record',
    /** What is entered between the find and the paid bill; a free note follows where there is one. */
    testCautions: {
      'live-wire': 'live wire',
      'current-in': 'current put in',
      'moving-parts': 'things that move',
    } satisfies Record<TestCaution, string>,
    closing: {
      agreed: 'Agreed with the customer',
      time: 'Clock',
      'caution-read': 'Read and understood',
      finding: 'Finding',
      'proof-of-cause': 'Proof of the cause',
      repair: 'Repair',
      'looked-along': 'Looked along the loom',
      proof: 'Test after the repair',
      'search-on': 'Fault still there: search goes on',
      close: 'Job closed',
    },
  },
  stretchList: {
    label: 'Stretches of the circuit, in order',
  },
  caution: {
    first: 'Read the caution first',
    title: 'Before this step',
    read: 'Read and understood',
    whole: 'Whole text',
    label: (caution: string): string => `${caution}: read and understood`,
  },
  failed: {
    title: 'This job could not be opened.',
    gone: 'It is not among the jobs kept here.',
    saving: 'The last entries are not on disk yet.',
  },
  keys: {
    label: 'Keys in this place',
    lines: [
      { key: 'R', does: 'Enter a reading; Enter keeps it' },
      { key: 'Ctrl Z', does: 'Undo the last entry' },
      { key: 'Ctrl Shift Z', does: 'Redo' },
      { key: 'Left, Right', does: 'On the loom laid straight: point at the next stretch' },
      { key: 'Enter', does: 'On the loom laid straight: pick the stretch' },
      { key: 'Escape', does: 'Let go of the picked stretch, close a sheet' },
      { key: 'Arrows', does: 'On the board: move the view' },
      { key: '+ and -', does: 'On the board: nearer, farther' },
      { key: 'F', does: 'On the board: show the whole car' },
      { key: '?', does: 'This sheet' },
    ],
  },
} as const;

/** What to do before a step that can hurt. Common practice; the vehicle maker's procedure takes precedence. */
export const cautionSentences: Readonly<Record<Caution, string>> = {
  airbag:
    'Ignition off, battery off, then wait the time the vehicle maker states before touching it. No meter on airbag wiring. Keep the ignition off while it is unplugged, and stand clear when reconnecting. The vehicle maker’s procedure takes precedence.',
  'belt-tensioner':
    'A belt tensioner fires like an airbag. Ignition off, battery off, wait the maker’s time, no meter on its wiring. Tighten the anchor bolt to the maker’s figure when refitting.',
  'high-voltage':
    'Orange cables near: a trained person isolates, locks off and proves dead first, and keeps the key. No method is offered here. The vehicle maker’s procedure takes precedence.',
  battery:
    'Earth lead off first and on last; no sparks after charging. Expect codes and settings to be lost. No memory keeper while airbag parts are unplugged.',
  glass:
    'No levering on glass. Heating and aerial tabs tear off easily. Prop the tailgate: its strut may be weak.',
  fuel: 'No lamp and no heat gun near fuel vapour. Have an extinguisher to hand.',
  'raised-vehicle': 'Never on a jack alone: stands, chocks and the right lifting points.',
  'one-use-clips': 'Some clips serve once. Have new ones ready before it comes off.',
  'two-people': 'Two people, and protect the door shut and paint.',
};

/** The same in a few words, always in sight at its step. */
export const cautionKeyWords: Readonly<Record<Caution, string>> = {
  airbag: 'ignition and battery off, maker’s wait, no meter',
  'belt-tensioner': 'as an airbag; bolt to the maker’s figure',
  'high-voltage': 'trained person isolates and proves dead first',
  battery: 'earth lead off first, on last',
  glass: 'no levering; prop a tailgate',
  fuel: 'no lamp, no heat gun',
  'raised-vehicle': 'stands, never a jack alone',
  'one-use-clips': 'have new ones ready',
  'two-people': 'protect the door shut and paint',
};

/** Cautions that can hurt someone and so are acknowledged once in each job. */
export const grave: ReadonlySet<Caution> = new Set(['airbag', 'belt-tensioner', 'high-voltage']);

/** Something the user should know about the answer; null for what the screen shows in another way. */
export function warningSentence(
  warning: RankWarning,
  nameOf: (id: string) => string,
  sayPiece: (fromMm: number, toMm: number) => string,
): string | null {
  switch (warning.code) {
    case 'readings-unused':
      return `${warning.count} ${warning.count === 1 ? 'reading does' : 'readings do'} not change this order.`;
    case 'no-panel-tag':
      return `Nothing says what hides the loom ${sayPiece(warning.fromMm, warning.toMm)} (${nameOf(warning.segmentId)}). Draw its panels on the map, or mark it as in view.`;
    case 'tag-unconfirmed':
      return `${nameOf(warning.panelId)} over ${nameOf(warning.segmentId)} is a guess from the drawing. Confirm it on the map.`;
    case 'segment-unchecked':
      return `${nameOf(warning.segmentId)} was copied from another car and not yet checked on one.`;
    case 'no-scale':
      return 'The map has no scale: distances are as drawn, not measured. Set the scale by two points.';
    case 'no-rub-spots':
      return findWords.none.flat;
    case 'entry-ignored':
      return 'An entry speaks of something this map does not have and was left out.';
    case 'restraint-circuit':
    case 'high-voltage-circuit':
      return null;
  }
}

/** A chance as whole percent, with the ends said honestly. */
export function sayPercent(chance: number): string {
  if (chance <= 0) return '0';
  if (chance < 0.005) return '<1';
  if (chance > 0.995 && chance < 1) return '>99';
  return String(Math.round(chance * 100));
}

/** Minutes as a whole number. */
export function sayMinutes(minutes: number): string {
  return String(Math.round(minutes));
}
