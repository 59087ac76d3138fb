import type { DriveSide } from '#core/map/kinds.ts';
import type { JobSummary } from '#electron/contract/contract.ts';

/** Every sentence of the place with the vehicles and the jobs. */
export const startWords = {
  title: 'Vehicles and jobs',
  failed: 'The vehicles and jobs could not be read.',
  firstTime:
    'Open the first job on the left to see where to open that car first, or draw a map of the one on your ramp.',
  jobs: {
    title: 'Open jobs',
    empty: 'No open job. Start one on a vehicle map.',
    noPlate: 'No plate',
    noComplaint: 'No complaint written down',
    spent: 'min spent',
    stages: {
      testing: 'Testing',
      opening: 'Opening up',
      found: 'Cause found',
      repaired: 'Repaired, to be proved',
      closed: 'Closed',
    } satisfies Record<JobSummary['stage'], string>,
  },
  maps: {
    title: 'Vehicle maps',
    search: 'Search vehicle maps',
    searchHint: 'A few letters of the name or body',
    empty: 'No vehicle map yet. Draw one, or bring one in from a file.',
    noMatch: (text: string): string => `No vehicle map has “${text}” in its name or body.`,
    jobs: (count: number): string => (count === 1 ? '1 job' : `${count} jobs`),
    /** Finds of the jobs kept here; those a map came with stand on its rub spots. */
    finds: (count: number): string =>
      count === 0
        ? 'no cause proved here yet'
        : count === 1
          ? '1 cause proved here'
          : `${count} causes proved here`,
    more: (name: string): string => `More for ${name}`,
  },
  newMap: {
    title: 'New map',
    name: 'Name of the map',
    nameHint: 'Model, years and what sets it apart.',
    body: 'Body style',
    side: 'Side of drive',
    make: 'Make the map and draw',
  },
  newJob: (name: string): string => `New job on ${name}`,
  newJobShort: 'New job',
  copy: {
    title: 'Take a copy',
    named: (name: string): string => `Copy of ${name}`,
    name: 'Name of the copy',
    kind: 'Copy',
    plain: 'As it is',
    mirrored: (side: DriveSide): string => `Mirrored, for ${side === 'right' ? 'RHD' : 'LHD'}`,
    warning:
      'Mirroring turns every route and panel over. Dash parts usually mirror; sills and body routes often do not. Left and right change places in every name, not in notes. Every mirrored run stays marked as not checked until you confirm it on a car.',
    make: 'Make the copy',
  },
  handOut: 'Hand out a file',
  remove: {
    title: 'Remove map',
    sure: (name: string): string =>
      `Remove “${name}”? The map and its list of changes go. Jobs done on it keep the map they were opened on.`,
    yes: 'Remove it',
  },
  bringIn: {
    title: 'Bring in a file',
    hint: 'A map or job document, or a bundle with pictures; or drop it anywhere on this screen.',
    drop: 'Let go to read the file',
    stored: (name: string): string => `“${name}” is kept.`,
  },
} as const;
