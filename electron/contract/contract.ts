import { z } from 'zod';
import { closeOutcomeSchema, damageCauseSchema, damageTypeSchema } from '#core/job/closing-words.ts';
import { jobEntrySchema, jobSchema } from '#core/job/job-document.ts';
import { jobStages } from '#core/job/job-stage.ts';
import { mapExchangeSchema } from '#core/map/exchange.ts';
import { bodyStyleSchema, driveSideSchema } from '#core/map/kinds.ts';
import { transactionSchema } from '#core/map/transaction.ts';
import { idSchema } from '#core/quantity/id.ts';

/** What one message may carry in letters: 70 MB of bytes in base64. Handlers refuse less, by name. */
const largestMessageLetters = 94_000_000;

const none = z.strictObject({});
const mapId = idSchema('map');
const jobId = idSchema('job');
const revision = z.number().int().min(0);
const pictureTypeSchema = z.enum(['image/jpeg', 'image/png', 'image/webp']);
const time = z.iso.datetime({ offset: true });

/** One line of the map list: enough to draw its small picture without opening it. */
export const mapSummarySchema = z.strictObject({
  id: mapId,
  revision,
  name: z.string(),
  bodyStyle: bodyStyleSchema,
  driveSide: driveSideSchema,
  changedAt: time,
  jobCount: z.number().int(),
  findCount: z.number().int(),
  /** Outline and route lines as flat x, y lists in mm, thinned for a small picture. */
  picture: z.strictObject({
    outlines: z.array(z.array(z.number())),
    routes: z.array(z.array(z.number())),
  }),
});
export type MapSummary = z.infer<typeof mapSummarySchema>;

/** One line of the job list. */
export const jobSummarySchema = z.strictObject({
  id: jobId,
  mapId,
  mapName: z.string(),
  plate: z.string(),
  complaint: z.string(),
  openedAt: time,
  changedAt: time,
  stage: z.enum(jobStages),
  minutesSpent: z.number(),
});
export type JobSummary = z.infer<typeof jobSummarySchema>;

/** A past job as a search shows it. */
export const searchedJobSchema = z.strictObject({
  ...jobSummarySchema.shape,
  circuitName: z.string(),
  /** Null while it is open. */
  outcome: closeOutcomeSchema.nullable(),
  causes: z.array(damageCauseSchema).readonly(),
  damage: z.array(damageTypeSchema).readonly(),
});
export type SearchedJob = z.infer<typeof searchedJobSchema>;

/** How well finding goes, from this shop's own jobs. */
export const shopFiguresSchema = z.strictObject({
  jobs: z.number().int(),
  closed: z.number().int(),
  found: z.number().int(),
  /** Null without a find. */
  meanMinutesToFind: z.number().nullable(),
  firstOpeningShare: z.number().nullable(),
});

const amounts = z.record(z.string().max(100), z.number());
const pastSumSchema = z.strictObject({
  jobs: z.number().int(),
  found: z.strictObject({ causes: amounts, rubSpotKinds: amounts, rubSpots: amounts }),
  expected: z.strictObject({ causes: amounts, rubSpotKinds: amounts, rubSpots: amounts }),
});

/** A stretch of a model's loom where past jobs found something, by drawn stations of its run in mm. */
export const chafingPlaceSchema = z.strictObject({
  partNodeId: idSchema('node').nullable(),
  segmentId: idSchema('segment'),
  fromMm: z.number(),
  toMm: z.number(),
  causes: z.number().int(),
  notProved: z.number().int(),
  otherDamage: z.number().int(),
  sound: z.number().int(),
  damageCauses: z.array(damageCauseSchema).readonly(),
  damageTypes: z.array(damageTypeSchema).readonly(),
});

/**
 * A kept undo history, both lists in the order the edits were first made: undo takes back the last of
 * `done`, redo brings back the first of `undone`.
 */
export const keptHistorySchema = z.strictObject({
  done: z.array(transactionSchema),
  undone: z.array(transactionSchema),
});
export type KeptHistory = z.infer<typeof keptHistorySchema>;

/** How a map that comes in differs from the one here under the same id: what theirs has, moved, changed or lacks. */
export const mapDifferenceSchema = z.strictObject({
  added: z.number().int(),
  moved: z.number().int(),
  changed: z.number().int(),
  removed: z.number().int(),
  /** The first of them by name. */
  things: z.array(
    z.strictObject({
      how: z.enum(['added', 'removed', 'moved', 'changed']),
      kind: z.string(),
      name: z.string(),
      /** Of a changed one, the fields that differ. */
      fields: z.array(z.string()),
    }),
  ),
  /** Ours was edited here since it came in or was begun. */
  oursEdited: z.boolean(),
});
export type MapDifference = z.infer<typeof mapDifferenceSchema>;

/** What becomes of a map that is here already in another state: nothing, one edit of ours, or a second map. */
export const whenOtherSchema = z.enum(['ours', 'theirs', 'both']);
export type WhenOther = z.infer<typeof whenOtherSchema>;

/** What bringing in a file would do, shown before anything is stored. */
export const importSummarySchema = z.strictObject({
  kind: z.enum(['map', 'job']),
  name: z.string(),
  segments: z.number().int(),
  panels: z.number().int(),
  circuits: z.number().int(),
  entries: z.number().int(),
  /** The same id is here already; storing makes a copy under a new id, unless told otherwise. */
  alreadyHere: z.boolean(),
  /** The map is here in another state, and the choice is offered; null for everything else. */
  differs: mapDifferenceSchema.nullable(),
  /** The very same is here, so nothing is stored; a map only. */
  sameHere: z.boolean(),
});
export type ImportSummary = z.infer<typeof importSummarySchema>;

/** What another workshop's past jobs come to here. */
export const historySummarySchema = z.strictObject({
  /** Not here before, and of those the ones that go to one's own drawing of the model. */
  newJobs: z.number().int(),
  onOwnMap: z.number().int(),
  /** Here already, and left as they are. */
  knownJobs: z.number().int(),
  /** On no drawing in the bundle or here. */
  leftOut: z.number().int(),
});
export type HistorySummary = z.infer<typeof historySummarySchema>;

/** What bringing in a bundle would do, document by document. */
export const bundleSummarySchema = z.strictObject({
  documents: z.array(
    z.strictObject({
      ...importSummarySchema.shape,
      /** Its place in the bundle. */
      entry: z.string(),
    }),
  ),
  /** Past jobs without their customers; null when the bundle has none. */
  history: historySummarySchema.nullable(),
  /** Pictures that come in, and those that are here already. */
  newPictures: z.number().int(),
  knownPictures: z.number().int(),
  /** Pictures a map or job speaks of that are neither in the bundle nor here. */
  missingPictures: z.array(
    z.strictObject({ documentName: z.string(), name: z.string(), sha256: z.string() }),
  ),
  /** Entries that are no part of a bundle and were left alone. */
  ignored: z.array(z.string()),
});
export type BundleSummary = z.infer<typeof bundleSummarySchema>;

/** One state a map can be opened in again. */
export const mapRevisionSchema = z.strictObject({
  revision,
  /** Null, with `label` and `origin`, for a state that came whole. */
  at: time.nullable(),
  label: z.string().nullable(),
  origin: z.enum(['user', 'undo', 'redo', 'import']).nullable(),
  /** Jobs opened on it. */
  jobs: z.number().int(),
});

/** What is taken down when a car comes in. */
const intake = {
  vehicle: jobSchema.shape.vehicle,
  complaint: jobSchema.shape.complaint,
  failureType: jobSchema.shape.failureType,
  circuitId: jobSchema.shape.circuitId,
  alsoFailingCircuitIds: jobSchema.shape.alsoFailingCircuitIds,
  workingCircuitIds: jobSchema.shape.workingCircuitIds,
  recentWork: jobSchema.shape.recentWork,
  symptoms: jobSchema.shape.symptoms,
};

/** One whole copy of everything, opened and found sound when it was made. */
export const backupLineSchema = z.strictObject({
  fileName: z.string(),
  takenAt: time,
  reason: z.enum(['start', 'daily', 'asked', 'before-lifting', 'before-restore']),
  bytes: z.number().int(),
});
export type BackupLine = z.infer<typeof backupLineSchema>;

const storeWorkSchema = z.enum(['backup', 'restore', 'compact']);
/** Why work on the data file was not done; `busy`: it was written to all the while. */
const storeTroubleSchema = z.enum(['full', 'read-only', 'damaged', 'busy', 'other']);

/** What was saved from a damaged store and what was not, by the names a person knows. */
export const storeLossSchema = z.strictObject({
  at: time,
  /** Where the damaged file is kept, whole. */
  asideFolder: z.string(),
  /** The damaged file could not be opened at all. */
  nothingRead: z.boolean().optional(),
  keptMaps: z.number().int(),
  keptJobs: z.number().int(),
  keptPictures: z.number().int(),
  /** Taken from a backup, for they could not be read whole. */
  fromBackup: z.strictObject({ maps: z.array(z.string()), jobs: z.array(z.string()) }),
  /** When that backup was made; null when there was none. */
  backupAt: time.nullable(),
  /** Kept, but something of them is missing. */
  incomplete: z.strictObject({ maps: z.array(z.string()), jobs: z.array(z.string()) }),
  /** Kept as they stand; their earlier changes cannot be taken back any more. */
  withoutHistory: z.array(z.string()),
  lost: z.strictObject({ maps: z.array(z.string()), jobs: z.array(z.string()), pictures: z.number().int() }),
});
export type StoreLoss = z.infer<typeof storeLossSchema>;

const request = <I extends z.ZodType, O extends z.ZodType>(input: I, output: O) => ({ input, output });

/**
 * Every request between the renderer and whichever host carries it. A request gives its output or one
 * `Problem`; anything thrown becomes the problem `our-bug`.
 */
export const contract = {
  /** Every map, and the jobs that are not closed. */
  'library.list': request(
    none,
    z.strictObject({
      maps: z.array(mapSummarySchema),
      jobs: z.array(jobSummarySchema),
    }),
  ),

  'map.create': request(
    z.strictObject({
      name: z.string().min(1).max(120),
      bodyStyle: bodyStyleSchema,
      driveSide: driveSideSchema,
    }),
    z.strictObject({ mapId }),
  ),
  /** Without `revision`, the map as it is now, with its undo history; with it, as it stood then. */
  'map.open': request(
    z.strictObject({ mapId, revision: revision.optional() }),
    z.strictObject({ map: mapExchangeSchema, history: keptHistorySchema }),
  ),
  /** Every state of a map that `map.open` can give again, newest first. */
  'map.revisions': request(
    z.strictObject({ mapId }),
    z.strictObject({ revisions: z.array(mapRevisionSchema) }),
  ),
  /**
   * Stores one transaction on top of `expectedRevision`, in one SQL transaction; else `stale-revision`. With
   * `joins` it becomes one entry of the history with the edit that led to that revision: more of the same typing.
   */
  'map.commit': request(
    z.strictObject({
      mapId,
      expectedRevision: revision,
      transaction: transactionSchema,
      joins: z.boolean().optional(),
    }),
    z.strictObject({ revision }),
  ),
  /**
   * A copy under a new id. Mirrored: for the other side of drive, with only `mirrorIds` (outlines, nodes,
   * runs, panels, rub spots) turned about the centre line, or all of them when none are named.
   */
  'map.copy': request(
    z.strictObject({
      mapId,
      name: z.string().min(1).max(120),
      mirrored: z.boolean(),
      mirrorIds: z.array(z.string().max(100)).max(100_000).optional(),
    }),
    z.strictObject({ mapId }),
  ),
  'map.remove': request(z.strictObject({ mapId }), none),

  'job.create': request(z.strictObject({ mapId, ...intake }), z.strictObject({ jobId })),
  /** The job with the map as it stood when the job was opened. */
  'job.open': request(z.strictObject({ jobId }), z.strictObject({ job: jobSchema, map: mapExchangeSchema })),
  /** Adds entries after the `expectedEntries` that are there already; else `stale-revision`. */
  'job.append': request(
    z.strictObject({
      jobId,
      expectedEntries: z.number().int().min(0),
      entries: z.array(jobEntrySchema).min(1).max(500),
    }),
    z.strictObject({ entryCount: z.number().int() }),
  ),
  'job.changeIntake': request(z.strictObject({ jobId, ...intake }), none),

  /**
   * Jobs that hold every word in plate, complaint, model, circuit or notes, or one of the word's `codes` as
   * cause or damage; last worked on first, 200 at most.
   */
  'jobs.search': request(
    z.strictObject({
      words: z
        .array(
          z.strictObject({ text: z.string().min(1).max(100), codes: z.array(z.string().max(60)).max(60) }),
        )
        .max(20),
      mapId: mapId.optional(),
    }),
    z.strictObject({ jobs: z.array(searchedJobSchema), left: z.number().int() }),
  ),
  'shop.figures': request(
    none,
    z.strictObject({
      overall: shopFiguresSchema,
      models: z.array(z.strictObject({ mapId, mapName: z.string(), ...shopFiguresSchema.shape })),
    }),
  ),
  /**
   * What closed jobs teach about a job's map, the job itself left out. `waiting`: closed jobs not yet worked
   * out; asking again goes on with them.
   */
  'jobs.taught': request(
    z.strictObject({ jobId }),
    z.strictObject({
      sums: z.strictObject({ all: pastSumSchema, onMap: pastSumSchema }),
      waiting: z.number().int(),
    }),
  ),
  /** Where a model chafes, from its past jobs. */
  'map.past': request(
    z.strictObject({ mapId }),
    z.strictObject({ figures: shopFiguresSchema, places: z.array(chafingPlaceSchema) }),
  ),

  /** Reads a file's text and says what it holds; `store` keeps it, otherwise nothing is written. */
  'file.bringIn': request(
    z.strictObject({
      text: z.string().max(64_000_000),
      store: z.boolean(),
      whenOther: whenOtherSchema.optional(),
    }),
    z.strictObject({
      summary: importSummarySchema,
      mapId: mapId.nullable(),
      jobId: jobId.nullable(),
    }),
  ),
  'file.handOut': request(
    z.union([z.strictObject({ mapId }), z.strictObject({ jobId })]),
    z.strictObject({ fileName: z.string(), text: z.string() }),
  ),

  /** A map, or a job with its map as it stood, together with their pictures, as one zip. */
  'file.handOutBundle': request(
    z.union([
      /** `withHistory`: with the map's closed jobs, without their customers. */
      z.strictObject({ mapId, withHistory: z.boolean().optional() }),
      z.strictObject({ jobId }),
    ]),
    z.strictObject({
      fileName: z.string(),
      base64: z.string(),
      missingPictures: bundleSummarySchema.shape.missingPictures,
      /** Past jobs in it, and those left out because the map no longer has their places. */
      historyJobs: z.number().int(),
      historyLeftOut: z.number().int(),
    }),
  ),
  /** Reads a bundle and says what it holds; `store` keeps all of it or, when anything is refused, nothing. */
  'file.bringInBundle': request(
    z.strictObject({
      base64: z.base64().max(largestMessageLetters),
      store: z.boolean(),
      /** Both, when absent. */
      whenOther: whenOtherSchema.optional(),
    }),
    z.strictObject({ summary: bundleSummarySchema, mapIds: z.array(mapId), jobIds: z.array(jobId) }),
  ),

  /**
   * Keeps the bytes of an underlay or photo, at most 30 MB, named by their SHA-256; the kind is told from
   * the bytes.
   */
  'picture.keep': request(
    z.strictObject({ base64: z.base64().max(largestMessageLetters) }),
    z.strictObject({ sha256: z.string(), mediaType: pictureTypeSchema }),
  ),
  'picture.read': request(
    z.strictObject({ sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
    z.strictObject({ mediaType: pictureTypeSchema, base64: z.string() }),
  ),

  /** Per-machine state of a place (camera, open lists); never part of a document. */
  'place.read': request(
    z.strictObject({ key: z.string().max(100) }),
    z.strictObject({ text: z.string().nullable() }),
  ),
  'place.keep': request(z.strictObject({ key: z.string().max(100), text: z.string().max(100_000) }), none),

  /** The backups, newest first, what is being done with the data file, how far it is, and how the last such work ended. */
  'backup.list': request(
    none,
    z.strictObject({
      backups: z.array(backupLineSchema),
      folder: z.string(),
      doing: storeWorkSchema.nullable(),
      /** From 0 to 1 while something is being done. */
      running: z.number().nullable(),
      /** Why the last backup was not made; `damaged` also when something could not be read since the start. */
      trouble: storeTroubleSchema.nullable(),
      /** The last work that ended since the start; lengths of the data file in bytes. */
      ended: z
        .strictObject({
          doing: storeWorkSchema,
          trouble: storeTroubleSchema.nullable(),
          bytesBefore: z.number().int(),
          bytesAfter: z.number().int(),
        })
        .nullable(),
      /** What the data file takes on the disk, and how much of that holds nothing any more. */
      store: z.strictObject({ bytes: z.number().int(), emptyBytes: z.number().int() }),
    }),
  ),
  /** Begins a backup now and answers at once; `backup.list` says how it goes. */
  'backup.take': request(none, none),
  /**
   * Begins to make a new store from a backup, to go on with that one; answers at once, and `backup.list` says
   * how it goes. What was there becomes a backup itself. Every open page must be read anew afterwards.
   */
  'backup.restore': request(z.strictObject({ fileName: z.string().max(100) }), none),
  /** Begins to write the data file anew without what it no longer needs; `backup.list` says how it goes. */
  'store.compact': request(none, none),
  /** What was lost when a damaged store was opened; null when nothing was, or it has been read. */
  'loss.read': request(none, z.strictObject({ loss: storeLossSchema.nullable() })),
  'loss.noted': request(none, none),

  /**
   * Prints the page as it stands to a PDF file the user names. Answered by the desktop window only; elsewhere
   * `unknown-request`, and the page asks its browser to print.
   */
  'page.print': request(
    z.strictObject({ fileName: z.string().min(1).max(120), paper: z.enum(['a4', 'letter']) }),
    /** False: the user thought better of it. */
    z.strictObject({ saved: z.boolean() }),
  ),
} as const;

export type Contract = typeof contract;
export type RequestName = keyof Contract;
export type RequestInput<N extends RequestName> = z.input<Contract[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<Contract[N]['output']>;
