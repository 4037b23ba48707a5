/** An edit of a sheet that is only to be read. Whoever reads it has been told. */
export class ReadOnlySheet extends Error {
  constructor() {
    super('The sheet is only to be read.');
    this.name = 'ReadOnlySheet';
  }
}
