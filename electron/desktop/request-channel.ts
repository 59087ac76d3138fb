/** Name of the one channel between page and host. */
export const requestChannel = 'undertrim:request';
