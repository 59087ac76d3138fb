import type { FailureType, InspectionResult } from '#core/job/job-document.ts';
import type {
  BodyStyle,
  Caution,
  CircuitDuty,
  CircuitEndKind,
  ClipKind,
  Covering,
  DriveSide,
  FaultClass,
  InsulationClass,
  NodeKind,
  OutlineKind,
  PanelKind,
  RubSpotKind,
  SegmentTrait,
} from '#core/map/kinds.ts';

/** Words used in more than one place. Sentences of one place live in that place's own file. */
export const words = {
  application: 'Undertrim',
  places: {
    start: 'Vehicles and jobs',
    draw: 'Vehicle map',
    find: 'Find the fault',
    close: 'Repair and close',
    model: 'Where this model chafes',
  },
  opening: 'Opening',
  back: 'Back to vehicles and jobs',
  close: 'Close',
  cancel: 'Cancel',
  undo: 'Undo',
  redo: 'Redo',
  keys: 'Keys',
  key: 'Key to the marks',
  saved: 'On disk',
  saving: 'Saving',
  notSaved: 'Not saved',
  tryAgain: 'Try again',
  settings: 'Settings',
  theme: 'Light',
  themes: { system: 'As the system', day: 'Day', night: 'Night' },
  lengths: 'Lengths',
  lengthSystems: { metric: 'Metric', imperial: 'Imperial' },
  sides: 'Sides of the car',
  sideWords: { 'left-right': 'Left, right', 'near-off': 'Near side, off side' },
  mishap: {
    title: 'Something in Undertrim itself went wrong.',
    kept: 'Your work up to the last change is on disk. Open the page again to go on.',
    again: 'Open again',
  },
} as const;

export const bodyStyleWords: Readonly<Record<BodyStyle, string>> = {
  hatch: 'Hatchback',
  saloon: 'Saloon',
  estate: 'Estate',
  van: 'Van',
  pickup: 'Pickup',
  coupe: 'Coupe',
  other: 'Other body',
};

export const driveSideWords: Readonly<Record<DriveSide, string>> = { left: 'LHD', right: 'RHD' };

export const driveSideLongWords: Readonly<Record<DriveSide, string>> = {
  left: 'Left-hand drive',
  right: 'Right-hand drive',
};

export const outlineKindWords: Readonly<Record<OutlineKind, string>> = {
  shell: 'Body shell',
  seat: 'Seat',
  sill: 'Sill',
  arch: 'Wheel arch',
  pillar: 'Pillar',
  other: 'Other outline',
};

export const nodeKindWords: Readonly<Record<NodeKind, string>> = {
  branch: 'Branch',
  'inline-connector': 'Inline plug',
  splice: 'Splice',
  'ground-point': 'Earth point',
  grommet: 'Pass-through',
  module: 'Module',
  switch: 'Switch',
  sensor: 'Sensor',
  load: 'Load',
  'fuse-box': 'Fuse box',
  'loose-end': 'Loose end',
};

export const coveringWords: Readonly<Record<Covering, string>> = {
  bare: 'No cover',
  'pvc-tape': 'PVC tape',
  'fleece-tape': 'Fleece tape',
  'cloth-tape': 'Cloth tape',
  'pvc-tube': 'PVC tube',
  'convoluted-tube': 'Convoluted tube',
  'braided-sleeve': 'Braided sleeve',
};

export const segmentTraitWords: Readonly<Record<SegmentTrait, string>> = {
  'crosses-hinge': 'Crosses a hinge',
  'slides-with-seat': 'Slides with a seat',
  'under-feet': 'Under feet',
  wet: 'Gets wet',
  hot: 'Gets hot',
  'drawn-tight': 'Drawn tight',
};

export const clipKindWords: Readonly<Record<ClipKind, string>> = {
  clip: 'Clip',
  'edge-clip': 'Edge clip',
  tape: 'Taped down',
  tie: 'Tie',
  'stand-off': 'Stand-off',
};

export const panelKindWords: Readonly<Record<PanelKind, string>> = {
  seat: 'Seat',
  sill: 'Sill trim',
  quarter: 'Quarter trim',
  pillar: 'Pillar trim',
  dash: 'Dash panel',
  carpet: 'Carpet',
  'door-card': 'Door card',
  headlining: 'Headlining',
  'boot-side': 'Boot side trim',
  'boot-floor': 'Boot floor',
  tailgate: 'Tailgate trim',
  console: 'Console',
  'arch-liner': 'Arch liner',
  underside: 'From below',
  other: 'Other panel',
};

/** Short words for a caution, beside its sign. */
export const cautionWords: Readonly<Record<Caution, string>> = {
  airbag: 'Airbag',
  'belt-tensioner': 'Belt tensioner',
  'high-voltage': 'High voltage',
  battery: 'Battery',
  glass: 'Glass',
  fuel: 'Fuel',
  'raised-vehicle': 'Raised vehicle',
  'one-use-clips': 'One-use clips',
  'two-people': 'Two people',
};

export const rubSpotKindWords: Readonly<Record<RubSpotKind, string>> = {
  burr: 'Weld burr',
  'fastener-tip': 'Screw tip',
  'raw-edge': 'Raw edge',
  'panel-edge': 'Panel edge',
  flange: 'Flange',
  bracket: 'Bracket',
  'seat-mount': 'Seat mounting',
  hinge: 'Hinge',
  'moving-part': 'Moving part',
  'clamp-edge': 'Clamp edge',
  'smooth-panel': 'Smooth panel',
  other: 'Other rub spot',
};

export const insulationClassWords: Readonly<Record<InsulationClass, string>> = {
  'thin-wall': 'Thin wall',
  'thick-wall': 'Thick wall',
  'ultra-thin-wall': 'Ultra-thin wall',
};

export const circuitEndKindWords: Readonly<Record<CircuitEndKind, string>> = {
  'fused-supply': 'Fused supply',
  'module-input-pull-up': 'Module input with pull-up',
  'high-side-driver': 'Module output, switches the feed',
  'low-side-driver': 'Module output, switches the earth',
  'switch-to-ground': 'Switch to earth',
  sensor: 'Sensor',
  load: 'Load',
  'ground-point': 'Earth point',
  other: 'Something else',
};

export const circuitDutyWords: Readonly<Record<CircuitDuty, string>> = {
  ordinary: 'Ordinary',
  data: 'Data line',
  restraint: 'Airbag or belt unit',
  'high-voltage': 'High voltage',
};

export const faultClassWords: Readonly<Record<FaultClass | 'component' | 'none-of-these', string>> = {
  'short-to-ground': 'Short to earth',
  'short-to-supply': 'Short to supply',
  'wire-to-wire': 'Wire to wire',
  open: 'Open',
  'high-resistance': 'High resistance',
  component: 'A part, not the wire',
  'none-of-these': 'None of these',
};

export const failureTypeWords: Readonly<Record<FailureType, string>> = {
  'circuit-short-to-ground': 'Short to earth',
  'circuit-short-to-battery': 'Short to battery',
  'circuit-open': 'Open circuit',
  'circuit-short-to-ground-or-open': 'Short to earth, or open',
  'circuit-short-to-battery-or-open': 'Short to battery, or open',
  'circuit-voltage-below-threshold': 'Voltage too low',
  'circuit-voltage-above-threshold': 'Voltage too high',
  'circuit-current-below-threshold': 'Current too low',
  'circuit-current-above-threshold': 'Current too high',
  'circuit-resistance-below-threshold': 'Resistance too low',
  'circuit-resistance-above-threshold': 'Resistance too high',
  'circuit-intermittent': 'Comes and goes',
  'signal-stuck-low': 'Signal stuck low',
  'signal-stuck-high': 'Signal stuck high',
  'signal-erratic': 'Signal jumps about',
  'not-known': 'Not known yet',
};

export const inspectionWords: Readonly<Record<InspectionResult, string>> = {
  'seen-sound': 'Seen, sound',
  'seen-damaged-not-cause': 'Seen, damaged, not the cause',
  found: 'Cause found',
};
