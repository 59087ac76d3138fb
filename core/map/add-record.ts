import { fail, type Result } from '../quantity/result.ts';
import type { MapDocument, MapRecord } from './map-document.ts';
import { draftOf, recordOf } from './map-draft.ts';
import type { Patch } from './patch.ts';

/**
 * The patch that adds one whole record. Refuses an id that is taken (`duplicate-id`), a record a file
 * could not hold (`bad-field`) and one that names what is not there (`missing-reference`).
 * @example
 * addRecord(sample.map, sample.seat).problem // => { code: 'duplicate-id', thing: 'panel:seat' }
 */
export function addRecord(map: MapDocument, record: MapRecord): Result<Patch> {
  if (recordOf(map, record.id)) return fail({ code: 'duplicate-id', thing: record.id });
  const draft = draftOf(map);
  draft.put(record);
  return draft.finish();
}
