import { useLibrary } from '../state/library.ts';

/** Which inputs of a kind of cell are read off the part. */
export const useReadInputs = (): ((kind: string, input: string) => boolean) => {
  const library = useLibrary();
  return (kind, input) =>
    library()
      ?.kinds.get(kind)
      ?.inputs.some(({ name, role }) => name === input && role === 'measured') === true;
};
