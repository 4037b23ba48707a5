import { EditorView } from '@codemirror/view';

/** The page's own colours and type, which reach into the shadow root as custom properties. */
export const theme = EditorView.theme({
  '&': { backgroundColor: 'var(--paper)', color: 'var(--ink)', fontSize: 'inherit' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': { fontFamily: 'inherit', lineHeight: '1.5', overflow: 'visible' },
  '.cm-content': { padding: '4px 0', caretColor: 'var(--ink)', minHeight: 'var(--target)' },
  '.cm-line': { padding: '0 6px' },
  '.cm-cursor': { borderLeft: '2px solid var(--ink)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground': {
    background: 'var(--pencil-tint)',
  },
  '.w-name': { color: 'var(--pencil)' },
  '.w-function': { fontWeight: '700' },
  '.w-unit': { color: 'var(--soft)' },
  '.w-wrong': { textDecoration: 'underline wavy var(--misses)', textUnderlineOffset: '3px' },
  '.cm-tooltip': { backgroundColor: 'var(--paper)', color: 'var(--ink)', border: '1px solid var(--ink)' },
  '.cm-tooltip.w-arguments': {
    maxWidth: 'min(26rem, 86vw)',
    padding: '4px 8px',
    lineHeight: '1.35',
    fontSize: 'var(--small)',
  },
  '.w-now': { borderBottom: '2px solid var(--pencil)', fontWeight: '700' },
  '.w-kind': { color: 'var(--soft)' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {
    fontFamily: 'inherit',
    maxHeight: '16rem',
    maxWidth: 'min(30rem, 90vw)',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': { padding: '6px 8px', minHeight: '24px' },
  '.cm-tooltip-autocomplete ul li[aria-selected]': { background: 'var(--ink)', color: 'var(--paper)' },
  '.cm-completionDetail': { fontStyle: 'normal', marginLeft: '12px', opacity: '0.85' },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '700' },
});
