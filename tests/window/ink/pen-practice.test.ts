/** Practice with help, tremor tasks with both hands, crosses on paper, a mouse that tries it: in the real window. */
import { inkOf, strokesUpAndDown } from '../../../build/demo/ink/pen-model.ts';
import { playPen } from '../../../build/demo/ink/play-pen.ts';
import type { InkDocument } from '../../../renderer/ink/index.ts';
import { expect, test } from '../app.ts';
import { finish, kept, openPenTab, openSheet, PX_PER_MM, sheetOf } from './pen-desk.ts';

const pen = { pxPerMm: PX_PER_MM, withPressure: true };
const rate = { rateHz: 125, noiseMm: 0, seed: 4 };
const strokes = (heightMm: number): InkDocument =>
  inkOf({ task: 'writing', from: { x: 20, y: 60 }, steps: strokesUpAndDown(12, () => heightMm, 0.25) }, rate);

test('help is shown, kept apart, counted with its interval; one line without it follows; fading is proposed', async ({
  demoApp,
}) => {
  const { page } = demoApp;
  await openPenTab(demoApp);
  await page.getByText(/^Practice with help/).click();
  await page.getByLabel('Height to fill').fill('8');
  await page.getByLabel(/^Pace.*second/).fill('1');
  await page.getByLabel('Marks where to start and stop').check();
  await page.getByLabel('Size of the last five strokes').check();
  await page.getByRole('button', { name: 'Write on the screen' }).click();
  await expect(sheetOf(demoApp).getByText('The size of your strokes shows here after each word.')).toBeVisible();
  await expect(sheetOf(demoApp).locator('.band.cued').first()).toBeVisible();
  await expect(sheetOf(demoApp).locator('.pace')).toHaveCount(1);
  for (let line = 0; line < 4; line += 1) {
    await playPen(page, strokes(8), { ...pen, by: { x: 0, y: line * 15 } });
    if (line < 3) await page.keyboard.press('Alt+ArrowDown');
  }
  await expect(sheetOf(demoApp).getByText(/^Last strokes: (8\.\d; |7\.\d; ){4}/)).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/practice-desk.png` });
  const { recording } = await finish(demoApp);
  expect(recording.cues).toMatchObject({ bandMm: 8, stopMarks: true, paceHz: 1, sizes: true });
  expect(recording.measured.lines).toHaveLength(4);
  await expect(
    page.getByText(/^With help: 4\d of 4\d strokes within 15\s%[^]* 4 of the last 4 lines hit\.$/),
  ).toBeVisible();
  await expect(
    page.getByText('Less help may be tried: without the size of the last strokes. You decide.'),
  ).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/practice-after.png` });
  await page.getByRole('button', { name: 'Try with less help' }).click();
  await expect(page.getByLabel('Size of the last five strokes')).not.toBeChecked();
  await page.getByRole('button', { name: 'Write it now' }).click();
  await expect(sheetOf(demoApp).locator('.band.cued')).toHaveCount(0);
  await playPen(page, strokes(6), pen);
  const plain = await finish(demoApp);
  expect(plain.recording.cues).toBeNull();
});

test('line, spiral and held pen go through both hands; a rhythm is told with its frequency', async ({ demoApp }) => {
  const { page } = demoApp;
  await openPenTab(demoApp);
  await page.getByText(/^A rhythm of the hand/).click();
  const tremor = (hz: number | null): InkDocument =>
    inkOf(
      {
        task: 'line',
        from: { x: 20, y: 70 },
        steps: [{ kind: 'stroke', dx: 100, dy: 1, seconds: 6, law: 'sine' }],
        ...(hz === null ? {} : { tremor: { hz, amplitudeMm: 0.6 } }),
      },
      rate,
    );
  await page.getByRole('button', { name: 'Begin: “A line between two dots”, right hand' }).click();
  await playPen(page, tremor(4.8), pen);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/tremor-desk.png` });
  const right = await finish(demoApp);
  expect(right.recording).toMatchObject({ task: 'line', hand: 'right' });
  expect(right.measures.tremor.frequencyHz!).toBeCloseTo(4.8, 1);
  expect(right.measures.tremor.amplitudeRmsMm!).toBeCloseTo(0.6 / Math.SQRT2, 1);
  await page.getByRole('button', { name: 'Next: “A line between two dots”, left hand' }).click();
  // A left hand has the panel at its left.
  await playPen(page, tremor(null), { ...pen, by: { x: 60, y: 0 } });
  const left = await finish(demoApp);
  expect(left.recording).toMatchObject({ task: 'line', hand: 'left' });
  expect(left.measures.tremor.reason).not.toBeNull();
  const row = page.getByRole('row', { name: /^A line between two dots/ });
  await expect(row.getByRole('cell').first()).toHaveText(/^A steady rhythm at 4\.8 Hz/);
  await expect(row.getByRole('cell').last()).toHaveText(/^No (steady )?rhythm/);
  await expect(page.getByRole('button', { name: 'Next: “A spiral”, right hand' })).toBeVisible();
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/tremor-after.png` });
});

test('paper on a tablet: crosses are tapped before and after; a paper that slipped is told', async ({ demoApp }) => {
  const { page } = demoApp;
  await openSheet(demoApp, 'tablet-paper');
  const cdp = await page.context().newCDPSession(page);
  const tap = async (x: number, y: number): Promise<void> => {
    const at = { x, y, pointerType: 'pen', button: 'left', clickCount: 1 } as const;
    await cdp.send('Input.dispatchMouseEvent', { type: 'mousePressed', ...at, buttons: 1 });
    await cdp.send('Input.dispatchMouseEvent', { type: 'mouseReleased', ...at, buttons: 0 });
  };
  await expect(page.getByText('Before writing: tap the left cross')).toBeVisible();
  await tap(100, 600);
  await expect(page.getByText('Before writing: tap the right cross')).toBeVisible();
  await tap(600, 600);
  await expect(page.getByText('Before writing')).toHaveCount(0);
  const sent = await playPen(page, strokes(6), pen);
  await page.getByRole('button', { name: /^Finish the sample/ }).click();
  await expect(page.getByText('After writing: tap the left cross')).toBeVisible();
  await tap(110, 600);
  await tap(610, 600);
  await expect(page.getByRole('article')).toHaveCount(1);
  const { recording, samples, measures } = await kept(demoApp);
  // Taps on the crosses are no ink; a pen that hovers on its way to them is told.
  expect(samples - sent, 'taps are no ink').toBeLessThan(20);
  expect(measures.source.contacts).toBe(1);
  expect(recording.drift).toEqual({ beforeMm: 100, afterMm: 100, movedMm: 2 });
  await expect(page.getByText('the paper slipped or the scale is off')).toBeVisible();
});

test('a second pen is counted and ignored; a changed zoom takes the millimeters away; a mouse may try it', async ({
  demoApp,
}) => {
  const { page } = demoApp;
  await openSheet(demoApp);
  await page.mouse.move(200, 300);
  await page.mouse.down();
  await page.mouse.up();
  await page.getByLabel('Write with a finger or mouse').check();
  await page.mouse.move(200, 300);
  await page.mouse.down();
  for (let i = 0; i < 30; i += 1) await page.mouse.move(200 + 4 * i, 300 + 20 * Math.sin(i));
  await page.mouse.up();
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setDeviceMetricsOverride', {
    width: 1280,
    height: 720,
    deviceScaleFactor: 2,
    mobile: false,
  });
  await expect(page.getByText('Zoom or display changed')).toBeVisible();
  const { recording, samples } = await finish(demoApp);
  expect(recording.scale).toBeNull();
  expect(samples).toBeGreaterThan(20);
  expect(samples).toBeLessThan(60);
});
