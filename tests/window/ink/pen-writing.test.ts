/** Writing with a pen in the real window: events of known motion by CDP, with and without pressure, at three rates. */
import { inkOf, strokesUpAndDown } from '../../../build/demo/ink/pen-model.ts';
import type { InkDocument } from '../../../renderer/ink/index.ts';
import { playPen } from '../../../build/demo/ink/play-pen.ts';
import { expect, launchApp, openClient, test } from '../app.ts';
import { finish, kept, openSheet, PX_PER_MM, valueOf } from './pen-desk.ts';

const lift = { kind: 'lift' as const, dx: 4, dy: 0, seconds: 0.4 };
const bout = (rateHz: number): InkDocument =>
  inkOf(
    {
      task: 'writing',
      from: { x: 20, y: 80 },
      steps: [...strokesUpAndDown(8, () => 8, 0.3), lift, ...strokesUpAndDown(8, () => 8, 0.3)],
      pressure: (s) => 0.35 + 0.2 * Math.sin(2 * s) ** 2,
    },
    { rateHz, noiseMm: 0, seed: 4 },
  );

for (const [rate, withPressure] of [
  [60, false],
  [125, true],
  [240, true],
] as const) {
  test(`${rate} Hz ${withPressure ? 'with' : 'without'} pressure: every event kept, known motion found`, async ({
    demoApp,
  }) => {
    await openSheet(demoApp);
    const sent = await playPen(demoApp.page, bout(rate), { pxPerMm: PX_PER_MM, withPressure });
    await demoApp.page.waitForTimeout(600);
    if (process.env['SHOTS']) await demoApp.page.screenshot({ path: `${process.env['SHOTS']}/desk-${rate}.png` });
    // Own work on an event or frame; a frame has 16 ms. The limit leaves room for a busy machine.
    const busiest = Number(
      await demoApp.page.getByRole('region', { name: 'Sheet to write on' }).getAttribute('data-busiest-ms'),
    );
    test.info().annotations.push({ type: 'longest work, ms', description: String(busiest) });
    console.log(`${rate} Hz: longest work on one event or frame ${busiest} ms`);
    expect(busiest).toBeLessThan(100);
    const { samples, measures } = await finish(demoApp);
    if (process.env['SHOTS'])
      await demoApp.page.screenshot({ path: `${process.env['SHOTS']}/bout-${rate}.png`, fullPage: true });
    expect(samples).toBe(sent);
    expect(Math.abs(measures.quality.rateHz! / rate - 1)).toBeLessThan(0.03);
    expect(valueOf(measures, 'lifts')).toBe(1);
    expect(valueOf(measures, 'strokes')).toBe(16);
    expect(Math.abs(valueOf(measures, 'stroke-height')! / 8 - 1)).toBeLessThan(0.03);
    expect(Math.abs(valueOf(measures, 'stroke-duration')! / 0.3 - 1)).toBeLessThan(0.05);
    expect(measures.quality.pressure).toBe(withPressure);
  });
}

test('a window that dies in the middle of a line costs at most a second of ink', async ({ demoApp }) => {
  await openSheet(demoApp);
  const sent = await playPen(demoApp.page, bout(125), { pxPerMm: PX_PER_MM, withPressure: true });
  const cdp = await demoApp.page.context().newCDPSession(demoApp.page);
  const crashed = demoApp.page.waitForEvent('crash');
  cdp.send('Page.crash').catch(() => {});
  await crashed;
  await demoApp.leave();
  const again = await launchApp({ demo: true, dataFolder: demoApp.dataFolder });
  try {
    await openClient(again.page, 'Margit Oszlan');
    await again.page.keyboard.press('Alt+2');
    await again.page.getByRole('tab', { name: 'Pen' }).click();
    await expect(again.page.getByText('was not finished')).toBeVisible();
    await again.page.getByRole('button', { name: 'Keep what there is' }).click();
    await expect(again.page.getByRole('article').first()).toBeVisible();
    const { samples } = await kept(again);
    expect(samples).toBeGreaterThanOrEqual(sent - 125);
  } finally {
    await again.close();
  }
});

test('a palm beside the pen is counted, not written; the true size is set by keys', async ({ demoApp }) => {
  const { page, ask } = demoApp;
  await openSheet(demoApp);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: 300, y: 500 }] });
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  const sent = await playPen(page, bout(125), { pxPerMm: PX_PER_MM, withPressure: true });
  const { recording, samples } = await finish(demoApp);
  expect(samples).toBe(sent);
  expect(recording.palmTouches).toBe(1);

  await page.getByRole('button', { name: 'Set the size again' }).click();
  const box = page.getByRole('application', { name: /^Box to fit/ });
  /** Arrow keys to a size in px, from whatever it shows. */
  const fit = async (width: number, height: number): Promise<void> => {
    for (const [label, want, more, less] of [
      ['Across, px', width, 'ArrowRight', 'ArrowLeft'],
      ['Down, px', height, 'ArrowDown', 'ArrowUp'],
    ] as const) {
      const now = Number(await page.getByLabel(label).inputValue());
      await box.focus();
      const [step, key] = [want - now, want > now ? more : less];
      for (let i = 0; i < Math.floor(Math.abs(step) / 10); i += 1) await page.keyboard.press(`Shift+${key}`);
      for (let i = 0; i < Math.abs(step) % 10; i += 1) await page.keyboard.press(key);
    }
  };
  // 5 px a millimeter: a card of 85.60 x 53.98 mm (ISO/IEC 7810, ID-1).
  await fit(428, 270);
  await page.getByRole('button', { name: 'It fits' }).click();
  await fit(429, 270);
  await page.getByRole('button', { name: 'It fits again' }).click();
  await expect(box).toHaveCount(0);
  const { device } = (await ask('ink.device')) as { device: { scale: { pxPerMmX: number; pxPerMmY: number } } };
  expect(device.scale.pxPerMmX).toBeCloseTo(428.5 / 85.6, 6);
  expect(device.scale.pxPerMmY).toBeCloseTo(270 / 53.98, 6);
});
