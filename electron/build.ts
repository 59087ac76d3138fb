import { pathToFileURL } from 'node:url';
import { buildDesktop } from './build/build-desktop.ts';
import { buildPage } from './build/build-page.ts';

/** Builds what every host serves and what the desktop host runs. */
export async function build(): Promise<void> {
  await buildPage();
  await buildDesktop();
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await build();
