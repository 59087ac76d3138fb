import { ok } from '#core/quantity/result.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

type BackupHandlers = Pick<
  Handlers,
  'backup.list' | 'backup.take' | 'backup.restore' | 'store.compact' | 'loss.read' | 'loss.noted'
>;

/** The requests about copies of everything, and about what a damaged store lost. */
export function backupHandlers({ backups }: HostMeans): BackupHandlers {
  return {
    'backup.list': () => {
      const state = backups.state();
      return ok({ ...state, backups: [...state.backups] });
    },
    'backup.take': () => {
      backups.begin('asked');
      return ok({});
    },
    'backup.restore': ({ fileName }) => {
      const begun = backups.beginRestore(fileName);
      return begun.ok ? ok({}) : begun;
    },
    'store.compact': () => {
      const begun = backups.beginCompact();
      return begun.ok ? ok({}) : begun;
    },
    'loss.read': () => ok({ loss: backups.loss() }),
    'loss.noted': () => {
      backups.lossNoted();
      return ok({});
    },
  };
}
