import { request } from 'node:http';
import { connect, Server, Socket } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { type Launch, launchLoopback } from './loopback-launch.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** Writes raw text to a host and gives everything it answered before it ended the connection. */
function tell({ host }: Launch, ...pieces: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(host.port, '127.0.0.1');
    let text = '';
    socket.on('data', (part: Buffer) => {
      text += part.toString();
    });
    socket.on('error', reject);
    socket.on('close', () => resolve(text));
    for (const piece of pieces) socket.write(piece);
  });
}

describe('what is too much', () => {
  /** Sends so many megabytes without saying how many and gives status, text and the memory it took. */
  function pour(launch: Launch, megabytes: number): Promise<{ said: string; tookMb: number }> {
    const before = process.memoryUsage().rss;
    const headers = { ...launch.ownHeaders, 'transfer-encoding': 'chunked' };
    const where = { host: '127.0.0.1', port: launch.host.port, path: '/request/place.keep' };
    return new Promise((resolve, reject) => {
      const message = request({ ...where, method: 'POST', headers }, (reply) => {
        reply.on('data', (part: Buffer) =>
          resolve({
            said: `${reply.statusCode} ${part.toString()}`,
            tookMb: (process.memoryUsage().rss - before) / 1e6,
          }),
        );
        reply.on('close', () => message.destroy());
      });
      message.on('error', reject);
      const piece = Buffer.alloc(1_000_000, 'a');
      let left = megabytes;
      const more = (): void => {
        for (; left > 0; left--) if (!message.write(piece)) return void message.once('drain', more);
        message.end();
      };
      more();
    });
  }

  test('a body that goes on and on is told so while it is still being sent, and fills no memory', async () => {
    const launch = await launchLoopback({ mostBodyBytes: 1_000_000 });
    const { said, tookMb } = await pour(launch, 200);
    expect(said).toBe('413 {"refused":"too-large"}');
    expect(tookMb).toBeLessThan(120);
    const reply = await fetch(`${launch.address}/`);
    expect(reply.status).toBe(200);
  });

  test('a sender that ignores a refusal is cut off', async () => {
    const launch = await launchLoopback();
    const begun = performance.now();
    const said = await tell(
      launch,
      `POST /request/library.list HTTP/1.1\r\nHost: 127.0.0.1:${launch.host.port}\r\nContent-Length: 90\r\n\r\n{`,
    );
    expect(said).toMatch(/^HTTP\/1\.1 403 /);
    expect(said.toLowerCase()).toContain('connection: close');
    expect(performance.now() - begun).toBeLessThan(5_000);
  });

  test('headers beyond all measure are refused', async () => {
    const launch = await launchLoopback();
    const said = await tell(launch, `GET / HTTP/1.1\r\nX: ${'a'.repeat(20_000)}\r\n\r\n`);
    expect(said).toMatch(/^HTTP\/1\.1 431 /);
  });
});

test('a message whose headers or body take too long to arrive is cut off', async () => {
  const launch = await launchLoopback({ patienceMs: 300 });
  const { host, ownHeaders } = launch;
  const headers = Object.entries({ host: `127.0.0.1:${host.port}`, ...ownHeaders, 'content-length': '50' });
  const head = `POST /request/library.list HTTP/1.1\r\n${headers.map(([name, value]) => `${name}: ${value}\r\n`).join('')}`;
  const begun = performance.now();
  const [inHeaders, inBody] = await Promise.all([tell(launch, head), tell(launch, `${head}\r\n`, '{"a":')]);
  expect(inHeaders).toContain('408');
  expect(inBody).not.toContain('200 OK');
  expect(performance.now() - begun).toBeLessThan(5_000);
});

describe('what every answer carries', () => {
  const policyOf = (headers: Headers): ReadonlyMap<string, string> =>
    new Map(
      (headers.get('content-security-policy') ?? '').split('; ').map((rule) => {
        const [name = '', ...sources] = rule.split(' ');
        return [name, sources.join(' ')];
      }),
    );

  test('page, missing file, refusal and answer alike: the policy, nothing kept, nothing shared', async () => {
    const { address, ownHeaders } = await launchLoopback();
    const ask = { method: 'POST', headers: ownHeaders, body: '{}' };
    const replies = await Promise.all([
      fetch(`${address}/`),
      fetch(`${address}/none.html`),
      fetch(`${address}/request/library.list`, { method: 'POST' }),
      fetch(`${address}/request/library.list`, ask),
    ]);
    expect(replies.map(({ status }) => status)).toEqual([200, 404, 403, 200]);
    for (const { headers } of replies) {
      const policy = policyOf(headers);
      expect(policy.get('default-src')).toBe("'none'");
      for (const own of ['script-src', 'style-src', 'font-src', 'connect-src', 'worker-src']) {
        expect(policy.get(own), own).toBe("'self'");
      }
      for (const none of ['base-uri', 'form-action', 'frame-ancestors']) {
        expect(policy.get(none), none).toBe("'none'");
      }
      expect([...policy.values()].join(' ')).not.toMatch(/unsafe|https?:|\*/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cache-control')).toBe('no-store');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(headers.get('cross-origin-embedder-policy')).toBe('require-corp');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('permissions-policy')).toMatch(/camera=\(\).*geolocation=\(\).*microphone=\(\)/);
      expect(headers.get('access-control-allow-origin')).toBeNull();
      expect(headers.get('set-cookie')).toBeNull();
    }
  });
});

describe('the network', () => {
  test('hears us on 127.0.0.1 and nowhere else', async () => {
    const listened = vi.spyOn(Server.prototype, 'listen');
    const { host } = await launchLoopback();
    const servers = listened.mock.contexts as Server[];
    expect(servers.map((server) => server.address())).toEqual([
      { address: '127.0.0.1', family: 'IPv4', port: host.port },
    ]);
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ address, scopeid }) => address !== '127.0.0.1' && !scopeid)
      .map(({ address }) => address);
    for (const address of ['127.0.0.2', ...others]) {
      const reached = await new Promise<boolean>((resolve) => {
        const socket = connect(host.port, address);
        socket.once('connect', () => {
          socket.destroy();
          resolve(true);
        });
        socket.once('error', () => resolve(false));
      });
      expect(reached, address).toBe(false);
    }
  });

  test('is never asked for anything: the host opens no connection of its own', async () => {
    const { host, client } = await launchLoopback();
    const connected = vi.spyOn(Socket.prototype, 'connect');
    const made = await client('map.create', { name: 'Van', bodyStyle: 'van', driveSide: 'right' });
    if (!made.ok) throw new Error(made.problem.code);
    const { mapId } = made.value;
    const asked = [
      await client('library.list', {}),
      await client('map.open', { mapId }),
      await client('file.handOutBundle', { mapId }),
      await client('shop.figures', {}),
      await client('backup.take', {}),
      await client('map.remove', { mapId }),
    ];
    expect(asked.filter(({ ok }) => !ok)).toEqual([]);
    // The connections that were made are this test's, to the host.
    const ports = connected.mock.calls.flat(2).map((word) => Number((word as { port?: unknown })?.port));
    expect(ports.filter((port) => !Number.isNaN(port) && port !== host.port)).toEqual([]);
    expect(ports).toContain(host.port);
  });
});
