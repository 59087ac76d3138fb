import { parseArgs } from 'node:util';
import { dataFolder } from './data-folder.ts';

/** What `npm start -- …` was asked for. */
export interface StartOptions {
  /** Folder the store lives in; this user's own data folder when not said. */
  readonly data: string;
  /** 0: whichever is free. */
  readonly port: number;
  /** Whether to open a window at all. */
  readonly window: boolean;
  /** Use the loopback host even where the desktop one would run. */
  readonly loopbackOnly: boolean;
}

export const startUsage = `npm start -- [--data FOLDER] [--port N] [--no-window] [--host loopback]
  --data FOLDER     keep maps and jobs in this folder
  --port N          serve the page on this port (loopback host)
  --no-window       print the address and open nothing (loopback host)
  --host loopback   use a browser window even where the desktop one would run`;

/** The options of a start from its words; a sentence saying what is wrong otherwise. */
export function readStartOptions(words: readonly string[]): StartOptions | string {
  let values: { data?: string; port?: string; 'no-window'?: boolean; host?: string };
  try {
    ({ values } = parseArgs({
      args: [...words],
      options: {
        data: { type: 'string' },
        port: { type: 'string' },
        'no-window': { type: 'boolean' },
        host: { type: 'string' },
      },
    }));
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  const port = Number(values.port ?? 0);
  if (!/^\d{1,5}$/.test(values.port ?? '0') || port > 65_535) return '--port takes a number from 0 to 65535.';
  if (values.host !== undefined && values.host !== 'loopback') return '--host takes "loopback" only.';
  if (values.data === '') return '--data takes a folder.';
  const noWindow = values['no-window'] === true;
  return {
    data: values.data ?? dataFolder(),
    port,
    window: !noWindow,
    loopbackOnly: noWindow || values.host === 'loopback' || values.port !== undefined,
  };
}
