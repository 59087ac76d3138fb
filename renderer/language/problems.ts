import type { Problem } from '#core/quantity/problem.ts';

/** A problem in words: what is wrong and where, and what to do about it. */
export interface SaidProblem {
  readonly message: string;
  readonly hint: string;
}

const mm = (value: number): string => `${Number(value.toFixed(1))} mm`;
const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/**
 * Sentences for every problem. `nameOf` turns a record's id into what the user calls it; without it
 * the id stands.
 */
export function problemSentence(problem: Problem, nameOf: (id: string) => string = (id) => id): SaidProblem {
  switch (problem.code) {
    case 'not-json':
      return said(
        `This is not a JSON document: ${problem.detail}.`,
        'Choose a map or job document saved by Undertrim, or mend the text at that place.',
      );
    case 'wrong-format':
      return said(
        problem.found
          ? `Field format: expected "${problem.expected}", found "${problem.found}".`
          : `Field format: expected "${problem.expected}", found none.`,
        formatHint(problem.expected),
      );
    case 'newer-version':
      return said(
        `Field version: this document has version ${problem.found}; this Undertrim reads up to ${problem.known}.`,
        'Bring Undertrim up to date, then open the document again.',
      );
    case 'bad-field':
      return said(
        `Field ${problem.path || '(document)'}: expected ${problem.expected}.`,
        'Put that field right in the document and try again.',
      );
    case 'map-empty':
      return said('Nothing is drawn on this map.', 'Draw the routes of the loom first.');
    case 'duplicate-id':
      return said(
        `The id ${problem.thing} is used more than once.`,
        'Give each thing an id of its own; keep the first and rename the other.',
      );
    case 'missing-reference':
      return said(
        `${nameOf(problem.thing)}, field ${problem.field}: there is no ${problem.missing} on this map.`,
        `Add ${problem.missing}, or point ${problem.field} at something the map has.`,
      );
    case 'panel-cycle': {
      const [first = ''] = problem.panels;
      return said(
        `Panels wait for one another in a ring: ${[...problem.panels, first].map(nameOf).join(', then ')}.`,
        'Take one of them out of the list of what must come off first (offFirst).',
      );
    }
    case 'beyond-end':
      return said(
        `${nameOf(problem.thing)}, field ${problem.field}: ${mm(problem.stationMm)} lies beyond the end of the run, which is ${mm(problem.lengthMm)} long.`,
        `Put it between 0 and ${mm(problem.lengthMm)}, or lengthen the run.`,
      );
    case 'zero-length':
      return said(
        `${nameOf(problem.thing)} has no length: both of its ends lie at the same place.`,
        'Move one end, or delete the run.',
      );
    case 'range-reversed':
      return said(
        `${nameOf(problem.thing)}, field ${problem.field}: the stretch ends (${mm(problem.toMm)}) before it begins (${mm(problem.fromMm)}).`,
        'Swap the two figures.',
      );
    case 'circuit-untraced':
      return said(
        `${nameOf(problem.circuit)} is not traced along any run.`,
        'Trace the circuit on the map from one end to the other.',
      );
    case 'circuit-broken':
      return said(
        `${nameOf(problem.circuit)} is not connected: ${nameOf(problem.nextSegment)} does not begin where ${nameOf(problem.afterSegment)} ends (field path).`,
        'Trace it again without the gap, or draw the run that is missing.',
      );
    case 'circuit-end-mismatch':
      return said(
        `${nameOf(problem.circuit)} should end at ${nameOf(problem.expectedNode)}, but its trace ends at ${nameOf(problem.foundNode)} (field ends).`,
        'Trace it up to that end, or choose the other end.',
      );
    case 'no-path':
      return said(
        `No runs lead from ${nameOf(problem.fromNode)} to ${nameOf(problem.toNode)}.`,
        'Draw the run that joins them.',
      );
    case 'job-map-mismatch':
      return said(
        `Field mapId: this job belongs to ${problem.jobMap}, not to ${problem.map}.`,
        'Open the job with its own map.',
      );
    case 'job-circuit-unset':
      return said(
        'Field circuitId: no circuit is chosen in this job.',
        'Choose the circuit under search, then rank again.',
      );
    case 'job-reference':
      return said(
        `${nameOf(problem.entry)}, field ${problem.field}: there is no ${problem.missing} to speak of.`,
        'Take the entry back, or name something the map has.',
      );
    case 'job-closed':
      return said(
        `${nameOf(problem.job)} is closed.`,
        'Open it again before adding to it, or start another job.',
      );
    case 'nothing-left':
      return said(
        `Every stretch of ${nameOf(problem.circuit)} that can be seen has been looked at.`,
        'Take back a look that was not clear, or suspect a part, a plug or another circuit.',
      );
    case 'not-found':
      return said(
        `${nameOf(problem.thing)} is not on the map any more.`,
        'It may have been deleted; undo brings it back.',
      );
    case 'bad-value':
      return said(`${problem.field}: ${problem.value} is not possible.`, `Allowed: ${problem.allowed}.`);
    case 'same-node':
      return said(
        `A run cannot begin and end at ${nameOf(problem.node)}.`,
        'End it somewhere else, or add a node on the way.',
      );
    case 'too-few-points':
      return said(
        `${plural(problem.found, 'point is', 'points are')} not enough; ${problem.needed} are needed.`,
        'Set more points before ending.',
      );
    case 'same-point':
      return said('Both points lie at the same place.', 'Set the second one somewhere else.');
    case 'not-joinable':
      return said(
        `The runs at ${nameOf(problem.node)} cannot become one: ${plural(problem.runs, 'run meets', 'runs meet')} there.`,
        'Only a plain branch between exactly two runs can go.',
      );
    case 'runs-differ':
      return said(
        `${nameOf(problem.first)} and ${nameOf(problem.second)} differ in ${problem.field}, so they stay two runs.`,
        'Make that the same on both first.',
      );
    case 'in-use':
      return said(
        `${nameOf(problem.thing)} is still needed by ${problem.by.map(nameOf).join(', ')}.`,
        'Change those first.',
      );
    case 'patch-conflict':
      return said(
        `${nameOf(problem.thing)} was changed meanwhile, so this step no longer fits.`,
        'Look at it as it stands now and do the step again.',
      );
    case 'nothing-to-copy':
      return said(
        'Nothing is picked that can be copied by itself.',
        'Pick runs, parts, panels, rub spots, outlines, pictures or circuits; fixings go along with their run.',
      );
    case 'not-copied-things':
      return said(
        'What is on the clipboard was not copied from a drawing, so there is nothing to lay on the map.',
        'Pick things on a map, press Ctrl + C, then paste here.',
      );
    case 'stale-revision':
      return said(
        'This map was changed in another window.',
        'It is opened again as it stands now; the last step was not kept. Do it again.',
      );
    case 'store-full':
      return said('The disk is full, so the last change is not on it.', 'Free some space, then try again.');
    case 'store-read-only':
      return said(
        'The data folder cannot be written to.',
        'Give this user the right to write there, or choose another data folder.',
      );
    case 'store-busy':
      return said('Another program holds the data file.', 'Close it and try again.');
    case 'store-damaged':
      return said(
        `The data file is damaged: ${problem.detail}.`,
        'Close Undertrim and start it again: it sets the file aside and saves what can be read.',
      );
    case 'store-newer':
      return said(
        `The data file is from a newer Undertrim (${problem.found}; this one knows up to ${problem.known}).`,
        'Bring Undertrim up to date.',
      );
    case 'file-unreadable':
      return said(
        `${problem.file} cannot be read: ${problem.detail}.`,
        'Check the name and the folder, and that this user may read it.',
      );
    case 'too-large':
      return said(
        `${problem.thing} is too large: ${megabytes(problem.bytes)}; at most ${megabytes(problem.mostBytes)} are taken.`,
        'Bring in a smaller one.',
      );
    case 'too-many-entries':
      return said(
        `This bundle holds ${problem.found} files or more; at most ${problem.most} are taken.`,
        'Bring in a bundle saved by Undertrim, or split it.',
      );
    case 'bundle-entry':
      return said(
        bundleFaults[problem.fault](problem.entry),
        'Ask for the bundle again and bring that one in.',
      );
    case 'picture-unreadable':
      return said(
        problem.mediaType
          ? `${problem.file} (${problem.mediaType}) is a kind of picture that cannot be shown here, or it is damaged.`
          : `${problem.file} cannot be shown as a picture.`,
        'Save it as JPEG, PNG or WebP first.',
      );
    case 'picture-oversized':
      return said(
        `${problem.file} is ${spaced(problem.widthPx)} × ${spaced(problem.heightPx)} pixels, too many to open.`,
        `Save it smaller first: at most ${spaced(problem.longestSidePx)} pixels a side and ${problem.mostPixels / 1e6} million in all.`,
      );
    case 'stopped':
      return said('Stopped; nothing was kept.', 'Start again when you like.');
    case 'unknown-request':
      return said(
        `Undertrim asked its own host for "${problem.name}", which it does not know.`,
        'Close every window of Undertrim and start it again.',
      );
    case 'no-answer':
      return said(
        `No answer from Undertrim's host: ${problem.detail}.`,
        'See whether it still runs, then try again.',
      );
    case 'our-bug':
      return said(
        `Something in Undertrim itself went wrong: ${problem.detail}.`,
        'Your work up to the last change is kept. Start again; if it comes back, tell us how.',
      );
  }
}

const spaced = (pixels: number): string => pixels.toLocaleString('en-GB').replaceAll(',', ' ');
const megabytes = (bytes: number): string => `${Number((bytes / 1e6).toFixed(1))} MB`;

const bundleFaults = {
  path: (entry: string) => `The bundle holds a file whose name leads out of it: ${entry}.`,
  twice: (entry: string) => `The bundle holds ${entry} twice.`,
  damaged: (entry: string) => `${entry} in the bundle is damaged or cut short.`,
  missing: (entry: string) => `The bundle speaks of ${entry} but does not hold it.`,
} as const;

/**
 * The same for a file chosen in the window that is none of ours at all: no words of a parser and no advice for the
 * command line. They are in the details that can be copied.
 */
export function fileProblemSentence(
  problem: Problem,
  file: string,
  nameOf?: (id: string) => string,
): SaidProblem {
  const choose =
    'Choose a map or job (.json) or a bundle (.zip) that Undertrim handed out. Pictures and plans are put under the drawing, in Draw.';
  switch (problem.code) {
    case 'not-json':
      return /\.json$/i.test(file)
        ? said('It is damaged or cut short.', 'Have it handed out and sent again.')
        : said('It is neither a map nor a job nor a bundle.', choose);
    case 'wrong-format':
      return said('It is neither a map nor a job of Undertrim.', choose);
    case 'newer-version':
      return said(
        'It comes from a newer Undertrim than this one.',
        'Bring Undertrim up to date, then bring the file in again.',
      );
    default:
      return problemSentence(problem, nameOf);
  }
}

function formatHint(expected: string): string {
  if (expected.startsWith('image/')) return 'Save it as JPEG, PNG or WebP first.';
  if (expected === 'undertrim.bundle') return 'Choose a bundle handed out by Undertrim.';
  if (expected.includes(', ')) return 'Choose a map or job document handed out by Undertrim.';
  return expected.endsWith('map')
    ? 'Give the map document here; the job document comes second.'
    : 'Give the job document here; the map document comes first.';
}

function said(message: string, hint: string): SaidProblem {
  return { message, hint };
}
