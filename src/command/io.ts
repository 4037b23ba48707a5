/** The command's ways to the world, so that tests can take their place. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** Text of a file. Throws an error whose `code` is the system's (`ENOENT` ...). */
  read(path: string): Promise<string>;
}
