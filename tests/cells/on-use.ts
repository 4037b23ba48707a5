import { folders, library as whole } from '../../cells/catalogue.ts';
import { fileName } from '../../cells/catalogue-of.ts';
import { GrowingLibrary } from '../../cells/growing-library.ts';

/** The library as a page has it, with what is asked for, and a way to have a file not come. */
export const onUse = () => {
  /** `kinds/gauge`, `choices/gauges`, in the order asked for. */
  const asked: string[] = [];
  const away = new Set<string>();
  const fetched = <T>(folder: string, files: Readonly<Record<string, T>>) =>
    Object.fromEntries(
      Object.entries(files).map(([path, value]) => [
        path,
        async () => {
          const file = `${folder}/${fileName(path)}`;
          asked.push(file);
          await new Promise((come) => setImmediate(come));
          if (away.has(file)) throw new TypeError(`Failed to fetch ${file}`);
          return value;
        },
      ]),
    );
  const library = new GrowingLibrary({
    kinds: fetched('kinds', folders.kinds),
    choices: fetched('choices', folders.choices),
    functions: whole.functions,
  });
  return { library, asked, away };
};
