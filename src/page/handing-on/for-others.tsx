import { createSignal } from 'solid-js';
import { fileName } from '../../document/files.ts';
import { printSheet } from '../print/load.ts';
import { useSheet } from '../state/context.ts';
import { exportLines } from './export-lines.ts';
import { giveFile } from './give-file.ts';

/** The sheet for spreadsheets and for paper. */
export const ForOthers = () => {
  const { sheet } = useSheet();
  const [trouble, setTrouble] = createSignal('');
  const lines = () => {
    const { cells, units } = sheet.file();
    const results = cells.flatMap(({ id }) => {
      const result = sheet.line(id)?.result;
      return result ? [[id, result] as const] : [];
    });
    return exportLines(cells, new Map(results), units);
  };
  const named = (ending: string) =>
    fileName(sheet.document.title().title).replace(/\.fitwright\.json$/, `.${ending}`);
  const give = (ending: string, make: () => Promise<Blob>) =>
    void make()
      .then((content) => giveFile(content, named(ending)))
      .catch((error: unknown) => setTrouble(`It could not be written: ${String(error)}`));
  const table = async () => {
    const { csvOf } = await import('../../document/sharing/csv.ts');
    return new Blob([csvOf(lines())], { type: 'text/csv' });
  };
  const workbook = async () => {
    const { workbookOf } = await import('../../document/sharing/workbook.ts');
    return workbookOf(sheet.file(), lines());
  };
  return (
    <section class="share-part">
      <h3 class="text-figure">For other programs, and on paper</h3>
      <div class="buttons">
        <button type="button" onClick={() => give('csv', table)}>
          Table (CSV)
        </button>
        <button type="button" onClick={() => give('xlsx', workbook)}>
          Spreadsheet workbook
        </button>
        <button type="button" onClick={() => printSheet(sheet.engine)}>
          Print or PDF
        </button>
      </div>
      <p class="caption">
        In the workbook plain arithmetic stays live; what cells of the library give is a value. It holds the
        job as it stands, readings and names too.
      </p>
      <p role="alert" class="empty:hidden">
        {trouble()}
      </p>
    </section>
  );
};
