import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where this user's data lives, by each system's own custom: the roaming application folder on Windows,
 * Application Support on macOS, the XDG data folder (XDG Base Directory Specification) elsewhere.
 */
export function dataFolder(
  platform: NodeJS.Platform = process.platform,
  environment: NodeJS.ProcessEnv = process.env,
  home: string = homedir(),
): string {
  if (platform === 'win32') return join(environment.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Undertrim');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Undertrim');
  const xdg = environment.XDG_DATA_HOME;
  return join(xdg?.startsWith('/') ? xdg : join(home, '.local', 'share'), 'undertrim');
}
