import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** The app as `npm start` opens it on a machine without a desktop window, on a data folder of its own. */
export interface AppHost {
  /** Address of the page, with this launch's token. */
  readonly address: string;
  readonly folder: string;
  /** Ends the process at once, as a power cut would. */
  readonly kill: () => Promise<void>;
  /** Ends it and throws the data away. */
  readonly end: () => Promise<void>;
}

/** Starts the loopback host; with `folder`, on data that a former start left. */
export async function startApp(folder = mkdtempSync(join(tmpdir(), 'undertrim-app-'))): Promise<AppHost> {
  const host = spawn(
    process.execPath,
    ['electron/start.ts', '--host', 'loopback', '--no-window', '--data', folder],
    { cwd: root },
  );
  const ended = new Promise<void>((resolve) => host.once('exit', () => resolve()));
  const address = await printedAddress(host);
  const kill = async (): Promise<void> => {
    host.kill('SIGKILL');
    await ended;
  };
  return {
    address,
    folder,
    kill,
    end: async () => {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The address a starting host prints, with its token. Rejects with what it said when it ends before. */
export function printedAddress(host: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const listen = (part: Buffer): void => {
      said += part.toString();
      const address = /http:\/\/127\.0\.0\.1:\S+/.exec(said)?.[0];
      if (address) resolve(address);
    };
    host.stdout?.on('data', listen);
    host.stderr?.on('data', listen);
    host.once('exit', () => reject(new Error(`the app did not start: ${said}`)));
  });
}
