import type { BackupLine, RequestOutput, StoreLoss } from '#electron/contract/contract.ts';

const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** A list of names in one sentence, cut short when it is long. */
function named(names: readonly string[]): string {
  const shown = names.slice(0, 8).map((name) => `“${name}”`);
  const more = names.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

type StoreState = RequestOutput<'backup.list'>;
type StoreTrouble = NonNullable<StoreState['trouble']>;

const doingWords: Record<NonNullable<StoreState['doing']>, string> = {
  backup: 'Backing up',
  restore: 'Going back',
  compact: 'Writing the data file anew',
};

/** A length on the disk. */
export function sayBytes(bytes: number): { readonly value: string; readonly unit: string } {
  return bytes < 1e6
    ? { value: String(Math.max(1, Math.round(bytes / 1e3))), unit: 'kB' }
    : { value: bytes < 1e8 ? (bytes / 1e6).toFixed(1) : String(Math.round(bytes / 1e6)), unit: 'MB' };
}

const inWords = (bytes: number): string => {
  const { value, unit } = sayBytes(bytes);
  return `${value} ${unit}`;
};

/** Every sentence about copies of everything and going back to one. */
export const backupWords = {
  title: 'Backups',
  what: 'Undertrim copies everything when it starts and once a day, opens each copy to check it, and keeps the last few, one a day for a week and one a week for five weeks.',
  where: (folder: string): string => `They are in ${folder}. For a second disk, copy that folder.`,
  none: 'No backup yet.',
  now: 'Back up now',
  running: (doing: StoreState['doing'], share: number): string =>
    `${doing ? doingWords[doing] : ''}, ${Math.round(share * 100)} %`,
  failed: 'The backups could not be read.',
  at: (takenAt: string): string => day.format(new Date(takenAt)),
  reasons: {
    start: 'at a start',
    daily: 'of the day',
    asked: 'asked for',
    'before-lifting': 'before an update',
    'before-restore': 'before going back',
  } satisfies Record<BackupLine['reason'], string>,
  back: 'Go back to it',
  backTo: (takenAt: string): string => `Go back to the backup of ${day.format(new Date(takenAt))}`,
  sure: (takenAt: string): string =>
    `Go back to how everything stood on ${day.format(new Date(takenAt))}? How it stands now is kept as a backup, so you can come back.`,
  yes: 'Go back',
  wentBack: (takenAt: string): string => `This is how everything stood on ${day.format(new Date(takenAt))}.`,
  trouble: {
    full: 'The last backup was not made: the disk has no room for it. Free some space, then back up now.',
    'read-only':
      'The last backup was not made: the folder of backups cannot be written to. Give this user the right to write there.',
    damaged:
      'Something in the data file could not be read. Your earlier backups are kept. Close Undertrim and start it again: it then saves what can be read, and says what is lost.',
    busy: 'The last backup was not made: another program holds the data file. Close that, then back up now.',
    other: 'The last backup was not made. The log in the data folder says where it stopped. Back up now.',
  } satisfies Record<StoreTrouble, string>,
  notGone: {
    full: 'Nothing was changed: the disk has no room to go back. Free some space, then go back again.',
    'read-only':
      'Nothing was changed: the data folder cannot be written to. Give this user the right to write there.',
    damaged: 'Nothing was changed: that backup has gone bad since it was made. Choose another one.',
    busy: 'Nothing was changed: another program holds the data file. Close that, then go back again.',
    other: 'Going back did not work. The log in the data folder says where it stopped. Go back again.',
  } satisfies Record<StoreTrouble, string>,
} as const;

/** Every sentence about the one file that holds everything. */
export const dataFileWords = {
  title: 'Data file',
  size: ({ bytes, emptyBytes }: StoreState['store']): string =>
    emptyBytes * 50 > bytes
      ? `It takes ${inWords(bytes)}, and ${inWords(emptyBytes)} of that is empty since things were removed.`
      : `It takes ${inWords(bytes)}, and hardly any of that is empty.`,
  smaller: 'Make the data file smaller',
  what: (bytes: number): string =>
    `This writes everything into a new file, checks it, and puts it in place of the old one. It needs ${inWords(bytes)} of free space meanwhile.`,
  done: (bytesBefore: number, bytesAfter: number): string =>
    bytesAfter < bytesBefore
      ? `It took ${inWords(bytesBefore)} and takes ${inWords(bytesAfter)} now.`
      : `It takes ${inWords(bytesAfter)}, as before: there was nothing to give back.`,
  trouble: {
    full: 'The data file stays as it is: the disk has no room for a new one beside it. Free some space, then do it again.',
    'read-only':
      'The data file stays as it is: the data folder cannot be written to. Give this user the right to write there.',
    damaged:
      'The data file stays as it is: something in it could not be read. Close Undertrim and start it again: it then saves what can be read.',
    busy: 'The data file stays as it is: it was worked on all the while. Do it again while nobody draws or enters anything.',
    other: 'The data file stays as it is. The log in the data folder says where it stopped. Do it again.',
  } satisfies Record<StoreTrouble, string>,
} as const;

/** What was lost when a damaged store was opened, in sentences. */
export const lossWords = {
  title: 'The data file was damaged. What could be read is saved.',
  noted: 'I have read this',
  kept: ({ keptMaps, keptJobs, keptPictures }: StoreLoss): string =>
    `Here now: ${counted(keptMaps, 'vehicle map', 'vehicle maps')}, ${counted(keptJobs, 'job', 'jobs')}, ${counted(keptPictures, 'picture', 'pictures')}.`,
  where: (folder: string): string => `The damaged file is kept as it was in ${folder}.`,
  lines: (loss: StoreLoss): readonly string[] => {
    const { lost, incomplete, fromBackup, withoutHistory, backupAt } = loss;
    const lines: string[] = [];
    if (loss.nothingRead && !backupAt) {
      return [
        'Nothing in it could be read, and there is no backup in the data folder. If you copied the backups folder to another disk, copy it back into the data folder: the list of backups then shows them, and you can go back to one.',
      ];
    }
    if (loss.nothingRead && backupAt) {
      lines.push(
        `Nothing in it could be read. Everything here is from the backup of ${day.format(new Date(backupAt))}; what came after that is lost.`,
      );
    }
    if (lost.maps.length > 0) lines.push(`Vehicle maps lost: ${named(lost.maps)}.`);
    if (lost.jobs.length > 0) lines.push(`Jobs lost: ${named(lost.jobs)}.`);
    if (lost.pictures > 0) lines.push(`${counted(lost.pictures, 'picture', 'pictures')} lost.`);
    if (incomplete.maps.length > 0) {
      lines.push(`Vehicle maps with something missing, to be checked on the car: ${named(incomplete.maps)}.`);
    }
    if (incomplete.jobs.length > 0) lines.push(`Jobs with entries missing: ${named(incomplete.jobs)}.`);
    const taken = [...fromBackup.maps, ...fromBackup.jobs];
    if (taken.length > 0 && backupAt && !loss.nothingRead) {
      lines.push(
        `Taken from the backup of ${day.format(new Date(backupAt))}, so later changes to them are missing: ${named(taken)}.`,
      );
    }
    if (withoutHistory.length > 0) {
      lines.push(`Earlier changes can no longer be taken back on: ${named(withoutHistory)}.`);
    }
    return lines.length > 0 ? lines : ['Nothing is known to be lost.'];
  },
} as const;
