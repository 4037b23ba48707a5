/** Gives something to the browser to keep as a file. */
export const giveFile = (content: Blob, name: string): void => {
  const url = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has to have begun before the address goes.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};
