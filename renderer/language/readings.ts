import type { InjectionPlan, InjectionRefusal } from '#core/circuit/safe-injection.ts';
import type { FlatReading, UnusedReading } from '#core/job/ranking.ts';
import type { Reading } from '#core/job/reading.ts';
import { figureText, sayAmps } from './say-figure.ts';
import { type LengthSystem, sayDistance, saySmallLength } from './say-length.ts';

/** What each test is called. */
export const testWords: Readonly<Record<Reading['test'], string>> = {
  ohms: 'Ohms',
  beep: 'Beep',
  volts: 'Volts',
  drop: 'Volt drop with current',
  capacitance: 'Capacitance',
  symptom: 'Plug apart',
  move: 'Move test',
  function: 'Function',
};

/** Sentences of writing readings down and of what they did. */
export const readingWords = {
  tab: (count: number): string => (count === 0 ? 'Readings' : `Readings\u00a0${count}`),
  enter: 'Enter a reading',
  change: 'Put a reading right',
  label: 'Readings in this job',
  empty:
    'No readings yet. A plug pulled, a loom moved or a meter figure narrows the search before anything comes off.',
  form: {
    test: 'Test',
    from: 'First lead',
    to: 'Second lead',
    driven: 'Current in at',
    sensed: 'Volts taken at',
    at: 'Lead at',
    ownWire: 'This wire',
    body: 'Body',
    battery: 'Battery +',
    bodyAndBattery: 'Car',
    half: (plug: string, end: string): string => `${plug}, ${end} half`,
    pin: (place: string, pin: string): string => `${place}, pin ${pin}`,
    figure: 'Meter shows',
    current: 'Current',
    openLine: 'Open line',
    overRange: 'Over range',
    beeps: 'Beeper',
    yesBeep: 'Beeps',
    noBeep: 'Silent',
    stays: 'With this apart, the fault',
    yesStays: 'Stays',
    noStays: 'Is gone',
    works: 'The function',
    yesWorks: 'Works',
    noWorks: 'Fails',
    changed: 'Changed',
    tried: 'Tries',
    place: 'What was moved',
    placeFrom: 'From',
    placeTo: 'To',
    bentFrom: 'Loom bends from',
    bentTo: 'to',
    placeSet: (where: string): string => `Moved: ${where}`,
    car: 'How the car stood',
    apart: 'Apart',
    fuseOut: 'Fuse out',
    switch: 'Switch',
    switchWords: { open: 'Open', closed: 'Closed', unknown: 'Not known' },
    ignition: 'Ignition on',
    battery12: 'Battery on',
    note: 'Note',
    position: 'Position',
    positionHint: 'Seat back, door open',
    carShort: 'Car:',
    meterAndNote: 'Meter and note:',
    keep: 'Keep',
    keepNext: 'Keep, then the other end',
    keepChange: 'Keep the change',
    understood: (figure: string): string => `Read as ${figure}`,
  },
  next: {
    label: 'Test first',
    looking: 'Looking for a test that pays',
    saves: 'saves',
    enter: 'Enter the reading',
    whole: 'What it would tell',
    others: 'Others that pay',
    precedence: 'The vehicle maker’s procedure takes precedence.',
    wire: 'Wire',
    pin: (place: string, pin: string): string => `${place} pin ${pin}`,
    noPin: (place: string): string => `${place}, pin not on the map`,
  },
  ledger: {
    number: (index: number): string => `Reading ${index}`,
    alone: 'Alone it says',
    wide: 'Alone it tells nothing about the place.',
    narrows: 'Together with the rest it narrows the search by',
    nothingNew: 'Together with the rest it tells nothing new.',
    working: 'Working out what it did',
    put: (line: string): string => `Put right: ${line}`,
    takeBack: (line: string): string => `Take back: ${line}`,
    putShort: 'Put right',
    putRightAt: (moment: string): string => `put right ${moment}`,
    takeBackShort: 'Take back',
  },
  contradiction: {
    title: 'Not all of these can hold',
    which: (numbers: string): string => `Readings ${numbers} cannot all hold`,
    goTo: (number: number): string => `Look at reading ${number}`,
    unless: {
      'fault-changed':
        'unless the fault’s own resistance was not the same each time. Take them again one after the other, without touching the loom between.',
      'two-faults-or-slip':
        'with one fault in one place. Either there are two faults, or a lead, a pin or how the car stood was not as written. Check these lines first.',
    },
  },
  line: {
    between: (a: string, b: string): string => `${a} to ${b}`,
    beeps: 'beeps',
    silent: 'silent',
    stays: (apart: string): string => `${apart}: fault stays`,
    gone: (apart: string): string => `${apart}: fault gone`,
    nothingApart: 'Nothing apart',
    moved: (where: string, changed: number, tried: number): string =>
      `Moved ${where}: changed ${changed} of ${tried}`,
    works: 'works',
    fails: 'fails',
    drop: (driven: string, sensed: string, amps: string): string =>
      `${amps} in at ${driven}, volts at ${sensed}`,
  },
  state: {
    apart: (plugs: string): string => `${plugs} apart`,
    fuseOut: 'fuse out',
    nothingApart: 'Nothing apart',
    ignition: (on: boolean): string => (on ? 'ignition on' : 'ignition off'),
    battery: (on: boolean): string => (on ? 'battery on' : 'battery off'),
    switch: (closed: boolean): string => (closed ? 'switch closed' : 'switch open'),
  },
  meters: {
    label: 'Meter',
    own: 'My meters',
    add: 'Add my meter',
    change: 'Change',
    name: 'Name',
    ohmsStep: 'Last digit, Ω',
    ohmsPercent: 'Ohms, ± %',
    ohmsCounts: '± counts',
    millivoltStep: 'Last digit, mV',
    millivoltPercent: 'mV, ± %',
    millivoltCounts: '± counts',
    leadOhms: 'Leads add, Ω',
    beepOhms: 'Beep at, Ω',
    fourWire: 'Four leads',
    capacitance: 'Has nF',
    hint: 'From the meter’s data sheet. Leave the beep empty if nobody knows it, and the leads 0 if they are nulled.',
    keep: 'Keep this meter',
    remove: 'Remove',
    nameMissing: 'give it a name.',
    nameTaken: 'another meter has it. Give it another.',
    notAFigure: 'type a figure without a unit.',
    between: (least: string, most: string): string => `type a figure from ${least} to ${most}.`,
  },
} as const;

/** Units that may be typed behind a figure, by what is measured. */
export const unitsTyped = {
  ohm: 'Ω, mΩ, kΩ, MΩ, or k, M, m alone',
  volt: 'V, mV, kV',
  millivolt: 'mV, V, µV',
  picofarad: 'pF, nF, µF',
  ampere: 'A, mA',
} as const;

/** What keeps a form from being a reading, as a sentence that says what to do. */
export const troubleWords = {
  figure: {
    empty: 'Type what the meter shows, or press Open line or Over range.',
    'empty-plain': 'Type what the meter shows.',
    'not-a-figure': 'This is no figure. Type digits with one point or comma, such as 4.7 or 4,7.',
    'two-marks': 'There is more than one point or comma in it. Leave out the thousands mark.',
    negative: 'A figure below zero cannot be here. Swap or null the leads and take it again.',
    'no-figure-here': 'An open line is no answer to this test. Type a figure.',
  },
  otherUnit: (units: string): string =>
    `What stands behind the figure is no unit of this test. Known are ${units}; no letter at all is fine.`,
  tooHigh: {
    ohm: 'No meter reads that many ohms. Press Over range, or look at the letters behind the figure.',
    volt: 'More than 60 V is high voltage, and no such reading is taken here. If the meter did show it, stop and leave it to a trained person. If it showed millivolts, write mV behind the figure.',
    millivolt:
      'More than 15 V is not a drop along a wire. Write µV behind the figure if it was microvolts, or take it again.',
    picofarad:
      'No wire of a car holds that much. Unplug what is still on it, or look at the letters behind the figure.',
  },
  current: {
    empty: 'Type the current that flowed, as the clamp or the supply shows it.',
    zero: 'With no current there is no drop. Type the current that flowed.',
    'no-figure-here': 'Type the current as a figure, as the clamp or the supply shows it.',
    tooMuch: (most: string): string =>
      `No more than ${most} may go into this wire. Do not repeat it: use a smaller lamp or a lower limit, and take the reading again.`,
  },
  leads: 'Both leads are in one place. Choose another for the second.',
  yes: 'Say which of the two it was.',
  counts: {
    'not-whole': 'Type how often it changed and how often it was tried, as whole numbers.',
    'none-tried': 'Try at least once.',
    'more-than-tried': 'It cannot change more often than it was tried.',
  },
  place: 'Say what was moved: from where to where, or pick a stretch on the map.',
  placeOfPosition:
    'Say which part of the loom that position bends or loads: from where to where, or pick a stretch on the map.',
  apart: 'Say which plug was apart, or which part unplugged.',
} as const;

/** Cautions of a test, each in whole and in a few words. The vehicle maker's procedure takes precedence over every one. */
export const formCautionWords = {
  label: 'Before this test',
  batteryOn:
    'Battery off, or the fuse out, and prove 0 V before ohms, beep or capacitance. On a live wire the figure is false and the meter may be harmed.',
  batteryOnKey: 'Battery off first, prove 0 V',
  endPluggedIn: (names: string): string =>
    `${names} still plugged in: the meter then sees that too. Unplug it for a figure that counts fully.`,
  endPluggedInKey: (names: string): string => `Still plugged in: ${names}`,
  unitPins: 'At a control unit or sensor: measure from the back of the plug, no oversized tip, no test lamp.',
  unitPinsKey: 'From the back of the plug',
  handsClear: 'Ignition on: keep hands clear of fans, belts and anything that may move or get hot.',
  handsClearKey: 'Hands clear: it may move or get hot',
  noCurrentKey: 'No current yet',
  lampKey: (watts: number, amps: string): string => `Lamp of ${watts} W at most (${amps})`,
  supplyKey: (amps: string, fuseA: number, seconds: number): string =>
    `${amps} at most, ${fuseA} A fuse, ${seconds} s`,
  precedence: 'The vehicle maker’s procedure takes precedence.',
  understood: (what: string): string => `${what}: read and understood`,
} as const;

/** The small calculator for the current of a drop test. */
export const limiterWords = {
  label: 'Current for this wire',
  lamp: 'Lamp to hand',
  lampOption: (watts: number): string => `${watts} W`,
  wanted: 'Current wanted, A',
  fits: (watts: number, amps: string, most: string): string =>
    `A ${watts} W lamp passes up to ${amps} into a dead short; this fuse and wire bear ${most}. It may be used.`,
  tooLarge: (watts: number, amps: string, most: string): string =>
    `A ${watts} W lamp passes up to ${amps} into a dead short; this fuse and wire bear only ${most}. Take a smaller lamp.`,
  notAFigure: 'Type the current as a figure above zero, such as 0.1.',
  drop: (millivolts: string, length: string): string =>
    `Each ${length} of this wire then drops about ${millivolts}.`,
} as const;

/** How current goes in without harm. */
export function planSentence(plan: InjectionPlan): string {
  if (plan.way === 'limited-supply') {
    return `Set the supply to ${figureText(sayAmps(plan.amps))} at no more than ${plan.supplyVolts} V, or put ${plan.seriesOhms} Ω (${plan.seriesWatts.toFixed(1)} W) in line. ${plan.fuseA} A fuse in the lead, at most ${plan.longestS} s, watch for smoke.`;
  }
  return `Lamp in place of the fuse, no larger than ${plan.lamp.watts} W: it passes up to ${figureText(sayAmps(Number(plan.amps.toFixed(2))))}. Only the isolated power wire, loads unplugged. Never a larger fuse.`;
}

/** The same in a few words. */
export function planKeyWords(plan: InjectionPlan): string {
  return plan.way === 'limited-supply'
    ? formCautionWords.supplyKey(figureText(sayAmps(plan.amps)), plan.fuseA, plan.longestS)
    : formCautionWords.lampKey(plan.lamp.watts, figureText(sayAmps(Number(plan.amps.toFixed(2)))));
}

/** Why no current may go in, and what to do. */
export function refusalSentence(reason: InjectionRefusal, nameOf: (id: string) => string): string {
  switch (reason.code) {
    case 'restraint-circuit':
      return 'Never put current into airbag or belt unit wiring.';
    case 'high-voltage-circuit':
      return 'Never put current into high-voltage wiring.';
    case 'data-circuit':
      return 'No current into a data line. Use the plugs, the ohms of the dead wire or the move test.';
    case 'end-plugged-in':
      return `Unplug ${reason.nodeIds.map(nameOf).join(' and ')} first: current must never reach a unit, sensor or load.`;
    case 'no-fuse-rating':
      return 'The map gives no fuse rating for this circuit. Write it down there first: the lamp must not be larger than the fuse.';
    case 'battery-connected':
      return 'Battery off first: only the limited supply may feed this wire.';
    case 'battery-off':
      return 'The lamp at the fuse needs the battery on.';
    case 'current-too-high':
      return `No more than ${figureText(sayAmps(reason.mostA))} into this wire.`;
    case 'no-lamp-small-enough':
      return `No usual lamp is small enough for this wire (${figureText(sayAmps(reason.mostA))}).`;
  }
}

/** Why a reading is not used. */
export const unusedWords: Readonly<Record<UnusedReading['why'], string>> = {
  'forbidden-duty': 'Not used: no reading is taken on this kind of circuit.',
  'lead-not-on-circuit': 'Not used: a lead sat on a place this wire does not pass.',
  'other-circuit-unknown': 'Not used: the other wire has no traced path on the map, or it is a third wire.',
  'live-while-measured':
    'Not used: the wire was live, so the figure means nothing. Battery off and take it again.',
  'end-part-plugged-in':
    'Not used: a part was still plugged in, and the meter saw that. Unplug it and take it again.',
  'off-circuit': 'Not used: what was moved is not on this circuit.',
  'nothing-apart': 'Not used: nothing on this circuit was apart.',
  'one-position-only':
    'Not used yet: try the function in another position too, so that the two can be compared.',
};

const flatReasons: Readonly<Record<FlatReading['why'], string>> = {
  'two-wire-ohms':
    'An ordinary meter cannot place this: the whole wire is less than what its leads and last digits leave open',
  'inside-one-access': 'It reads the same wherever between the two plugs the fault is',
  'fault-strength-unknown': 'The fault’s own resistance is not known and swallows the place',
};

const betterWays: Readonly<Record<FlatReading['better'], string>> = {
  drop: 'A volt drop with current, taken from both ends, would',
  capacitance: 'Capacitance from both ends would',
  unplug: 'Pulling a plug would',
};

/** Why a reading says nothing about the place, and what would. */
export function flatSentence(flat: FlatReading, lengths: LengthSystem): string {
  const said = flat.expectedSdMm === null ? null : nearly(flat.expectedSdMm, lengths);
  const how = said === null ? ': it rules out one side.' : `, to about ${said}.`;
  return `Alone it tells nothing about the place. ${flatReasons[flat.why]}. ${betterWays[flat.better]}${how}`;
}

/** A rough distance: whole centimetres below a metre, whole inches. */
function nearly(mm: number, lengths: LengthSystem): string {
  if (lengths === 'metric' && mm >= 1_000) return figureText(sayDistance(mm, lengths));
  if (lengths === 'metric') return `${Math.max(1, Math.round(mm / 10))} cm`;
  const { value, unit } = saySmallLength(mm, lengths);
  return `${Number(Number(value).toFixed(0)) || 1} ${unit}`;
}
