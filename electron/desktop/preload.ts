import { contextBridge, ipcRenderer } from 'electron';
import { requestChannel } from './request-channel.ts';

// The page gets one function and nothing else: what it may ask is the contract's business.
contextBridge.exposeInMainWorld('undertrim', {
  request: (name: string, input: unknown) => ipcRenderer.invoke(requestChannel, name, input),
});
