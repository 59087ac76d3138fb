/** Name of the HTTP header that carries the token of one launch of the loopback host. */
export const tokenHeader = 'x-undertrim-token';
