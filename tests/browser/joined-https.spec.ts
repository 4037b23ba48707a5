import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NAME, shopServer } from '../shop-server.ts';
import { walk } from '../walk.ts';
import { expect, test } from './fixture.ts';
import { atServer, entryOf, joinAs, launchOptions, sharedIn, shareSheet } from './joined-steps.ts';
import { shortJob } from './share-steps.ts';
import { enter } from './sheet-steps.ts';

// A certificate that a shop made for itself is accepted once, by hand; whose it is, is not what is tried here.
test.use({
  launchOptions: { ...launchOptions, args: [...launchOptions.args, '--ignore-certificate-errors'] },
  serviceWorkers: 'allow',
});

test('with a certificate two devices share a sheet, and one that was closed opens it without the network', async ({
  browser,
  watch,
  expectComplaint,
}) => {
  test.skip(walk(0, 1) === 0, 'by npm run prove');
  expectComplaint(/ERR_INTERNET_DISCONNECTED/);
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-certificate-'));
  const [certificate, key] = [join(folder, 'shop.pem'), join(folder, 'shop.key')];
  const asked = ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'];
  const named = ['-days', '2', '-subj', `/CN=${NAME}`, '-addext', `subjectAltName=DNS:${NAME}`];
  execFileSync('openssl', [...asked, ...named, '-keyout', key, '-out', certificate], { stdio: 'ignore' });
  const server = await shopServer(['--certificate', certificate, '--certificate-key', key]);
  const baseURL = `https://${NAME}:${server.port}/`;
  const joins = async (viewport: { width: number; height: number }) => {
    const context = await browser.newContext({ baseURL, viewport });
    await watch(context);
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    return page;
  };
  try {
    const desk = await joins({ width: 1280, height: 800 });
    await joinAs(desk, { ...server, baseURL }, 'Desk');
    await expect(sharedIn(desk)).toBeVisible();
    await shareSheet(desk, shortJob());
    const phone = await joins({ width: 390, height: 844 });
    await phone.goto(`/#/join/${server.key}`);
    await phone.getByRole('button', { name: 'Join', exact: true }).click();
    await sharedIn(phone).getByRole('button').first().click();
    await enter(phone, 'bore', '2.2514 in');
    await expect(entryOf(desk, 'bore')).toContainText('2.2514');
    await expect
      .poll(() =>
        phone.evaluate(async () =>
          (await navigator.serviceWorker.getRegistrations()).map(({ active }) => active?.state),
        ),
      )
      .toEqual(['activated']);
    await phone.context().setOffline(true);
    await phone.reload();
    await enter(phone, 'bore', '2.2515 in');
    await phone.context().setOffline(false);
    await expect(entryOf(desk, 'bore')).toContainText('2.2515');
    await atServer(phone);
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
});
