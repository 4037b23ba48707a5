let told: string | undefined;

/** Something to say on the sheet that opens next: what a file lacked when it was read. */
export const tellOnArrival = (text: string): void => {
  told = text;
};

export const takeArrival = (): string | undefined => {
  const text = told;
  told = undefined;
  return text;
};
