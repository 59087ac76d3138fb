/** Why a backup was made. */
export const backupReasons = ['start', 'daily', 'asked', 'before-lifting', 'before-restore'] as const;
export type BackupReason = (typeof backupReasons)[number];

/** A backup's file name: when and why, so that the folder can be read without opening anything. */
export function backupName(at: string, reason: BackupReason): string {
  return `${new Date(at).toISOString().replaceAll(':', '.')} ${reason}.db`;
}

const form = /^(\d{4}-\d\d-\d\dT\d\d)\.(\d\d)\.(\d\d\.\d{3}Z) ([a-z-]+)\.db$/;

/** When and why a backup was made, from its file name; null for any other file. */
export function readBackupName(
  fileName: string,
): { readonly takenAt: string; readonly reason: BackupReason } | null {
  const [, hour, minute, second, word] = form.exec(fileName) ?? [];
  const reason = backupReasons.find((each) => each === word);
  return reason ? { takenAt: `${hour}:${minute}:${second}`, reason } : null;
}
