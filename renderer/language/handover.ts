import type { BundleSummary, ImportSummary, MapDifference, WhenOther } from '#electron/contract/contract.ts';
import { compareWords, recordFieldWords } from './draw-compare.ts';

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const thingWords: Readonly<Record<string, string>> = compareWords.kinds;

/** Words for handing maps out and bringing them in. */
export const handoverWords = {
  handOut: {
    title: 'Hand out',
    document: 'Map as a document',
    documentHint: 'One JSON file with everything drawn, without the pictures under it.',
    bundle: 'Map with its pictures',
    bundleHint: 'One zip file for another workshop that uses Undertrim.',
    history: 'With what past jobs on this map found',
    historyHint: 'Closed jobs only. Plates, odometers, complaints, names, notes, photos and money stay here.',
    historyDone: (jobs: number, leftOut: number): string =>
      `${jobs === 0 ? 'No past job' : plural(jobs, 'past job', 'past jobs')} in it.${
        leftOut === 0
          ? ''
          : ` ${plural(leftOut, 'speaks', 'speak')} of places this map no longer has, and stayed out.`
      }`,
    drawing: 'Drawing',
    drawingHint: 'The whole map on light paper, with names and a scale bar. Pictures under it are left out.',
    as: 'As',
    kinds: { svg: 'SVG, sharp at any size', png: 'PNG, a picture' },
    size: 'Size',
    sizes: { full: 'Full: 1 px for each mm', chosen: 'Chosen width' },
    width: 'Width',
    px: 'px',
    will: (widthPx: number, heightPx: number): string => `${widthPx} by ${heightPx} px`,
    tooLarge: (mostPx: number): string =>
      `Full size would be larger than a picture may be, so it is drawn ${mostPx} px long.`,
    make: 'Hand it out',
    making: { document: 'Writing the document', bundle: 'Packing map and pictures', drawing: 'Drawing' },
    stop: 'Stop',
    stopped: 'Stopped; no file was written.',
    done: (fileName: string): string => `${fileName} is handed out.`,
    whereDownloads: 'It is where this browser puts what it downloads.',
    whereChosen: 'It is in the folder you chose for it.',
    missing: (names: readonly string[]): string =>
      `Not in it, for this machine does not keep them: ${names.join(', ')}.`,
  },
  bringIn: {
    title: 'Bring in',
    lead: 'A map or job document, or a bundle with pictures. It comes in beside what is here; this map stays as it is unless you say otherwise.',
    choose: 'Choose a file',
    another: 'Choose another file',
    reading: 'Reading the file',
    checking: 'Looking through it; nothing is stored',
    storing: 'Storing all of it',
    stop: 'Stop',
    keep: 'Keep it',
    nothingStored: 'Nothing is stored yet.',
    open: 'Open it',
    stored: (name: string): string => `“${name}” is kept.`,
    kinds: { map: 'Vehicle map', job: 'Job' } satisfies Record<ImportSummary['kind'], string>,
    named: (name: string): string => (name === '' ? 'without a name' : `“${name}”`),
    holds: (summary: ImportSummary): string =>
      summary.kind === 'map'
        ? `${plural(summary.segments, 'run', 'runs')}, ${plural(summary.panels, 'panel', 'panels')}, ${plural(summary.circuits, 'circuit', 'circuits')}.`
        : `${plural(summary.entries, 'entry', 'entries')}.`,
    fate: {
      new: 'Will be stored.',
      copy: 'One like it is here already: will be stored as a copy beside it, nothing is overwritten.',
      same: 'The very same is here already: will not be stored again.',
      others: {
        ours: 'Yours stays as it is; the one in the file is not stored.',
        theirs:
          'Yours becomes the one in the file, as one edit that can be undone. Jobs opened before keep the map they were opened on.',
        both: 'The one in the file will be stored beside yours, under the same name.',
      } satisfies Record<WhenOther, string>,
    },
    differs: (difference: MapDifference): string =>
      `This map is here already in another state. Against yours, the one in the file has: ${compareWords.sum(
        difference.added,
        difference.moved,
        difference.changed,
        difference.removed,
      )}.`,
    difference: (
      how: MapDifference['things'][number]['how'],
      kind: string,
      name: string,
      fields: readonly string[],
    ): string => {
      const thing = kind === 'details' ? compareWords.details : (thingWords[kind] ?? kind);
      const said = fields.map((field) => recordFieldWords[field] ?? field).join(', ');
      return `${compareWords.lists[how]}: ${thing}${name === '' ? '' : ` “${name}”`}${said === '' ? '' : ` (${said})`}`;
    },
    whenOther: 'Which drawing is kept',
    others: { ours: 'Ours', theirs: 'Theirs', both: 'Both' } satisfies Record<WhenOther, string>,
    nothingTaken: 'With ours kept, nothing of it would be stored.',
    pictures: ({ newPictures, knownPictures }: BundleSummary): string =>
      `${plural(newPictures, 'picture', 'pictures')} will be stored; ${plural(knownPictures, 'is', 'are')} here already.`,
    history: (history: NonNullable<BundleSummary['history']>): string =>
      [
        `Past jobs of another workshop, without their customers: ${history.newJobs} new, ${history.knownJobs} here already and left as they are.`,
        ...(history.onOwnMap > 0
          ? [`${plural(history.onOwnMap, 'goes', 'go')} to your own map of this model.`]
          : []),
        ...(history.newJobs > history.onOwnMap
          ? [`${plural(history.newJobs - history.onOwnMap, 'goes', 'go')} with the map in the bundle.`]
          : []),
        ...(history.leftOut > 0
          ? [
              `${plural(history.leftOut, 'fits', 'fit')} no map and ${history.leftOut === 1 ? 'is' : 'are'} left out.`,
            ]
          : []),
      ].join(' '),
    missing: 'Pictures spoken of that are neither in the bundle nor here:',
    missingOne: (name: string, documentName: string): string =>
      `${name || 'A picture'}, for ${documentName || 'the job'}`,
    ignored: 'In the bundle, but no part of one, so left alone:',
    nothingNew: 'All of it is here already.',
    refused: (file: string): string => `${file} is not brought in; nothing was stored.`,
    alsoWrong: 'Also wrong in it:',
    andMore: (count: number): string => `and ${count} more`,
  },
} as const;
