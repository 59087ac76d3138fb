import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  app,
  BrowserWindow,
  dialog,
  type IpcMainInvokeEvent,
  ipcMain,
  Menu,
  protocol,
  session,
} from 'electron';
import { fail } from '#core/quantity/result.ts';
import type { WireReply } from '../contract/client.ts';
import { openWorkshop, type Workshop } from '../open-workshop.ts';
import { startTrouble } from '../start-trouble.ts';
import { closeNetwork, closeSession, keepOnPage } from './close-doors.ts';
import { isPageAddress, pageAddress, pageScheme } from './page-address.ts';
import { type PrintMeans, printPage } from './print-page.ts';
import { requestChannel } from './request-channel.ts';
import { servePage } from './serve-page.ts';
import { startRefusedCode } from './start-refused-code.ts';
import { windowOptions } from './window-options.ts';

/** Where the desktop host finds what it needs. */
export interface DesktopFolders {
  readonly data: string;
  readonly page: string;
  readonly samples: string;
  readonly preload: string;
}

/** Runs the desktop host: one process, one window, one store. */
export async function runDesktop(folders: DesktopFolders): Promise<void> {
  // What the window itself keeps (caches, its own lock) stays with the data it belongs to.
  app.setPath('userData', join(folders.data, 'window'));
  if (!app.requestSingleInstanceLock()) return app.quit();
  app.enableSandbox();
  closeNetwork(app.commandLine);
  // Whatever page there may ever be, not only the window's own.
  app.on('web-contents-created', (_event, contents) => keepOnPage(contents));
  protocol.registerSchemesAsPrivileged([
    { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  await app.whenReady();

  const workshop = openWorkshop(folders.data, folders.samples);
  if (!workshop.ok) {
    const trouble = startTrouble(workshop.problem, folders.data);
    console.error(trouble);
    dialog.showErrorBox('Undertrim', trouble);
    return app.exit(startRefusedCode);
  }
  closeSession(session.defaultSession);
  protocol.handle(pageScheme, (request) => servePage(folders.page, request.url));
  Menu.setApplicationMenu(process.platform === 'darwin' ? editingMenu() : null);
  openOnlyWindow(folders, workshop.value);
  app.on('window-all-closed', () => app.quit());
  app.on('will-quit', () => workshop.value.close());
}

function openOnlyWindow(folders: DesktopFolders, workshop: Workshop): void {
  const window = new BrowserWindow(windowOptions(folders.preload));
  ipcMain.handle(requestChannel, (event, name: unknown, input: unknown): WireReply | Promise<WireReply> => {
    if (!isFromPage(event, window)) return fail({ code: 'unknown-request', name: 'from outside the page' });
    return name === 'page.print' ? printPage(printMeans(window), input) : workshop.answer(name, input);
  });
  window.once('ready-to-show', () => window.show());
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  void window.loadURL(pageAddress);
}

function printMeans(window: BrowserWindow): PrintMeans {
  return {
    printToPDF: (options) => window.webContents.printToPDF(options),
    askWhere: async (fileName) => {
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        defaultPath: fileName,
        filters: [{ name: 'PDF', extensions: ['pdf'] }],
      });
      return canceled ? null : filePath;
    },
    write: (file, bytes) => writeFile(file, bytes),
  };
}

/** Whether a message comes from the top frame of our window while it shows our page. */
function isFromPage(event: IpcMainInvokeEvent, window: BrowserWindow): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame === window.webContents.mainFrame && isPageAddress(frame.url);
}

/** macOS takes copy and paste from the menu. Undo is left out: it is the page's own. */
function editingMenu(): Menu {
  const edit = ['cut', 'copy', 'paste', 'selectAll'] as const;
  return Menu.buildFromTemplate([
    { role: 'appMenu' },
    { label: 'Edit', submenu: edit.map((role) => ({ role })) },
    { role: 'windowMenu' },
  ]);
}
