import type { Ended } from '../../document/joined/shop-line.ts';

const WORDS: Record<Ended, string> = {
  'key-unknown':
    'The server does not know this key. What is on this device stays here. Ask for a new link where the server runs: what was entered meanwhile goes along with it.',
  'key-ended':
    'This key has been ended. What is on this device stays here. Ask for a new link where the server runs: what was entered meanwhile goes along with it.',
  'key-other-sheet': 'This key opens another sheet, not this one.',
  'sharing-ended':
    'This sheet is shared no longer: another device has ended it. What is on this device stays here, and what was entered here since is here alone.',
  'key-reads-only': 'This key only reads: what was entered here is kept on this device and was not sent.',
  'update-refused':
    'The server refused an entry of this device, as none that a sheet holds, and takes nothing more of the sheet from here. All of it is kept on this device: save the sheet to a file, and undo what was entered last before it is sent again.',
  'sheet-full': 'The sheet has reached the size the server takes. What is entered is kept here alone.',
  'sheet-unreadable':
    'The server cannot read what it has stored of this sheet, and takes nothing more of it. What is on this device is kept here; have the server’s store brought back from a backup.',
  'too-many': 'As many devices are on the server, or on this sheet, as it allows.',
  'page-old': 'This page is older than the server: load it again. What is entered is kept here.',
  'server-old': 'The server is older than this page: bring it up to date. What is entered is kept here.',
  unsound:
    'What came from the server is no sheet. Nothing of it is shown, and nothing more is taken from there.',
  closed: 'The server has closed the line and takes nothing more from this device: load the page again.',
};

/** Why the server and this device are apart for good, in words. */
export const endedWords = (why: Ended): string => WORDS[why];

/** Which field the server would not have, and what to do; undefined where it did not say. */
export const refusedWords = (field: string | undefined): string | undefined =>
  field === undefined
    ? undefined
    : `The server refused what stands in “${field}”: a sheet there holds no such thing, or none so long. It is kept on this device, and so is all that was entered since, which has not gone there. Change or clear it, and send it again.`;
