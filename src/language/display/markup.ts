const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text made safe to stand in markup, in an attribute too. */
export const escapeMarkup = (text: string): string => text.replace(/[&<>"']/g, (c) => ENTITIES[c] as string);
