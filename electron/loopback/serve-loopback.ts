import { pageFolder, sampleFolder } from '../build/project-folder.ts';
import { openWorkshop } from '../open-workshop.ts';
import type { StartOptions } from '../start-options.ts';
import { lossAtStart, startTrouble } from '../start-trouble.ts';
import { openLoopbackHost } from './loopback-host.ts';
import { openWindow } from './open-window.ts';

/** Serves the program to a browser window until the process is told to stop; gives the exit code. */
export async function serveLoopback(options: StartOptions): Promise<number> {
  const workshop = openWorkshop(options.data, sampleFolder);
  if (!workshop.ok) {
    console.error(startTrouble(workshop.problem, options.data));
    return 1;
  }
  const loss = workshop.value.backups.loss();
  if (loss) console.error(lossAtStart(loss));
  try {
    const { answer } = workshop.value;
    const host = await openLoopbackHost({ answer, builtFolder: pageFolder, port: options.port });
    const opened = options.window && (await openWindow(host.launchAddress));
    console.log(opened ? `Undertrim is open at ${host.launchAddress}` : `Open ${host.launchAddress}`);
    await toldToStop();
    await host.close();
    return 0;
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')) throw error;
    console.error(`Port ${options.port} is in use. Choose another with --port, or leave it out.`);
    return 1;
  } finally {
    workshop.value.close();
  }
}

function toldToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
}
