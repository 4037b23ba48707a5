/** Something the person who starts the server can mend: told in words, without where in the program it was found. */
export class Failure extends Error {}
