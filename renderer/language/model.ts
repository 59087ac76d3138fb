import type { RequestOutput } from '#electron/contract/contract.ts';
import { sayMinutes, sayPercent } from './find.ts';

type Figures = RequestOutput<'shop.figures'>['overall'];

/** Sentences about past jobs: search, figures, and where a model chafes. */
export const modelWords = {
  title: 'Where this model chafes',
  open: (name: string): string => `Where it chafes: ${name}`,
  openShort: 'Where it chafes',
  none: 'No job on this map has found anything yet. The first find shows here.',
  failed: 'The past of this model could not be read.',
  picture: 'Vehicle map with every place where something was found',
  pictureKey: 'A ring: proved cause. A notch: other damage, or a cause that was not proved.',
  table: 'Places where something was found',
  columns: {
    place: 'Place',
    causes: 'Proved cause',
    notProved: 'Not proved',
    other: 'Other damage',
    sound: 'Seen sound',
    kinds: 'What and why',
  },
  from: (distance: string, node: string): string => `${distance} from ${node}`,
  gone: 'A run that is no longer on the map',
  jobs: 'Jobs on this model',
  toMap: 'Open the map',
  figures: 'Finding, in figures',
  figureLine: ({ jobs, closed, found }: Figures): string =>
    `${jobs} ${jobs === 1 ? 'job' : 'jobs'}, ${closed} closed, ${found} with the cause proved.`,
  minutesToFind: 'Mean time to find',
  firstOpening: 'Found at the first place opened',
  model: 'Model',
  noFinds: '–',
  search: {
    title: 'Past jobs',
    label: 'Search all jobs',
    hint: 'Model, circuit, complaint, cause or plate',
    none: (typed: string): string => `No job has “${typed}” in it.`,
    left: (count: number): string => `${count} more. Type another word to narrow it down.`,
    failed: 'The jobs could not be searched.',
  },
} as const;

/** Mean minutes to find, or a dash where nothing was found yet. */
export const sayMeanMinutes = ({ meanMinutesToFind }: Figures): string =>
  meanMinutesToFind === null ? modelWords.noFinds : `${sayMinutes(meanMinutesToFind)} min`;

/** Share found at the first opening, or a dash. */
export const sayFirstShare = ({ firstOpeningShare }: Figures): string =>
  firstOpeningShare === null ? modelWords.noFinds : `${sayPercent(firstOpeningShare)} %`;
