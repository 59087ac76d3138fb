import type { Problem } from '#core/quantity/problem.ts';
import type { Result } from '#core/quantity/result.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { contract, type RequestInput, type RequestName, type RequestOutput } from './contract.ts';

/** How a problem crosses: the typed facts, and nothing that is only a sentence. */
export type WireReply =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problem: Problem };

/** Carries one named message to the host and back: IPC on the desktop, HTTP on the loopback host. */
export type Channel = (name: RequestName, input: unknown) => Promise<WireReply>;

/** Asks the host; both directions are checked against the contract. Never throws or rejects. */
export type Client = <N extends RequestName>(
  name: N,
  input: RequestInput<N>,
) => Promise<Result<RequestOutput<N>>>;

/** A client over any channel. A channel that fails or answers out of contract gives `no-answer` or `our-bug`. */
export function clientOver(channel: Channel): Client {
  return async (name, input) => {
    let reply: WireReply;
    try {
      reply = await channel(name, input);
    } catch (error) {
      return fail({ code: 'no-answer', detail: String(error) });
    }
    if (!reply.ok) return reply;
    const output = contract[name].output.safeParse(reply.value);
    if (!output.success)
      return fail({
        code: 'our-bug',
        detail: `${name} answered out of contract: ${output.error.message}`,
      });
    return ok(output.data as RequestOutput<typeof name>);
  };
}
