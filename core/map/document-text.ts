/**
 * The text of an exchange document: one record a line, so that a comparison of two files names the
 * records that changed and nothing else.
 * @example
 * documentText({ version: 1, nodes: [{ id: 'node:a' }, { id: 'node:b' }], panels: [] })
 *   // => '{\n  "version": 1,\n  "nodes": [\n    {"id":"node:a"},\n    {"id":"node:b"}\n  ],\n  "panels": []\n}\n'
 */
export function documentText(document: object): string {
  const fields = Object.entries(document).map(([name, value]) => `  ${JSON.stringify(name)}: ${text(value)}`);
  return `{\n${fields.join(',\n')}\n}\n`;
}

function text(value: unknown): string {
  if (!Array.isArray(value) || value.length === 0) return JSON.stringify(value);
  const records = value.map((record) => `    ${JSON.stringify(record)}`);
  return `[\n${records.join(',\n')}\n  ]`;
}
