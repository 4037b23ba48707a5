/** What can be preferred, and the words it is offered in. The first of each is the default. */
export const CHOICES = {
  length: [
    ['sheet', 'as each sheet has it'],
    ['in', 'inches'],
    ['mm', 'millimetres'],
  ],
  decimal: [
    ['.', 'point: 2.2515'],
    [',', 'comma: 2,2515'],
  ],
  bush: [
    ['as written', 'as written'],
    ['bush', 'bush'],
    ['bushing', 'bushing'],
  ],
  play: [
    ['as written', 'as written'],
    ['end float', 'end float'],
    ['end play', 'end play'],
  ],
  look: [
    ['system', 'as this device has it'],
    ['light', 'light'],
    ['dark', 'dark'],
    ['outdoors', 'outdoors: black on white, heavy lines'],
  ],
  text: [
    ['usual', 'usual'],
    ['large', 'large'],
    ['larger', 'larger'],
  ],
} as const;

export type PreferenceName = keyof typeof CHOICES;
export type Preferences = { [K in PreferenceName]: (typeof CHOICES)[K][number][0] };

export const NAMES = Object.keys(CHOICES) as PreferenceName[];

/** What each choice is about, said above it. */
export const ABOUT: Record<PreferenceName, string> = {
  length: 'Lengths in sheets from elsewhere',
  decimal: 'Decimal mark',
  bush: 'Bush or bushing',
  play: 'End float or end play',
  look: 'Paper',
  text: 'Text',
};

/** What was chosen, out of what was kept; what is not offered, or no longer, was not. */
export const chosenOf = (kept: unknown): Partial<Preferences> => {
  const found = (typeof kept === 'object' && kept !== null ? kept : {}) as Record<string, unknown>;
  const chosen = NAMES.flatMap((name) => {
    const offered = CHOICES[name].map(([value]) => value) as readonly string[];
    const value = found[name];
    return typeof value === 'string' && offered.includes(value) ? [[name, value]] : [];
  });
  return Object.fromEntries(chosen) as Partial<Preferences>;
};

const FIRST = Object.fromEntries(NAMES.map((name) => [name, CHOICES[name][0][0]])) as Preferences;

/** What holds, given what was chosen. */
export const preferencesOf = (kept: unknown): Preferences => ({ ...FIRST, ...chosenOf(kept) });
