/** Text as it must stand in Markdown so that nothing of it is taken for marks. */
export const plain = (text: string): string =>
  text.replace(/[\\`*_<>|[\]#~]/g, (c) => `\\${c}`).replace(/\s*\n\s*/g, ' ');

export const code = (text: string): string => `\`${text.replace(/`/g, "'").replace(/\|/g, '\\|')}\``;

export const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}\n`).join('');

/** A table; cells are Markdown already. */
export const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |\n`).join('');

/** A formula on a line of its own, in the fence that renderers of mathematics in Markdown read. */
export const mathBlock = (tex: string): string => `\`\`\`math\n${tex}\n\`\`\`\n`;

/** A part of a page; nothing where it would be empty. */
export const part = (head: string, body: string): string => (body === '' ? '' : `\n${head}\n\n${body}`);
