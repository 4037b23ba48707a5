/** How stored text names a cell: by its id in braces, so that no rename can bend a formula. */
export const idReference = (id: string): string => `{${id}}`;

/** Id within a reference's name, undefined when it is a name. */
export const idIn = (name: string): string | undefined => /^\{(.+)\}$/.exec(name)?.[1];
