const NO_LANGUAGE = '\0no-language';

/**
 * The editor's parts ask for the language of the text they stand in, to indent and to match brackets by its syntax. An
 * entry has none there (it is read by our own grammar), so they get the answers of a text without one, and the machinery
 * that parses bit by bit in the background is not fetched. What nothing asks for is refused.
 *
 * @returns {import('vite').Plugin}
 */
export function slimEditor() {
  return {
    name: 'slim-editor',
    apply: 'build',
    enforce: 'pre',
    resolveId: (source, importer) =>
      source === '@codemirror/language' &&
      /\/node_modules\/@codemirror\//.test(importer?.replaceAll('\\', '/') ?? '')
        ? NO_LANGUAGE
        : undefined,
    load: (id) =>
      id === NO_LANGUAGE
        ? `import { Tree } from '@lezer/common';
export const syntaxTree = () => Tree.empty;
export const getIndentUnit = () => 2;
const refused = () => { throw new Error('An entry has no language in the editor.'); };
export {
  refused as IndentContext, refused as getIndentation, refused as indentString,
  refused as matchBrackets, refused as indentUnit,
};`
        : undefined,
  };
}
