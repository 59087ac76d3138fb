import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import { freshFolder } from './fresh-folder.ts';

type Listener = (...words: never[]) => unknown;

/** A stand-in for the desktop's own module: it notes what it is given and lets a test call it back. */
const stage = vi.hoisted(() => ({
  made: [] as { options: Record<string, unknown>; contents: Map<string, Listener>; loaded: string[] }[],
  appEvents: new Map<string, Listener>(),
  handled: new Map<string, Listener>(),
  exposed: new Map<string, Record<string, Listener>>(),
  invoked: [] as unknown[][],
  protocols: new Map<string, Listener>(),
  privileged: [] as unknown[],
  session: new Map<string, Listener>(),
  windowOpen: [] as Listener[],
  switches: new Map<string, string>(),
  exits: [] as number[],
  errors: [] as string[],
  quits: 0,
  lock: true,
  sandboxed: false,
  paths: new Map<string, string>(),
  mainFrame: { url: 'undertrim://page/' },
}));

vi.mock('electron', () => ({
  app: {
    setPath: (name: string, path: string) => stage.paths.set(name, path),
    requestSingleInstanceLock: () => stage.lock,
    enableSandbox: () => {
      stage.sandboxed = true;
    },
    whenReady: async () => undefined,
    on: (name: string, listener: Listener) => stage.appEvents.set(name, listener),
    commandLine: { appendSwitch: (name: string, value = '') => stage.switches.set(name, value) },
    quit: () => {
      stage.quits += 1;
    },
    exit: (code: number) => stage.exits.push(code),
  },
  BrowserWindow: class {
    webContents: unknown;
    made: (typeof stage.made)[number];
    constructor(options: Record<string, unknown>) {
      const contents = new Map<string, Listener>();
      this.made = { options, contents, loaded: [] };
      stage.made.push(this.made);
      this.webContents = {
        mainFrame: stage.mainFrame,
        setWindowOpenHandler: (handler: Listener) => stage.windowOpen.push(handler),
        on: (name: string, listener: Listener) => contents.set(name, listener),
      };
      // As the real one does: every page made is told of, whoever made it.
      (stage.appEvents.get('web-contents-created') as ((...words: unknown[]) => void) | undefined)?.(
        {},
        this.webContents,
      );
    }
    once(): void {}
    loadURL(address: string): Promise<void> {
      this.made.loaded.push(address);
      return Promise.resolve();
    }
  },
  contextBridge: {
    exposeInMainWorld: (name: string, api: Record<string, Listener>) => stage.exposed.set(name, api),
  },
  dialog: { showErrorBox: (_title: string, text: string) => stage.errors.push(text) },
  ipcMain: { handle: (name: string, handler: Listener) => stage.handled.set(name, handler) },
  ipcRenderer: { invoke: (...words: unknown[]) => stage.invoked.push(words) },
  Menu: { setApplicationMenu: () => undefined, buildFromTemplate: () => ({}) },
  protocol: {
    registerSchemesAsPrivileged: (schemes: unknown[]) => stage.privileged.push(...schemes),
    handle: (scheme: string, handler: Listener) => stage.protocols.set(scheme, handler),
  },
  session: {
    defaultSession: {
      setPermissionRequestHandler: (handler: Listener) => stage.session.set('request', handler),
      setPermissionCheckHandler: (handler: Listener) => stage.session.set('check', handler),
      setDevicePermissionHandler: (handler: Listener) => stage.session.set('device', handler),
      webRequest: { onBeforeRequest: (handler: Listener) => stage.session.set('network', handler) },
    },
  },
}));

const { runDesktop } = await import('#electron/desktop/run-desktop.ts');

/** Runs the desktop host on folders of its own with a page of one line. */
async function launch(data = join(freshFolder(), 'data')): Promise<void> {
  const page = join(freshFolder(), 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(page, '..', 'secret.html'), 'secret');
  await runDesktop({ data, page, samples: join(page, 'none'), preload: '/preload.cjs' });
  onTestFinished(() => void stage.appEvents.get('will-quit')?.());
}

const call = (listener: Listener | undefined, ...words: unknown[]): unknown => {
  if (!listener) throw new Error('nothing listens');
  return (listener as (...words: unknown[]) => unknown)(...words);
};

beforeEach(() => {
  stage.made.length = 0;
  stage.privileged.length = 0;
  stage.exits.length = 0;
  stage.errors.length = 0;
  stage.windowOpen.length = 0;
  stage.quits = 0;
  stage.lock = true;
  stage.sandboxed = false;
  for (const map of [stage.appEvents, stage.handled, stage.protocols, stage.session, stage.switches]) {
    map.clear();
  }
});

// The security checklist of Electron's own documentation (Tutorial, Security), from memory, point by point.
test('the window is isolated, sandboxed, without Node, and shows our own page', async () => {
  await launch();
  expect(stage.sandboxed).toBe(true);
  expect(stage.made).toHaveLength(1);
  expect(stage.made[0]?.loaded).toEqual(['undertrim://page/']);
  expect(stage.made[0]?.options.webPreferences).toMatchObject({
    preload: '/preload.cjs',
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
  });
  // Off unless asked for, so they must not be asked for.
  const risky = ['experimentalFeatures', 'enableBlinkFeatures', 'nodeIntegrationInSubFrames', 'plugins'];
  const asked = stage.made[0]?.options.webPreferences as Record<string, unknown>;
  expect(risky.filter((name) => asked[name])).toEqual([]);
  const privileges = { standard: true, secure: true, supportFetchAPI: true };
  expect(stage.privileged).toEqual([{ scheme: 'undertrim', privileges }]);
});

test('going elsewhere, opening windows and embedding pages are refused', async () => {
  await launch();
  for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
    const preventDefault = vi.fn();
    call(stage.made[0]?.contents.get(name), { preventDefault });
    expect(preventDefault, name).toHaveBeenCalledOnce();
  }
  expect(call(stage.windowOpen[0], { url: 'https://workshop.example' })).toEqual({ action: 'deny' });
});

test('a page made in any other way is kept shut too', async () => {
  await launch();
  const other = { on: vi.fn(), setWindowOpenHandler: vi.fn() };
  call(stage.appEvents.get('web-contents-created'), {}, other);
  expect(other.setWindowOpenHandler).toHaveBeenCalledOnce();
  expect(other.on.mock.calls.map(([name]) => name)).toContain('will-attach-webview');
});

test('every permission is denied', async () => {
  await launch();
  for (const permission of [
    'media',
    'display-capture',
    'geolocation',
    'notifications',
    'clipboard-read',
    'clipboard-sanitized-write',
    'fullscreen',
    'openExternal',
    'fileSystem',
    'hid',
    'serial',
    'usb',
    'unknown',
  ]) {
    const decide = vi.fn();
    call(stage.session.get('request'), {}, permission, decide);
    expect(decide).toHaveBeenCalledExactlyOnceWith(false);
    expect(call(stage.session.get('check'), {}, permission)).toBe(false);
  }
  expect(call(stage.session.get('device'), {})).toBe(false);
});

test('nothing is fetched from the network', async () => {
  await launch();
  const cancelled = (url: string): unknown => {
    const decide = vi.fn();
    call(stage.session.get('network'), { url }, decide);
    return decide.mock.calls[0]?.[0];
  };
  expect(cancelled('undertrim://page/index.html')).toEqual({ cancel: false });
  expect(cancelled('blob:undertrim://page/1')).toEqual({ cancel: false });
  for (const url of [
    'https://workshop.example/',
    'http://127.0.0.1/',
    'file:///etc/passwd',
    'undertrim://other/',
  ]) {
    expect(cancelled(url), url).toEqual({ cancel: true });
  }
});

test('the browser engine itself has no way to the network', async () => {
  await launch();
  expect(stage.switches.get('host-resolver-rules')).toBe('MAP * ~NOTFOUND');
  for (const name of ['disable-background-networking', 'disable-component-update', 'no-proxy-server']) {
    expect(stage.switches.has(name), name).toBe(true);
  }
});

test('the page’s scheme serves the built folder and nothing outside it', async () => {
  await launch();
  const fetchPage = (url: string): Response => call(stage.protocols.get('undertrim'), { url }) as Response;
  const page = fetchPage('undertrim://page/');
  expect(await page.text()).toContain('<title>page</title>');
  expect(page.headers.get('content-security-policy')).toContain("script-src 'self'");
  expect(page.headers.get('content-security-policy')).not.toContain('unsafe');
  for (const url of [
    'undertrim://page/..%2fsecret.html',
    'undertrim://page/%2e%2e/secret.html',
    'undertrim://page/..%5csecret.html',
    'undertrim://page//secret.html',
    'undertrim://page.example/index.html',
    'undertrim://page@example/index.html',
    'undertrim://other/index.html',
    'file:///secret.html',
  ]) {
    expect(fetchPage(url).status, url).toBe(404);
  }
});

test('the contract answers our page’s own frame and no other', async () => {
  await launch();
  const ask = (senderFrame: unknown): unknown =>
    call(stage.handled.get('undertrim:request'), { senderFrame }, 'library.list', {});
  expect(ask(stage.mainFrame)).toEqual({ ok: true, value: { maps: [], jobs: [] } });
  for (const frame of [null, { url: 'undertrim://page/' }]) {
    expect(ask(frame)).toMatchObject({ ok: false, problem: { code: 'unknown-request' } });
  }
  stage.mainFrame.url = 'https://workshop.example/';
  expect(ask(stage.mainFrame)).toMatchObject({ ok: false });
  stage.mainFrame.url = 'undertrim://page/';
});

test('the preload gives the page one function and nothing else', async () => {
  await import('#electron/desktop/preload.ts');
  const exposed = stage.exposed.get('undertrim') ?? {};
  expect([[...stage.exposed.keys()], Object.keys(exposed)]).toEqual([['undertrim'], ['request']]);
  call(exposed.request, 'place.read', { key: 'draw' });
  expect(stage.invoked).toEqual([['undertrim:request', 'place.read', { key: 'draw' }]]);
});

test('a second start of the program leaves at once and opens nothing', async () => {
  stage.lock = false;
  await launch();
  expect([stage.quits, stage.made.length, stage.handled.size]).toEqual([1, 0, 0]);
});

test('a data folder in use by another host is told and nothing opens', async () => {
  const data = join(freshFolder(), 'data');
  await launch(data);
  await launch(data);
  expect(stage.errors).toMatchObject([expect.stringContaining('already open')]);
  expect([stage.exits, stage.made.length]).toEqual([[3], 1]);
});

test('what the window keeps for itself lies with its data', async () => {
  const data = join(freshFolder(), 'data');
  await launch(data);
  expect(stage.paths.get('userData')).toBe(join(data, 'window'));
});
