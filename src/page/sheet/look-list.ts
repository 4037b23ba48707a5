import { ABOUT, CHOICES, NAMES, type PreferenceName } from '../kit/choices.ts';
import { prefer, preferences } from '../kit/preferences.ts';
import type { Command } from '../state/command.ts';
import type { Tools } from '../state/tools.ts';

/** Every preference as a command of its own, and the page of all of them. */
export const lookCommands = (tools: Tools): Command[] => [
  {
    id: 'look.preferences',
    label: 'Preferences',
    group: 'Look',
    also: 'settings decimal comma dark bushing text size',
    run: () => tools.show('preferences'),
  },
  ...NAMES.flatMap((name: PreferenceName) =>
    (CHOICES[name] as ReadonlyArray<readonly [string, string]>).map(
      ([value, label]): Command => ({
        id: `look.${name}.${value}`,
        label: `${ABOUT[name]}: ${label}`,
        group: 'Look',
        can: () => preferences()[name] !== value,
        run: () => prefer(name, value as never),
      }),
    ),
  ),
];
