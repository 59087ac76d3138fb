import { fieldProblem } from '#core/map/field-problem.ts';
import { fail, type Result } from '#core/quantity/result.ts';
import { storeProblem } from '#db/store-problem.ts';
import type { WireReply } from '../contract/client.ts';
import { contract, type RequestName } from '../contract/contract.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { Log } from '../log.ts';

/**
 * Answers one named message from the page, whatever it holds: checks it against the contract, runs the
 * handler, turns the surroundings' troubles into problems and our own bugs into `our-bug`, logged. Never
 * throws.
 */
export function answer(handlers: Handlers, log: Log, name: unknown, rawInput: unknown): WireReply {
  if (!isRequest(name)) return fail({ code: 'unknown-request', name: String(name).slice(0, 80) });
  try {
    const input = contract[name].input.safeParse(rawInput);
    if (!input.success) return fail(fieldProblem(input.error));
    const handler = handlers[name] as (input: unknown) => Result<unknown>;
    return handler(input.data);
  } catch (error) {
    const problem = storeProblem(error);
    log.trouble(name, error);
    return fail(
      problem ?? { code: 'our-bug', detail: error instanceof Error ? error.message : String(error) },
    );
  }
}

const isRequest = (name: unknown): name is RequestName =>
  typeof name === 'string' && Object.hasOwn(contract, name);
