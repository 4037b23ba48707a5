import { MAX_TITLE } from '../../document/sharing/wire.ts';
import { listOver } from './list-over.ts';

/** Has the list of what is shared call a sheet as the sheet itself does by now. */
export const keepTitle = async (key: string, id: string, title: string): Promise<void> => {
  const list = await listOver(key);
  try {
    const { sheets, readOnly } = await list.answered();
    const listed = sheets.find((one) => one.id === id);
    const now = title.slice(0, MAX_TITLE);
    if (!listed || listed.ended || readOnly || listed.title === now) return;
    const { id: _id, ...shared } = listed;
    await list.put(id, { ...shared, title: now });
  } finally {
    list.close();
  }
};
