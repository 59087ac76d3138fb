import { serveLoopback } from '#electron/loopback/serve-loopback.ts';
import { readStartOptions } from '#electron/start-options.ts';

/** The loopback half of a start, without building the page first. */
const options = readStartOptions(process.argv.slice(2));
if (typeof options === 'string') throw new Error(options);
process.exitCode = await serveLoopback(options);
