import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Client } from '#electron/contract/client.ts';

type Shared = MapId | JobId;

const channelName = 'undertrim.changed';
let channel: BroadcastChannel | null = null;
const shared = (): BroadcastChannel => {
  channel ??= new BroadcastChannel(channelName);
  return channel;
};

/** A client that tells the other windows on this store which map or job a request of its own has changed. */
export function tellingOthers(client: Client): Client {
  return (async (name: string, input: { mapId?: MapId; jobId?: JobId }) => {
    const reply = await client(name as 'map.commit', input as never);
    const changed = name === 'map.commit' ? input.mapId : changesJob.has(name) ? input.jobId : undefined;
    if (reply.ok && changed) shared().postMessage(changed);
    return reply;
  }) as Client;
}

const changesJob: ReadonlySet<string> = new Set(['job.append', 'job.changeIntake']);

/** Calls back when another window has changed this map or job; the answer ends that. */
export function onChangeElsewhere(id: Shared, then: () => void): () => void {
  const listen = ({ data }: MessageEvent<unknown>): void => {
    if (data === id) then();
  };
  shared().addEventListener('message', listen);
  return () => shared().removeEventListener('message', listen);
}
