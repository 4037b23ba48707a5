/** One scale of spacing, of type and of line weight (ISO 128: wide is twice narrow). */
export const sizes = {
  s1: '4px',
  s2: '8px',
  s3: '12px',
  s4: '16px',
  s5: '24px',
  s6: '40px',
  small: '0.75rem',
  plain: '0.875rem',
  figure: '1.0625rem',
  head: '1.25rem',
  title: '1.625rem',
  narrow: '1px',
  wide: '2px',
  /** The least height of what is pressed. */
  target: '32px',
} as const;

export const colours = [
  'paper',
  'desk',
  'ink',
  'soft',
  'rule',
  'tint',
  'pencil',
  'pencil-tint',
  'holds',
  'edge',
  'doubt',
  'misses',
  'moved',
] as const;

type Look = Readonly<Record<(typeof colours)[number], string>>;

const light: Look = {
  paper: '#fbfcfa',
  desk: '#e4e8e5',
  ink: '#17222b',
  soft: '#4d5b66',
  rule: '#a9b4b8',
  tint: '#eef2f0',
  pencil: '#1f5a99',
  'pencil-tint': '#e3edf6',
  holds: '#146a3c',
  edge: '#0b6472',
  doubt: '#8a5300',
  misses: '#ac1f1f',
  moved: '#6a3d9a',
};

const dark: Look = {
  paper: '#0d2536',
  desk: '#07161f',
  ink: '#e8f1f5',
  soft: '#a9bdc9',
  rule: '#4f6b7c',
  tint: '#143246',
  pencil: '#8cc4ff',
  'pencil-tint': '#173d5c',
  holds: '#7fe0a5',
  edge: '#7fd8e6',
  doubt: '#ffc76b',
  misses: '#ff9d94',
  moved: '#d3b3ff',
};

/** In the sun: the greatest contrast there is, and lines twice as heavy. */
const outdoors: Look & { readonly narrow: string; readonly wide: string } = {
  paper: '#fff',
  desk: '#fff',
  ink: '#000',
  soft: '#000',
  rule: '#000',
  tint: '#fff',
  pencil: '#00308f',
  'pencil-tint': '#ffef9e',
  holds: '#003d1c',
  edge: '#003a45',
  doubt: '#5c3300',
  misses: '#800000',
  moved: '#3d0066',
  narrow: '2px',
  wide: '4px',
};

export const looks = { light, dark, outdoors };
