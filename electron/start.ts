import { ensurePage } from './build/ensure-built.ts';
import { startDesktop } from './desktop/start-desktop.ts';
import { serveLoopback } from './loopback/serve-loopback.ts';
import { readStartOptions, type StartOptions, startUsage } from './start-options.ts';

/** Starts the desktop host where it can run, and the loopback host with a browser window otherwise. */
async function start(options: StartOptions): Promise<number> {
  await ensurePage();
  if (!options.loopbackOnly) {
    const ran = await startDesktop(options.data);
    if (ran.started) return ran.exitCode;
    console.log(`No desktop window here (${ran.reason}); using a browser window instead.`);
  }
  return serveLoopback(options);
}

const options = readStartOptions(process.argv.slice(2));
if (typeof options === 'string') {
  console.error(`${options}\n\n${startUsage}`);
  process.exitCode = 2;
} else {
  process.exitCode = await start(options);
}
