import type { CommandLine, Session, WebContents } from 'electron';
import { isPageAddress } from './page-address.ts';

/** Keeps a window on its own page: no navigation away, no second window, no embedded page. */
export function keepOnPage(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  const refuse = (event: { preventDefault(): void }): void => event.preventDefault();
  contents.on('will-navigate', refuse);
  contents.on('will-redirect', refuse);
  contents.on('will-frame-navigate', refuse);
  contents.on('will-attach-webview', refuse);
}

/**
 * Keeps the browser engine itself off the network: no name resolves, and it neither looks for parts of its
 * own to fetch nor for a proxy. Before the engine is ready, or it comes too late.
 */
export function closeNetwork(commandLine: CommandLine): void {
  commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
  for (const name of ['disable-background-networking', 'disable-component-update', 'no-proxy-server']) {
    commandLine.appendSwitch(name);
  }
}

/** Denies every permission and everything that would leave this machine. */
export function closeSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, decide) => decide({ cancel: !staysHere(url) }));
}

/** Whether an address needs no network: the page's own, or something the page made in memory. */
export function staysHere(address: string): boolean {
  return (
    isPageAddress(address) || address.startsWith('blob:undertrim://page/') || address.startsWith('data:')
  );
}
