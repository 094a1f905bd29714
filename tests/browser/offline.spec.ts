import { expect, type Page, test } from '@playwright/test';
import { enterDemo, fresh, makeRig } from './support/doors.ts';
import { watchConsole } from './support/watch-console.ts';

test('without a network a rig opens again, takes a list in, says where it stands, and hands it over afterwards', async ({
  page,
  context,
}) => {
  const complaints = watchConsole(page);
  await enterDemo(page, 'designer');
  const name = fresh('Offline');
  const path = await makeRig(page, name);
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));

  // What others did is written to the device twice a second.
  await expect.poll(() => rowsOnDevice(page, path)).toBeGreaterThan(0);

  await context.setOffline(true);
  await page.goto(`${path}/lists-in`);
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
  await page
    .getByLabel('Or paste the list')
    .fill('Channel\tPosition\tUnit\tType\tAddress\n7\tBridge\t1\tTern spot\t2:101\n');
  await page.getByRole('button', { name: 'Read what I pasted' }).click();
  await page.getByRole('button', { name: 'Bring in 1 fixture' }).click();
  await expect(page.getByText('on this device only')).toBeVisible();
  await page.reload();
  await expect(page.getByText('on this device only')).toBeVisible();
  await expect(page.getByText('2:101')).toBeVisible();
  await page.goto('/');
  await expect(page.getByText('No network.')).toBeVisible();
  await page.goto('/crews/demo-touring');
  await expect(page.getByText('This page needs the network.')).toBeVisible();

  await context.setOffline(false);
  await page.goto(path);
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const sheet = await page.request.get(`/api${path}/sheets/patch.csv`);
  expect(await sheet.text()).toContain('Tern spot');
  expect(complaints).toEqual([]);
});

/** How many updates of the rig the demo designer's copy on this device holds. */
function rowsOnDevice(page: Page, path: string): Promise<number> {
  return page.evaluate(
    async (rig) => {
      const settle = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      const copies = await settle(indexedDB.open('rigledger:demo-designer'));
      const count = await settle(copies.transaction('known').objectStore('known').index('rig').count(rig));
      copies.close();
      return count;
    },
    path.replace('/rigs/', ''),
  );
}
