import { defineConfig, presetMini, transformerVariantGroup, type Variant } from 'unocss';
import { colours, looks, sizes } from './src/page/kit/tokens.ts';

/** Names of colours and sizes as custom properties, by which a look exchanges them. */
const properties = (values: { readonly [name: string]: string }): string =>
  Object.entries(values)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(' ');

const tokens = [
  `:root { color-scheme: light dark; ${properties({ ...sizes, ...looks.light })} }`,
  // The look is named on the document as it starts: by preference, else as the device has it. Print is on white.
  `@media screen {
    [data-look="light"] { color-scheme: light; }
    [data-look="dark"] { color-scheme: dark; ${properties(looks.dark)} }
    [data-look="outdoors"] { color-scheme: light; ${properties(looks.outdoors)} }
  }`,
  '@media (prefers-contrast: more) { :root { --soft: var(--ink); --rule: var(--ink); } }',
  '@media (pointer: coarse), (max-width: 640px) { :root { --target: 44px; } }',
].join('\n');

/** Later ones have the last word. */
const MEDIA = new Map([
  // A finger leaves its hover behind on what it pressed.
  ['pointing', '(hover: hover)'],
  // The bar of the sheet has no room for what its steps take back.
  ['bars', '(max-width: 1500px)'],
  // The lines of a sheet lose their column of limits.
  ['narrow', '(max-width: 1000px)'],
  // Parts side by side no longer fit.
  ['column', '(max-width: 760px)'],
  ['phone', '(max-width: 640px)'],
  ['touch', '(pointer: coarse), (max-width: 640px)'],
]);

/** `phone:hidden` and the like. */
const media: Variant = (matcher) => {
  const [, name, rest] = /^([a-z]+):(.+)$/.exec(matcher) ?? [];
  const query = name && MEDIA.get(name);
  if (!query || !rest) return matcher;
  const parentOrder = 1000 + [...MEDIA.keys()].indexOf(name);
  return {
    matcher: rest,
    handle: (input, next) => next({ ...input, parent: `@media ${query}`, parentOrder }),
  };
};

const pairs = (names: Iterable<string>, prefix = ''): { [name: string]: string } =>
  Object.fromEntries([...names].map((name) => [name.replace(prefix, ''), `var(--${name})`]));

const SIDES: { readonly [letter: string]: string } = { t: '-top', r: '-right', b: '-bottom', l: '-left' };
const TEXT = ['small', 'plain', 'figure', 'head', 'title'];

const lined = (side: string, weight = 'narrow', kind = 'solid', colour = 'ink') => ({
  [`border${side}`]:
    weight === 'none'
      ? '0'
      : `var(--${weight}) ${kind} ${colour === 'current' ? 'currentColor' : `var(--${colour})`}`,
});

export default defineConfig({
  presets: [presetMini({ dark: 'media', preflight: false })],
  transformers: [transformerVariantGroup()],
  // Words that stand in the source for something else: the first is a class of ours, whose box it would take away.
  blocklist: ['contents', 'outline'],
  preflights: [{ getCSS: () => tokens }],
  theme: {
    colors: pairs(colours),
    // One scale: 1 to 6 are 4, 8, 12, 16, 24 and 40 px, whatever the size of the text.
    spacing: pairs(['s1', 's2', 's3', 's4', 's5', 's6'], 's'),
    lineWidth: { DEFAULT: 'var(--narrow)', narrow: 'var(--narrow)', wide: 'var(--wide)' },
    // A key of the pad is taken by a thumb in a glove.
    minHeight: { target: 'var(--target)', key: '58px' },
    minWidth: { target: 'var(--target)' },
    lineHeight: { target: 'var(--target)' },
  },
  variants: [media],
  rules: [
    // A line as drawings have them: weight, kind, colour, around or at one side. `lined`, `lined-b-dotted-rule`, `lined-t-wide`.
    [
      /^lined(?:-(wide|none))?(?:-(dotted|dashed))?(?:-([a-z]+(?:-tint)?))?$/,
      ([, ...line]) => lined('', ...line),
    ],
    [
      /^lined-([trbl])(?:-(wide|none))?(?:-(dotted|dashed))?(?:-([a-z]+(?:-tint)?))?$/,
      ([, side, ...line]) => lined(SIDES[side!]!, ...line),
    ],
    // What a line of the sheet has to tell beside its figures, with the colour of its standing at the side.
    [/^barred-([a-z]+)$/, ([, colour]) => ({ 'border-left': `3px solid var(--${colour})` })],
    [new RegExp(`^text-(${TEXT.join('|')})$`), ([, size]) => ({ 'font-size': `var(--${size})` })],
    [/^text-(left|right|center)$/, ([, align]) => ({ 'text-align': align! })],
    [/^accent-([a-z]+)$/, ([, colour]) => ({ 'accent-color': `var(--${colour})` })],
    // The first rows of a text.
    [
      /^clamp-(\d+)$/,
      ([, rows]) => ({
        display: '-webkit-box',
        overflow: 'hidden',
        '-webkit-box-orient': 'vertical',
        '-webkit-line-clamp': rows!,
      }),
    ],
    ['joined', { 'border-collapse': 'collapse' }],
    ['wrap-anywhere', { 'overflow-wrap': 'anywhere' }],
  ],
  shortcuts: {
    caption: 'text-soft text-small',
    unseen: 'absolute w-1px h-1px -m-1px overflow-hidden [clip-path:inset(50%)] whitespace-nowrap',
    /** A sheet of drawing paper: its edge in a narrow line, the frame in a wide one, with centring marks (ISO 5457). */
    paper: `relative max-w-86rem mt-3 mx-auto mb-6 p-3 bg-paper lined-rule before:(centring top-0) after:(centring bottom-0)
      phone:(m-0 p-1 lined-none)`,
    centring: 'content-empty absolute left-1/2 w-[var(--wide)] h-[var(--s4)] bg-ink',
    frame: 'relative lined-wide',
    dialog: `w-[min(44rem,calc(100vw-2*var(--s2)))] max-h-[calc(100dvh-2*var(--s4))] p-0 lined-wide bg-paper text-ink
      backdrop:bg-[rgb(7_22_31/0.55)]`,
    /** A label above what it is for. */
    field: 'flex flex-col gap-2px min-w-0',
    main: 'bg-ink text-paper pointing:hover:not-disabled:(bg-pencil text-paper)',
    plain: 'px-2 border-transparent bg-transparent pointing:hover:not-disabled:bg-pencil-tint',
    /** A press that leads to another line, within a text. */
    go: `min-h-24px px-1 lined-none text-pencil text-left underline underline-offset-2px touch:min-h-target`,
    buttons: 'flex flex-wrap gap-2',
    /** Words and buttons beside each other, in as many rows as it takes. */
    along: 'flex flex-wrap items-center gap-2',
    /** A link as tall as the buttons beside it. */
    'tall-link': 'inline-flex items-center min-h-target',
    /** A link that stands among buttons. */
    button: 'tall-link px-3 lined text-inherit decoration-none',
    /** A strip across the sheet. */
    strip: 'flex flex-wrap items-center px-3',
    toolbar: `sticky top-0 z-3 strip gap-x-2 gap-y-1 py-2 bg-paper lined-b [&>button]:px-2
      phone:(gap-1 p-1 [&>button]:px-6px)`,
    /** A field of the title block; their lines lie on each other. */
    'title-box': 'px-2 pt-2px pb-1 lined-l lined-t -mt-1px -ml-1px min-w-0',
    'held-note': 'block pl-1 border-l-2 border-l-dashed border-l-moved text-moved text-small',
    /** What a line lays open below itself. */
    unfold: 'grid gap-4 pt-3 pr-4 pb-4 pl-[calc(3.25rem+var(--s2))] phone:(px-2 py-3)',
    parts: 'grid grid-cols-[repeat(auto-fit,minmax(min(15.5rem,100%),1fr))] gap-x-5 gap-y-4 items-start',
    fields: 'grid grid-cols-[repeat(auto-fill,minmax(9rem,1fr))] gap-2 phone:grid-cols-[1fr_1fr]',
    'dash-list': "[&>li]:(pl-3 [text-indent:calc(-1*var(--s3))]) [&>li]:before:content-['–_']",
    caution: 'px-3 py-2 lined-wide-doubt',
    /** Words and figures in a narrow table. */
    budget: `w-full joined text-small [&_th]:(text-left text-soft font-normal)
      [&_:is(td,th)]:(pt-2px pr-1 pb-2px pl-0 align-top lined-b-rule)
      [&_.figure]:(pl-2 text-right whitespace-nowrap) [&_th.figure]:whitespace-normal`,
    /** Over a part of a page of the cell book. */
    'book-head': 'mb-2 text-head lined-b',
    /** A table of texts and figures. */
    rows: `w-full joined [&_:is(td,th)]:(px-2 py-1 lined-b-rule text-left align-top font-normal)
      [&>thead_th]:caption`,
    /** The same where it is long: its heads stay in sight. */
    'long-rows': 'rows text-small [&_td]:wrap-anywhere [&>thead_th]:(sticky top-0 bg-paper)',
    'rows-box': 'max-h-26rem overflow-auto lined-rule',
    'share-part': 'grid gap-2 justify-items-start pt-2 lined-t-rule',
    /** One column, as wide as it is given and no wider. */
    stacked: 'grid grid-cols-[minmax(0,1fr)]',
    tickable: 'w-20px h-20px accent-pencil',
    /** A box to tick, with room for a finger. */
    tick: `inline-flex items-center justify-center min-w-target min-h-target
      [&>input]:(w-22px h-22px accent-pencil)`,
    heading: 'text-head lined-b-wide',
    /** Of a part of an unfolded line. */
    'part-head': 'text-plain lined-b mb-2',
    verdict: 'inline-flex gap-2 items-start',
    'line-note': 'block max-w-46rem text-soft text-small leading-[1.35]',
    /** Said for a moment, over the foot of the page. */
    notice: `fixed left-1/2 bottom-4 z-5 [transform:translateX(-50%)] along max-w-[min(40rem,calc(100vw-2*var(--s3)))]
      px-3 py-2 bg-ink text-paper`,
    'notice-button': 'bg-transparent text-inherit border-current hover:not-disabled:(bg-paper text-ink)',
    /** What is amiss with the sheet or the shop as a whole. */
    trouble: 'along px-3 py-2 lined-wide-misses bg-paper [&>p]:flex-[1_1_20rem]',
  },
});
