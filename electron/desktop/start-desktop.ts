import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureDesktop } from '../build/ensure-built.ts';
import { projectFolder } from '../build/project-folder.ts';
import { startRefusedCode } from './start-refused-code.ts';

/** Whether the desktop host ran, and how it ended; or why it could not. */
export type DesktopStart =
  | { readonly started: true; readonly exitCode: number }
  | { readonly started: false; readonly reason: string };

const electronFolder = join(projectFolder, 'node_modules', 'electron');
const fetchPatienceMs = 180_000;
/** A window that ends this soon with an error never opened: a library it needs is missing. */
const earlyEndMs = 10_000;

/** Why no desktop window can open here at all, or null. */
export function desktopHindrance(
  platform: NodeJS.Platform,
  environment: NodeJS.ProcessEnv,
  userId: number | undefined,
): string | null {
  if (platform !== 'linux') return null;
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return 'there is no display';
  return userId === 0 ? 'the desktop window is kept from the root user' : null;
}

/** Builds the desktop host where it can run, and runs it on a data folder until its window is closed. */
export async function startDesktop(data: string): Promise<DesktopStart> {
  const hindrance = desktopHindrance(process.platform, process.env, process.getuid?.());
  if (hindrance) return { started: false, reason: hindrance };
  const program = desktopProgram() ?? fetchProgram();
  if (!program) return { started: false, reason: 'its program is not here and could not be fetched' };
  await ensureDesktop();
  return run(program, data);
}

/** Where the desktop's program lies, told without fetching it; null when it is not here. */
export function desktopProgram(
  folder: string = electronFolder,
  environment: NodeJS.ProcessEnv = process.env,
): string | null {
  const pathFile = join(folder, 'path.txt');
  const name = existsSync(pathFile) ? readFileSync(pathFile, 'utf8') : 'electron';
  const program = join(environment.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist'), name);
  return existsSync(program) ? program : null;
}

/** The folder of the desktop's program, fetched when it is not here; null where it cannot be had. */
export function desktopProgramFolder(): string | null {
  const here = desktopProgram() ?? fetchProgram();
  return here && (process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(electronFolder, 'dist'));
}

function fetchProgram(): string | null {
  const script = join(electronFolder, 'install.js');
  if (!existsSync(script)) return null;
  console.log('Fetching the desktop window’s program; this happens once.');
  spawnSync(process.execPath, [script], { stdio: 'ignore', timeout: fetchPatienceMs });
  return desktopProgram();
}

function run(program: string, data: string): Promise<DesktopStart> {
  const begun = performance.now();
  const child = spawn(program, [projectFolder, `--data=${data}`], { stdio: 'inherit' });
  const passOn = (signal: NodeJS.Signals): boolean => child.kill(signal);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, passOn);
  return new Promise((resolve) => {
    const end = (result: DesktopStart): void => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, passOn);
      resolve(result);
    };
    child.once('error', () => end({ started: false, reason: 'its program would not start' }));
    child.once('exit', (code, signal) => {
      const early = performance.now() - begun < earlyEndMs;
      const asked = signal === 'SIGINT' || signal === 'SIGTERM';
      if (early && code !== 0 && code !== startRefusedCode && !asked) {
        end({ started: false, reason: 'its program would not start' });
      } else end({ started: true, exitCode: code ?? 0 });
    });
  });
}
