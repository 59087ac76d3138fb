import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A program and its words. */
export interface WindowCommand {
  readonly program: string;
  readonly words: readonly string[];
}

const chromiumNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * How to open a window on an address: a browser window without bars where Chromium or Chrome is on the
 * path, else whatever the system opens addresses with. Null where there is no display to open it on.
 */
export function windowCommand(
  address: string,
  platform: NodeJS.Platform = process.platform,
  environment: NodeJS.ProcessEnv = process.env,
  exists: (file: string) => boolean = existsSync,
): WindowCommand | null {
  if (platform === 'win32') {
    return { program: 'rundll32', words: ['url.dll,FileProtocolHandler', address] };
  }
  if (platform === 'darwin') return { program: 'open', words: [address] };
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return null;
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const found = (name: string): string | undefined =>
    folders.map((folder) => join(folder, name)).find((file) => exists(file));
  for (const name of chromiumNames) {
    const program = found(name);
    if (program) return { program, words: [`--app=${address}`] };
  }
  const opener = found('xdg-open');
  return opener ? { program: opener, words: [address] } : null;
}

/** Opens a window on an address; false where none can be opened. The window outlives nothing of ours. */
export async function openWindow(address: string): Promise<boolean> {
  const command = windowCommand(address);
  if (!command) return false;
  const child = spawn(command.program, command.words, { stdio: 'ignore', detached: true });
  return new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('spawn', () => {
      child.unref();
      resolve(true);
    });
  });
}
