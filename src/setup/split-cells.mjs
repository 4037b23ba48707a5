import { readFileSync } from 'node:fs';
import { parseAst } from 'vite';

/** What is only read of a kind of cell, and of its inputs and outputs. */
export const READ = ['purpose', 'assumptions', 'sources', 'cautions', 'examples', 'drawing'];
export const READ_OF = { inputs: ['hint', 'source'], outputs: ['hint'] };

const KIND = /\/cells\/kinds\/[\w-]+\.ts$/;
const JOIN = '\0join-cell';
const join = `export default (computing, { inputs, outputs, ...read }) => ({
  ...computing,
  ...read,
  inputs: computing.inputs.map((one) => ({ ...one, ...inputs[one.name] })),
  outputs: computing.outputs.map((one) => ({ ...one, ...outputs[one.name] })),
});`;

/** @param {any} object @param {string} name */
const propertyOf = (object, name) =>
  object.properties.find(
    (/** @type {any} */ one) => one.type === 'Property' && !one.computed && one.key.name === name,
  );

/**
 * The two parts of a file of `cells/kinds`: the record with what the engine computes with, and the rest, with every hint
 * and source of an input or output that is written out with its name. What is not written out stays in the first.
 *
 * @param {string} code @param {string} id path of the file
 */
export function splitCell(code, id) {
  const program = parseAst(code, { lang: 'ts' });
  const whole = /** @type {any} */ (program.body.find(({ type }) => type === 'ExportDefaultDeclaration'));
  const call = whole?.declaration;
  const record = call?.arguments?.[0];
  if (call?.callee?.name !== 'defineCell' || record?.type !== 'ObjectExpression')
    throw new Error(`${id}: a cell of the library is written as export default defineCell({ ... }).`);
  /** @type {{ start: number, end: number }[]} */
  const cuts = [];
  /** Takes properties out of an object, and gives their text. */
  const take = (/** @type {any} */ object, /** @type {readonly string[]} */ names) =>
    names.flatMap((name) => {
      const found = propertyOf(object, name);
      if (!found) return [];
      const next = object.properties[object.properties.indexOf(found) + 1];
      cuts.push({ start: found.start, end: next?.start ?? object.end - 1 });
      return [code.slice(found.start, found.end)];
    });
  const parts = take(record, READ);
  for (const [list, names] of Object.entries(READ_OF)) {
    const elements = propertyOf(record, list)?.value.elements ?? [];
    const read = elements.flatMap((/** @type {any} */ one) => {
      const name = one?.type === 'ObjectExpression' && propertyOf(one, 'name')?.value.value;
      const texts = typeof name === 'string' ? take(one, names) : [];
      return texts.length > 0 ? [`${JSON.stringify(name)}: { ${texts.join(', ')} }`] : [];
    });
    parts.push(`${list}: { ${read.join(', ')} }`);
  }
  let computing = '';
  let from = 0;
  for (const { start, end } of cuts.sort((a, b) => a.start - b.start)) {
    computing += code.slice(from, start);
    from = end;
  }
  computing += code.slice(from);
  const joined = [
    code.slice(0, whole.start),
    `import joinCell from '${JOIN}';`,
    `import computing from ${JSON.stringify(`${id}?computing`)};`,
    `export default joinCell(computing, { ${parts.join(', ')} });`,
    code.slice(whole.end),
  ].join('\n');
  return { computing, joined };
}

/**
 * Splits each file of `cells/kinds` in two when the page is built: what the engine computes with, for the workers
 * (`?computing`), and what is only read, which the page joins to it again (`?joined`). In Node the files are as they are.
 *
 * @returns {import('vite').Plugin}
 */
export function splitCells() {
  let building = false;
  return {
    name: 'split-cells',
    enforce: 'pre',
    configResolved({ command }) {
      building = command === 'build';
    },
    async resolveId(source, importer) {
      if (source === JOIN) return JOIN;
      if (!building || !source.startsWith('.') || source.includes('?')) return undefined;
      const found = await this.resolve(source, importer, { skipSelf: true });
      return found && KIND.test(found.id) ? `${found.id}?joined` : undefined;
    },
    load(id) {
      if (id === JOIN) return join;
      const [path = '', part] = id.split('?');
      if (!KIND.test(path) || (part !== 'computing' && part !== 'joined')) return undefined;
      this.addWatchFile(path);
      return { code: splitCell(readFileSync(path, 'utf8'), path)[part], moduleType: 'ts' };
    },
  };
}
