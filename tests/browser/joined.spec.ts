import type { Page } from '@playwright/test';
import { type ShopServer, shopServer } from '../shop-server.ts';
import { expect, test } from './fixture.ts';
import {
  addressOf,
  atServer,
  device,
  entryOf,
  joinAs,
  launchOptions,
  sharedIn,
  shareFirst,
  standing,
} from './joined-steps.ts';
import { dialog, shortJob, showTool } from './share-steps.ts';
import { enter, figuresAreIn, line, value } from './sheet-steps.ts';

test.use({ launchOptions });

let server: ShopServer;
test.beforeEach(async () => {
  server = await shopServer();
});
test.afterEach(async () => {
  expect(await server.stop(), 'the exit code of a server that was asked to stop').toBe(0);
});

/** A gauge of the shop, with its figures. */
const micrometer = {
  id: 'g1',
  role: 'cell',
  name: 'mic',
  label: 'No. 4',
  kind: 'gauge',
  inputs: { gauge: 'micrometer-1-2-in', certificate: '0.00004 in' },
} as const;

const ownOf = (page: Page) => page.locator('section', { hasText: 'This shop’s own equipment' }).last();

test('desk, bench and phone work on one sheet over plain HTTP, apart for a while, and lose nothing', async ({
  browser,
  watch,
  expectComplaint,
}) => {
  // While the line is cut, tries to reach the server may fail, and the browser says so.
  expectComplaint(/WebSocket connection to|ERR_CONNECTION_REFUSED/);
  const desk = await device(server, browser, watch);
  await shareFirst(desk, server, shortJob([micrometer]));
  await expect(desk.locator('.saved-here')).toHaveText('saved here');

  const phone = await device(server, browser, watch, true);
  await joinAs(phone, server, 'Phone');
  await expect(sharedIn(phone)).toContainText('Countershaft bush');
  await expect(sharedIn(phone)).toContainText('shared by Desk');
  await phone.getByRole('button', { name: 'I have read it' }).click();
  await sharedIn(phone).getByRole('button', { name: 'Open it here too' }).click();
  await figuresAreIn(phone);
  await atServer(phone);

  // Each sees who else is there, and what is being typed.
  await expect(desk.locator('.joined')).toContainText('Phone');
  await entryOf(phone, 'bore').click();
  await expect(line(desk, 'bore')).toContainText('Phone is typing here');
  await phone.keyboard.press('Escape');
  await expect(line(desk, 'bore')).not.toContainText('is typing here');

  // The pad at the machine fills the reading that the desk is watching.
  await enter(desk, 'bore', '2.2513; 2.2514 in ± 0.0002 in');
  await phone.getByRole('link', { name: 'At the machine' }).click();
  await phone.getByLabel('Dimension', { exact: true }).selectOption({ index: 0 });
  await phone.getByRole('button', { name: 'One more here' }).click();
  await phone.getByRole('textbox', { name: /^Reading of/ }).fill('2.2516');
  await phone.getByRole('button', { name: 'Take it' }).click();
  await expect(entryOf(desk, 'bore')).toContainText('2.2513; 2.2514; 2.2516 in');
  await phone.getByRole('link', { name: 'Back to the sheet' }).click();

  // The history says from which device it came.
  await showTool(desk, 'History');
  const history = dialog(desk, 'History of this sheet');
  await expect(history.getByRole('region', { name: 'Entered on other devices' })).toContainText('Phone');
  await desk.keyboard.press('Escape');

  // Apart: both add to the list, and both write one field.
  await server.kill();
  for (const page of [desk, phone])
    await expect(page.locator('.at-server')).toContainText('not at the shop’s server');
  await enter(desk, 'bore', '2.2513; 2.2514; 2.2516; 2.2521 in ± 0.0002 in');
  await enter(phone, 'bore', '2.2513; 2.2514; 2.2516; 2.2522 in ± 0.0002 in');
  await enter(desk, 'grip', '=2 * (od - bore)');
  await enter(phone, 'grip', '=3 * (od - bore)');
  await server.start();
  for (const page of [desk, phone]) {
    await atServer(page);
    await expect(entryOf(page, 'bore')).toContainText('2.2521');
    await expect(entryOf(page, 'bore')).toContainText('2.2522');
  }
  const told = (page: Page) => page.getByRole('alert').filter({ hasText: 'does not stand' });
  await expect
    .poll(async () => (await told(desk).count()) + (await told(phone).count()))
    .toBeGreaterThanOrEqual(1);
  // Told on either device, whoever's it was, and entered again with one press.
  const teller = (await told(desk).count()) > 0 ? desk : phone;
  const [, lost] = /entered “(=. \* \(od - bore\))”/.exec((await told(teller).textContent()) ?? '') ?? [];
  await told(teller)
    .getByRole('button', { name: /^Enter (mine|theirs)$/ })
    .click();
  for (const page of [desk, phone]) await expect(entryOf(page, 'grip')).toContainText(lost!);

  // The desk shares a gauge; the phone keeps it by a press, as a copy, and hears when the shop shares it no longer. The list
  // calls the sheet as it is called by now.
  await desk.getByLabel('Title', { exact: true }).fill('Countershaft bush, drive end');
  await desk.getByLabel('Title', { exact: true }).press('Enter');
  await line(desk, 'mic').locator('.label').click();
  await desk.getByRole('button', { name: 'Keep for the next job' }).click();
  await desk.getByRole('button', { name: 'Share with the shop' }).click();
  await expect(desk.locator('.parts')).toContainText('at the shop’s server, shared by Desk');
  await phone.goto('/#/');
  await expect(sharedIn(phone)).toContainText('Countershaft bush, drive end');
  await expect(sharedIn(phone)).toContainText('0.00004 in');
  await sharedIn(phone).getByRole('button', { name: 'Keep it here' }).click();
  await expect(ownOf(phone)).toContainText('(from Desk)');
  await expect(ownOf(phone)).toContainText('at the shop’s server, shared by Desk');
  await desk.getByRole('button', { name: 'Share it no longer' }).click();
  await expect(ownOf(phone)).toContainText('shared in the shop no longer; it is kept here');

  // A wrong key and an ended one are refused, and show nothing.
  const stranger = await device(server, browser, watch);
  await joinAs(stranger, server, 'Stranger', 'W'.repeat(22));
  await expect(stranger.getByRole('alert')).toContainText('does not know this key');
  await stranger.goto('/#/');
  await expect(stranger.getByRole('heading', { name: 'What is worn?' })).toBeVisible();
  await expect(sharedIn(stranger)).toHaveCount(0);
  await expect(stranger.getByText('Countershaft bush')).toHaveCount(0);
  for (const page of [desk, phone, stranger]) await page.context().close();
});

test('a key that only reads changes nothing, and says so', async ({ browser, watch }) => {
  const desk = await device(server, browser, watch);
  await shareFirst(desk, server, shortJob());
  // The desk makes a link to this sheet alone, to be read.
  await showTool(desk, 'Share');
  const share = dialog(desk, 'Share this sheet');
  await share.getByRole('button', { name: 'Give this sheet alone to somebody' }).click();
  await share.getByLabel('Who gets this sheet').fill('The shop on the line');
  await share.getByLabel('To be read only').check();
  await share.getByRole('button', { name: 'Make a link' }).click();
  const link = (await share.locator('.new-key code').textContent())!;
  expect(link).toContain(addressOf(server));
  await expect(
    share.getByRole('img', { name: 'QR code of the link for The shop on the line' }),
  ).toBeVisible();
  await desk.keyboard.press('Escape');
  const guest = await device(server, browser, watch);
  await guest.goto(link);
  await guest.getByRole('button', { name: 'Join', exact: true }).click();
  await figuresAreIn(guest);
  await expect(guest.locator('.joined')).toContainText('to be read');
  await entryOf(guest, 'bore').click();
  await guest.keyboard.press('ControlOrMeta+a');
  await guest.keyboard.insertText('3 in');
  await guest.keyboard.press('Enter');
  await expect(guest.getByText('nothing is changed here')).toBeVisible();
  await expect(entryOf(guest, 'bore')).toContainText('2.2513');
  await enter(desk, 'bore', '2.2600 in ± 0.0002 in');
  await expect(entryOf(guest, 'bore')).toContainText('2.2600');

  // Ended, the link shuts the guest out, who keeps what is there.
  await showTool(desk, 'Share');
  const give = share.getByRole('button', { name: 'Give this sheet alone to somebody' });
  if ((await give.getAttribute('aria-expanded')) !== 'true') await give.click();
  await share.getByRole('button', { name: 'End it' }).click();
  await expect(share).toContainText('The link for The shop on the line has ended');
  await expect(guest.getByRole('alert').filter({ hasText: 'This key has been ended' })).toBeVisible();
  await expect(entryOf(guest, 'bore')).toContainText('2.2600');
  await desk.keyboard.press('Escape');

  // What the server refuses is named, is kept here, and goes there once it is mended.
  const note = desk.getByLabel('Note', { exact: true });
  await note.fill('x'.repeat(200_001));
  await note.blur();
  const refused = desk.getByRole('alert').filter({ hasText: 'The server refused what stands in' });
  await expect(refused).toContainText('“title block, note”');
  await note.fill('Ream by hand.');
  await note.blur();
  await refused.getByRole('button', { name: 'Send it again' }).click();
  await expect(refused).toHaveCount(0);
  await atServer(desk);
  for (const page of [desk, guest]) await page.context().close();
});

test('a key that ends while its device is away, and a sharing that ends, are told, and nothing is lost', async ({
  browser,
  watch,
  expectComplaint,
}) => {
  expectComplaint(/WebSocket connection to|ERR_CONNECTION_REFUSED/);
  const desk = await device(server, browser, watch);
  await shareFirst(desk, server, shortJob());
  const phone = await device(server, browser, watch, true);
  const lost = await server.make({ label: 'A phone', readOnly: false });
  await joinAs(phone, server, 'Phone', lost.key);
  await phone.getByRole('button', { name: 'I have read it' }).click();
  await sharedIn(phone).getByRole('button', { name: 'Open it here too' }).click();
  await figuresAreIn(phone);
  await atServer(phone);
  const address = phone.url();
  await server.kill();
  await expect(standing(phone)).toContainText('it is not reached');
  await enter(phone, 'bore', '2.2610 in ± 0.0002 in');
  await expect(phone.locator('.saved-here')).toHaveText('saved here');
  await phone.goto('about:blank');
  await server.start();
  await server.end(lost.id);
  await phone.goto(address);
  await figuresAreIn(phone);
  await expect(phone.getByRole('alert').filter({ hasText: 'This key has been ended' })).toBeVisible();
  await expect(entryOf(phone, 'bore')).toContainText('2.2610');
  await atServer(desk);
  await expect(entryOf(desk, 'bore')).toContainText('2.2513');

  // By another link what was entered meanwhile goes along, as of the device that entered it.
  const next = await server.make({ label: 'A phone again', readOnly: false });
  await joinAs(phone, server, 'Phone', next.key);
  await sharedIn(phone).getByRole('button', { name: 'Open it' }).click();
  await atServer(phone);
  await expect(entryOf(desk, 'bore')).toContainText('2.2610');
  await showTool(desk, 'History');
  await expect(desk.getByRole('region', { name: 'Entered on other devices' })).toContainText('Phone');
  await desk.keyboard.press('Escape');

  // At the machine too it is said where the sheet stands, and to the others that something is keyed in.
  await phone.getByRole('link', { name: 'At the machine' }).click();
  await atServer(phone);
  await phone.getByRole('button', { name: 'One more here' }).click();
  await phone.getByRole('textbox', { name: /^Reading of/ }).fill('2.271');
  await expect(line(desk, 'od')).toContainText('Phone is typing here');

  // Ended at the desk, the sharing is over for everybody, and each keeps what it has.
  await showTool(desk, 'Share');
  await desk.getByRole('button', { name: 'Share it no longer' }).click();
  await expect(dialog(desk, 'Share this sheet')).toContainText('Shared no longer');
  await expect(phone.getByRole('alert').filter({ hasText: 'shared no longer' })).toBeVisible();
  await phone.getByRole('link', { name: 'Back to the sheet' }).click();
  await expect(entryOf(phone, 'bore')).toContainText('2.2610');
  // A key that only reads shares nothing, and says so.
  const reader = await server.make({ label: 'A reader', readOnly: true });
  await joinAs(phone, server, 'Phone', reader.key);
  await expect(sharedIn(phone)).toBeVisible();
  await phone.goto(address);
  await figuresAreIn(phone);
  await phone.getByRole('button', { name: 'Share', exact: true }).click();
  await phone.getByRole('button', { name: 'Share with the shop' }).click();
  await expect(dialog(phone, 'Share this sheet')).toContainText('a key that only reads');
  for (const page of [desk, phone]) await page.context().close();
});

test('a guest has the sheet in its own lengths; deleted at the desk while the guest goes on, it is asked about', async ({
  browser,
  watch,
}) => {
  const desk = await device(server, browser, watch);
  await shareFirst(desk, server, shortJob());
  await showTool(desk, 'Share');
  const share = dialog(desk, 'Share this sheet');
  await share.getByRole('button', { name: 'Give this sheet alone to somebody' }).click();
  await share.getByLabel('Who gets this sheet').fill('The shop on the line');
  await share.getByRole('button', { name: 'Make a link' }).click();
  const link = (await share.locator('.new-key code').textContent())!;
  await desk.keyboard.press('Escape');

  const guest = await device(server, browser, watch);
  // Its clock is an hour ahead: nothing hangs on it.
  await guest.addInitScript(() => {
    const now = Date.now;
    Date.now = () => now() + 3_600_000;
  });
  await guest.goto(link);
  await guest.getByLabel('What the others see this device called').fill('Lower mill');
  await guest.getByRole('button', { name: 'Join', exact: true }).click();
  await figuresAreIn(guest);
  await expect(value(guest, 'od')).toContainText('2.2543 in');
  await guest.getByRole('button', { name: 'mm', exact: true }).first().click();
  // 2.2543 in are 57.259 mm: the same size, here alone in millimetres.
  await expect(value(guest, 'od')).toContainText('57.259');
  await expect(value(desk, 'od')).toContainText('2.2543 in');
  // A number without a unit is one of the guest's, and says so to everybody.
  await enter(guest, 'bore', '57.20 ± 0.01');
  await expect(entryOf(desk, 'bore')).toContainText('57.20 mm');
  // 57.20 mm and 0.0030 in are 2.2550 in.
  await expect(value(desk, 'od')).toContainText('2.2550');
  await atServer(guest);
  await guest.reload();
  await figuresAreIn(guest);
  await expect(value(guest, 'od')).toContainText('57.27');

  // The desk deletes it; the guest goes on.
  await desk.goto('/#/');
  const job = desk.locator('.job', { hasText: 'Countershaft bush' });
  await job.getByRole('button', { name: 'Delete', exact: true }).click();
  await expect(job).toHaveCount(0);
  await enter(guest, 'bore', '57.30 ± 0.01');
  const asked = desk.getByRole('alert').filter({ hasText: 'was deleted on this device' });
  await expect(asked).toContainText('Lower mill has gone on with it');
  await atServer(guest);
  await asked.getByRole('button', { name: 'Keep it here too' }).click();
  await job.getByRole('link').click();
  await figuresAreIn(desk);
  await expect(entryOf(desk, 'bore')).toContainText('57.30 mm');
  for (const page of [desk, guest]) await page.context().close();
});
