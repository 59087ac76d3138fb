import { scaleTool } from '../scale/scale-tool.ts';

/**
 * Picture: two presses on things in it whose true places or distance are known, as for the scale of the
 * whole drawing; the figures are typed beside the board.
 */
export const underlayTool = scaleTool;
