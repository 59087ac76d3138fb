import { fileURLToPath } from 'node:url';

/** The folder the program's sources lie in. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/** The built page, as every host serves it. */
export const pageFolder = fileURLToPath(new URL('../../renderer/built', import.meta.url));

/** Sample vehicles, offered at the first start. */
export const sampleFolder = fileURLToPath(new URL('../../sample-vehicles', import.meta.url));
