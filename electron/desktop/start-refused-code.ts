/** Exit code of the desktop host when the data folder, not the window, was the trouble. */
export const startRefusedCode = 3;
