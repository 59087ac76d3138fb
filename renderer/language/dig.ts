/** Every sentence of the ranking as text, for use without a window. */
export const digWords = {
  usage: `Says what to open first to find a fault in a hidden wire.

  npm run dig -- MAP.json JOB.json [--json]

  MAP.json  a vehicle map in the exchange format
  JOB.json  a job on that map
  --json    the ranking as data instead of as text`,
  twoDocuments: (given: number): string =>
    `Two documents are needed, a map and a job; ${given} ${given === 1 ? 'was' : 'were'} given.`,
  noPlate: 'no plate or stock number',
  circuit: (name: string, length: string, first: string, last: string): string =>
    `${name}: ${length} from ${first} to ${last}`,
  failure: (type: string): string => `Failure type: ${type}`,
  order: (minutes: string): string => `Where to open first (on average found after ${minutes} min)`,
  nothingLeft:
    'Every stretch that can be seen has been looked at. Take back a look that was not clear, or suspect a part, a plug or another circuit.',
  takeOff: (panels: string): string => `Take off first: ${panels}`,
  alreadyOpen: 'Already open: look here',
  lookAgain: 'Look again for what the first look may have missed',
  figures: (minutes: string, percent: string): string => `${minutes} min, chance ${percent} %`,
  care: (caution: string, sentence: string): string => `${caution}: ${sentence}`,
  asAbove: 'as above',
  look: (run: string, place: string): string => `Look: ${run}, ${place}`,
  lookInto: (plug: string): string => `Look into: ${plug}`,
  byThen: (minutes: string, percent: string): string => `By then: ${minutes} min, ${percent} % found`,
  leftOut: (count: number, percent: string): string =>
    `Left out here: ${count} of little chance (${percent} % together); --json lists them.`,
  kinds: 'What it may be',
  inWire: (median: string, first: string, region: string, length: string): string =>
    `If it is in the wire: as likely before as after ${median} from ${first}; with 80 % chance within ${region} of its ${length}`,
  inPart: (parts: string): string => `If it is a part: ${parts}`,
  share: (name: string, percent: string): string => `${name} ${percent} %`,
  readings: 'What each reading did',
  reading: (number: number, test: string, did: string): string => `Reading ${number}, ${test}: ${did}`,
  alone: (places: string): string => `alone it says ${places}.`,
  aloneNothing: 'alone it says nothing about the place.',
  told: (bits: string): string => `Beside the rest it told ${bits} bit.`,
  toldNothing: 'Beside the rest it told nothing new.',
  torn: (numbers: string, unless: string): string => `Readings ${numbers} cannot both hold unless ${unless}.`,
  unless: {
    'fault-changed': 'the fault itself changed between them',
    'two-faults-or-slip': 'there are two faults, or a lead, a pin or a state of the car was not as noted',
  },
  toMind: 'To mind',
} as const;
