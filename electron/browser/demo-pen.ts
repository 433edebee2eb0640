/**
 * The part of the demo visit with a pen: what the invented pen of the last visit told, the true size set by keys, a
 * line of practice with help written by events of a pen, what it told.
 */
import type { Page } from 'playwright-core';
import type { DemoSteps } from './demo-steps.ts';
import { fitCard, openTab } from './walk.ts';

/** A card at five pixels a millimeter. */
const CARD_PX = { across: '428', down: '270' };

/** Loops of the height to fill, 40 px, for five seconds at about 100 events a second. */
async function writeLoops(page: Page, left: number, top: number): Promise<void> {
  const cdp = await page.context().newCDPSession(page);
  const start = Date.now() / 1000;
  const [seconds, rate] = [5, 100];
  for (let i = 0; i <= seconds * rate; i += 1) {
    const at = i / rate;
    const wait = (start + at) * 1000 - Date.now();
    if (wait > 4) await page.waitForTimeout(wait);
    await cdp.send('Input.dispatchMouseEvent', {
      type: i === 0 ? 'mousePressed' : i === seconds * rate ? 'mouseReleased' : 'mouseMoved',
      x: left + 60 * at,
      y: top - 20 + 20 * Math.cos(2 * Math.PI * 2 * at),
      timestamp: start + at,
      pointerType: 'pen',
      button: 'left',
      buttons: i === seconds * rate ? 0 : 1,
      force: 0.4 + 0.1 * Math.sin(at),
      tiltX: 30,
      tiltY: -12,
      clickCount: 1,
    });
  }
  await cdp.detach();
}

export async function penVisit(visit: DemoSteps): Promise<void> {
  const { page } = visit;
  await visit.step('What the pen told at an earlier visit, and its replay', async () => {
    await openTab(page, 'Sample');
    const picker = page.locator('#sample-picker');
    const option = picker.locator('option', { hasText: 'One letter' }).first();
    await picker.selectOption((await option.getAttribute('value')) ?? '');
    await page.getByRole('tab', { name: 'Pen' }).click();
    const replay = page.getByRole('button', { name: 'Replay' }).first();
    await replay.scrollIntoViewIfNeeded();
    await replay.click();
    await page.waitForTimeout(2500);
    await visit.picture('pen-replay');
  });
  await visit.step('The true size of the screen, by a card', async () => {
    await page.getByRole('button', { name: /^Set the (true size|size again)$/ }).click();
    await fitCard(page, CARD_PX);
    await page.getByText(/^True size, set/).waitFor();
  });
  await visit.step('A line of practice with help, written with a pen', async () => {
    await page.getByText(/^Practice with help/).click();
    await page.getByLabel('Height to fill').fill('8');
    await page.getByLabel('Size of the last five strokes').check();
    await page.getByRole('button', { name: 'Write on the screen' }).click();
    const sheet = page.getByRole('region', { name: 'Sheet to write on' });
    const line = await sheet.locator('.band.cued').first().boundingBox();
    if (!line) throw new Error('the height to fill is not shown');
    await writeLoops(page, line.x + 20, line.y + line.height);
    await page.waitForTimeout(600);
    await visit.picture('pen-practice');
    await page.getByRole('button', { name: /^Finish the sample/ }).click();
    await sheet.waitFor({ state: 'detached' });
    await page.getByText(/^With help: \d+ of \d+ strokes/).waitFor();
    await visit.picture('pen-practice-told');
  });
}
