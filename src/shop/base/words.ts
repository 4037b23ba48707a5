/** What an exception says. */
export const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
