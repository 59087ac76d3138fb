import type { z } from 'zod';
import type { Result } from '#core/quantity/result.ts';
import type { contract, RequestName, RequestOutput } from './contract.ts';

/** One function for each request of the contract; input arrives checked. Written once, used by every host. */
export type Handlers = {
  readonly [N in RequestName]: (input: z.output<(typeof contract)[N]['input']>) => Result<RequestOutput<N>>;
};
