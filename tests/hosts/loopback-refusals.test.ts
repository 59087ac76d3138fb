import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tokenHeader } from '#electron/contract/token-header.ts';
import { launchLoopback } from './loopback-launch.ts';
import { refused, send } from './loopback-send.ts';

test('our own page is answered, so that the refusals below mean something', async () => {
  const launch = await launchLoopback();
  expect(await send(launch, {})).toMatchObject({
    status: 200,
    text: '{"ok":true,"value":{"maps":[],"jobs":[]}}',
  });
});

test('a wrong, missing, shortened or lengthened token is refused', async () => {
  const launch = await launchLoopback();
  const { [tokenHeader]: token = '', ...without } = launch.ownHeaders;
  expect(await send(launch, { headers: without })).toEqual(refused(401, 'wrong-token'));
  const flipped = (token.startsWith('A') ? 'B' : 'A') + token.slice(1);
  for (const wrong of [flipped, token.slice(1), `${token}A`, 'x']) {
    const headers = { ...without, [tokenHeader]: wrong };
    expect(await send(launch, { headers })).toEqual(refused(401, 'wrong-token'));
  }
});

test('every launch has a token of its own, long enough not to be guessed', async () => {
  const tokens = [(await launchLoopback()).host.token, (await launchLoopback()).host.token];
  expect(tokens[0]).not.toBe(tokens[1]);
  for (const token of tokens) expect(Buffer.from(token, 'base64url')).toHaveLength(32);
});

test('another name for this machine is refused, for pages and for requests', async () => {
  const launch = await launchLoopback();
  for (const name of [
    'workshop.example',
    `workshop.example:${launch.host.port}`,
    '127.0.0.1',
    'localhost:1',
  ]) {
    const headers = { ...launch.ownHeaders, host: name, origin: `http://${name}` };
    expect(await send(launch, { headers })).toEqual(refused(421, 'wrong-host'));
    expect(await send(launch, { method: 'GET', path: '/', headers })).toEqual(refused(421, 'wrong-host'));
  }
});

test('a request from another origin, or from none, is refused', async () => {
  const launch = await launchLoopback();
  const { origin, ...without } = launch.ownHeaders;
  expect(origin).toBe(launch.address);
  expect(await send(launch, { headers: without })).toEqual(refused(403, 'wrong-origin'));
  for (const wrong of ['null', 'https://workshop.example', `https://127.0.0.1:${launch.host.port}`]) {
    expect(await send(launch, { headers: { ...without, origin: wrong } })).toEqual(
      refused(403, 'wrong-origin'),
    );
  }
  const headers = { ...launch.ownHeaders, 'sec-fetch-site': 'cross-site' };
  expect(await send(launch, { headers })).toEqual(refused(403, 'cross-site'));
});

test('a form sent across sites is refused by its kind of body', async () => {
  const launch = await launchLoopback();
  for (const type of ['application/x-www-form-urlencoded', 'text/plain', 'multipart/form-data']) {
    const headers = { ...launch.ownHeaders, 'content-type': type };
    expect(await send(launch, { headers })).toEqual(refused(415, 'wrong-type'));
  }
});

test('only POST asks and only GET fetches', async () => {
  const launch = await launchLoopback();
  expect(await send(launch, { method: 'GET' })).toEqual(refused(405, 'wrong-method'));
  for (const method of ['OPTIONS', 'PUT', 'DELETE', 'PATCH', 'TRACE', 'PROPFIND']) {
    expect(await send(launch, { method })).toEqual(refused(405, 'wrong-method'));
    expect(await send(launch, { method, path: '/' })).toEqual(refused(405, 'wrong-method'));
  }
  expect(await send(launch, { method: 'HEAD' })).toEqual({ status: 405, text: '' });
  expect(await send(launch, { path: '/' })).toEqual(refused(405, 'wrong-method'));
});

test('a path that leaves the page folder finds nothing', async () => {
  const launch = await launchLoopback();
  symlinkSync(join(launch.folder, 'outside.html'), join(launch.folder, 'page', 'link.html'));
  expect(await send(launch, { method: 'GET', path: '/index.html' })).toMatchObject({ status: 200 });
  for (const path of [
    '/../outside.html',
    '/..%2foutside.html',
    '/%2e%2e/outside.html',
    '/..%5coutside.html',
    '/link.html',
    '//outside.html',
    '/%00.html',
    '/%zz.html',
    '/../data/undertrim.db',
    '/page/',
  ]) {
    expect(await send(launch, { method: 'GET', path }), path).toEqual(refused(404, 'not-found'));
  }
});

test('an address of another host in the first line is refused', async () => {
  const launch = await launchLoopback();
  const path = 'http://workshop.example/request/library.list';
  expect(await send(launch, { path })).toEqual(refused(400, 'wrong-path'));
});

test('a body larger than allowed is refused, told or untold', async () => {
  const launch = await launchLoopback({ mostBodyBytes: 1_000 });
  const body = JSON.stringify({ key: 'k', text: 'x'.repeat(2_000) });
  const headers = { ...launch.ownHeaders, 'content-length': String(body.length) };
  expect(await send(launch, { headers, body })).toEqual(refused(413, 'too-large'));
  const untold = { ...launch.ownHeaders, 'transfer-encoding': 'chunked' };
  expect(await send(launch, { headers: untold, body })).toEqual(refused(413, 'too-large'));
  expect(await send(launch, { body: '{}' })).toMatchObject({ status: 200 });
});

test('what is no JSON is refused', async () => {
  const launch = await launchLoopback();
  expect(await send(launch, { body: '{' })).toEqual(refused(400, 'not-json'));
});
