/** Puts a text on the clipboard. @returns whether the browser let it be done. */
export const copyText = async (text: string): Promise<boolean> => {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Refused, or not there at all on a page without https.
    return false;
  }
};
