/**
 * Everything that can be wrong with what a person or a file gave us, as facts: ids and figures, no
 * prose. The sentences live in renderer/language, which the command line reuses.
 */
export type Problem = DocumentProblem | MapProblem | JobProblem | EditProblem | HostProblem;

/** A file or message could not be read as what it should be. */
export type DocumentProblem =
  | { readonly code: 'not-json'; readonly detail: string }
  | {
      readonly code: 'wrong-format';
      readonly expected: string;
      readonly found: string;
    }
  | {
      readonly code: 'newer-version';
      readonly found: number;
      readonly known: number;
    }
  | {
      readonly code: 'bad-field';
      readonly path: string;
      readonly expected: string;
    };

/** A map names things that do not hang together. `thing` and `missing` are record ids. */
export type MapProblem =
  | { readonly code: 'map-empty' }
  | { readonly code: 'duplicate-id'; readonly thing: string }
  | {
      readonly code: 'missing-reference';
      readonly thing: string;
      readonly field: string;
      readonly missing: string;
    }
  | { readonly code: 'panel-cycle'; readonly panels: readonly string[] }
  | {
      readonly code: 'beyond-end';
      readonly thing: string;
      readonly field: string;
      readonly stationMm: number;
      readonly lengthMm: number;
    }
  | { readonly code: 'zero-length'; readonly thing: string }
  | {
      readonly code: 'range-reversed';
      readonly thing: string;
      readonly field: string;
      readonly fromMm: number;
      readonly toMm: number;
    }
  | { readonly code: 'circuit-untraced'; readonly circuit: string }
  | {
      readonly code: 'circuit-broken';
      readonly circuit: string;
      readonly afterSegment: string;
      readonly nextSegment: string;
    }
  | {
      readonly code: 'circuit-end-mismatch';
      readonly circuit: string;
      readonly expectedNode: string;
      readonly foundNode: string;
    }
  | {
      readonly code: 'no-path';
      readonly fromNode: string;
      readonly toNode: string;
    };

/** A job cannot be ranked, or speaks of things its map does not have. */
export type JobProblem =
  | {
      readonly code: 'job-map-mismatch';
      readonly jobMap: string;
      readonly map: string;
    }
  | { readonly code: 'job-circuit-unset' }
  | {
      readonly code: 'job-reference';
      readonly entry: string;
      readonly field: string;
      readonly missing: string;
    }
  | { readonly code: 'job-closed'; readonly job: string }
  | { readonly code: 'nothing-left'; readonly circuit: string };

/** An edit was refused; the document is as it was. */
export type EditProblem =
  | { readonly code: 'not-found'; readonly thing: string }
  | {
      readonly code: 'bad-value';
      readonly field: string;
      readonly value: number | string;
      readonly allowed: string;
    }
  | { readonly code: 'same-node'; readonly node: string }
  | {
      readonly code: 'too-few-points';
      readonly needed: number;
      readonly found: number;
    }
  | { readonly code: 'same-point' }
  /** A node where two runs cannot become one: it has more or fewer than two, or is no plain branch. */
  | { readonly code: 'not-joinable'; readonly node: string; readonly runs: number; readonly kind: string }
  /** Two runs that cannot become one because they differ in `field`. */
  | {
      readonly code: 'runs-differ';
      readonly first: string;
      readonly second: string;
      readonly field: string;
    }
  /** Something else rests on the thing, so it stays. */
  | { readonly code: 'in-use'; readonly thing: string; readonly by: readonly string[] }
  | { readonly code: 'patch-conflict'; readonly thing: string }
  /** Nothing picked is a thing of its own that can be copied. */
  | { readonly code: 'nothing-to-copy' }
  /** What is on the clipboard was not copied from a drawing. */
  | { readonly code: 'not-copied-things' };

/** The surroundings refused: the store, the disk, the channel. */
export type HostProblem =
  | {
      readonly code: 'stale-revision';
      readonly expected: number;
      readonly found: number;
    }
  | { readonly code: 'store-full' }
  | { readonly code: 'store-read-only' }
  | { readonly code: 'store-busy' }
  | { readonly code: 'store-damaged'; readonly detail: string }
  | {
      readonly code: 'store-newer';
      readonly found: number;
      readonly known: number;
    }
  | {
      readonly code: 'file-unreadable';
      readonly file: string;
      readonly detail: string;
    }
  /** A file, picture or bundle that is more than is taken; `thing` says which. */
  | {
      readonly code: 'too-large';
      readonly thing: string;
      readonly bytes: number;
      readonly mostBytes: number;
    }
  | { readonly code: 'too-many-entries'; readonly found: number; readonly most: number }
  /** A part of a bundle: a name that leads elsewhere, one that comes twice, one damaged or promised and missing. */
  | {
      readonly code: 'bundle-entry';
      readonly entry: string;
      readonly fault: 'path' | 'twice' | 'damaged' | 'missing';
    }
  /** A picture the browser cannot decode; `mediaType` as the file claims, empty when it claims none. */
  | { readonly code: 'picture-unreadable'; readonly file: string; readonly mediaType: string }
  /** A picture that would fill the memory when it is decoded, however small its file; `file` may be a media type. */
  | {
      readonly code: 'picture-oversized';
      readonly file: string;
      readonly widthPx: number;
      readonly heightPx: number;
      readonly mostPixels: number;
      readonly longestSidePx: number;
    }
  /** The user stopped it; nothing was kept. */
  | { readonly code: 'stopped' }
  | { readonly code: 'unknown-request'; readonly name: string }
  | { readonly code: 'no-answer'; readonly detail: string }
  | { readonly code: 'our-bug'; readonly detail: string };
