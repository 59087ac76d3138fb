import { ok } from '#core/quantity/result.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';

type BackupHandlers = Pick<
  Handlers,
  'backup.list' | 'backup.take' | 'backup.restore' | 'loss.read' | 'loss.noted'
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
      const restored = backups.restore(fileName);
      return restored.ok ? ok({}) : restored;
    },
    'loss.read': () => ok({ loss: backups.loss() }),
    'loss.noted': () => {
      backups.lossNoted();
      return ok({});
    },
  };
}
