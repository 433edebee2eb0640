/** A client with five visits of invented facts, for the tests of read-back, goals and progress. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { createCanvas, GlobalFonts } from '@napi-rs/canvas';
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { expect, openClient, PASSPHRASE, type LaunchedApp } from '../app.ts';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';

/** The same name gives the same id, so that facts can point at each other. */
export function idOf(name: string): string {
  const hex = createHash('sha256').update(name).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

export async function call(app: LaunchedApp, name: string, input: unknown): Promise<unknown> {
  const answer = JSON.parse(await app.call(JSON.stringify({ name, input }))) as {
    ok: boolean;
    value: unknown;
  };
  expect(answer, name).toMatchObject({ ok: true });
  return answer.value;
}

export const TEXT = 'Please call me back before half past eight\nThe plumber is coming at two on Thursday';

/** Five visits, a week apart, the last one a week ago. */
export const DAYS = [5, 4, 3, 2, 1].map((weeks) =>
  new Date(Date.now() - weeks * 7 * 86_400_000).toISOString().slice(0, 10),
);
/** Words read at each visit, of 24. */
export const RIGHTS = [11, 12, 11, 16, 18];

const conditions = {
  hand: 'right',
  pen: 'gel pen',
  paper: 'ruled, 8 mm',
  time: '09:30',
  doseState: 'on',
  cue: 'none',
  minutesSinceDose: 60,
  surfaceAngleDeg: 0,
  seatMm: null,
  tableMm: null,
  armSupport: '',
  grip: '',
  glasses: null,
  instruction: 'usual',
  style: null,
};

const clientOf = (id: string, code: string, name: string) => ({
  ...newClient(idOf(id), name, code),
  birthYear: 1957,
  handBefore: 'right',
  handNow: 'right',
  wants: 'I want to send my son shopping.',
  familyConsent: true,
});

const visitOf = (id: string, client: string, date: string, kind: string) => ({
  id: idOf(id),
  clientId: idOf(client),
  date,
  kind,
  minutes: 45,
  nextVisit: '',
  told: '',
  skilled: '',
  response: '',
  taughtBack: '',
  plan: '',
});
const sampleOf = (id: string, visit: string, client: string, date: string) => ({
  id: idOf(id),
  clientId: idOf(client),
  visitId: idOf(visit),
  takenAt: `${date}T09:30:00.000Z`,
  task: { kind: 'sentences', textCodes: ['F1', 'F4'], text: TEXT, spellingNoted: false },
  conditions,
  fatigueBefore: 2,
  fatigueAfter: 4,
  painBefore: 0,
  painAfter: 1,
  seconds: 120,
  baseline: true,
  typed: {},
  note: '',
});

export async function seedClient(app: LaunchedApp): Promise<void> {
  await call(app, 'app.create', { passphrase: PASSPHRASE, initials: 'AB', clinic: 'Harbor House Clinic' });
  await call(app, 'client.save', clientOf('client', 'C-01', 'Ines Invented'));
  for (const [i, date] of DAYS.entries()) {
    await call(app, 'visit.save', visitOf(`visit ${i}`, 'client', date, i === 0 ? 'first' : 'treatment'));
    await call(app, 'sample.save', {
      ...sampleOf(`sample ${i}`, `visit ${i}`, 'client', date),
      conditions: i === 4 ? { ...conditions, pen: 'felt pen', doseState: 'off' } : conditions,
      fatigueAfter: [6, 6, 5, 4, 3][i],
      baseline: i < 3,
    });
    await call(app, 'reading.save', {
      id: idOf(`reading ${i}`),
      clientId: idOf('client'),
      visitId: idOf(`visit ${i}`),
      sampleId: idOf(`sample ${i}`),
      readAt: `${date}T15:00:00.000Z`,
      reader: 'unfamiliar',
      readerInitials: 'QR',
      blind: true,
      lines: [],
      counted: { right: RIGHTS[i], of: 24 },
    });
  }
  await call(app, 'practice.save', {
    id: idOf('log'),
    clientId: idOf('client'),
    date: DAYS[3],
    minutes: 12,
    lines: 6,
    fatigueBefore: 2,
    fatigueAfter: 4,
    pain: 0,
    breaks: 1,
    paper: '',
    grip: '',
    note: '',
  });
}

/** So many weekly visits before those of `seedClient`, read by five strangers in turn. */
export async function seedWeeksBefore(app: LaunchedApp, weeks: number): Promise<void> {
  const from = Date.parse(DAYS[0]!);
  for (let week = 0; week < weeks; week++) {
    const date = new Date(from - (weeks - week) * 7 * 86_400_000).toISOString().slice(0, 10);
    const [visit, sample] = [`week ${week}`, `sample of week ${week}`];
    await call(app, 'visit.save', visitOf(visit, 'client', date, 'treatment'));
    await call(app, 'sample.save', { ...sampleOf(sample, visit, 'client', date), baseline: week < 3 });
    await call(app, 'reading.save', {
      id: idOf(`reading of week ${week}`),
      clientId: idOf('client'),
      visitId: idOf(visit),
      sampleId: idOf(sample),
      readAt: `${date}T15:00:00.000Z`,
      reader: 'unfamiliar',
      readerInitials: ['QR', 'ST', 'UV', 'WX', 'YZ'][week % 5],
      blind: true,
      lines: [],
      counted: { right: 9 + ((7 * week) % 11), of: 24 },
    });
  }
}

/** A second client with one written page that nobody has read. */
export async function seedOther(app: LaunchedApp): Promise<void> {
  await call(app, 'client.save', clientOf('other', 'C-02', 'Otto Other'));
  await call(app, 'visit.save', visitOf('other visit', 'other', DAYS[4]!, 'first'));
  await call(app, 'sample.save', sampleOf('other sample', 'other visit', 'other', DAYS[4]!));
  await addPageTo(app, 'other sample');
}

/** A second client with two baselines a week apart, read by the same reader: a repeat pair of an unchanged hand. */
export async function seedPair(app: LaunchedApp): Promise<void> {
  await call(app, 'client.save', clientOf('other', 'C-02', 'Otto Other'));
  for (const [i, right] of [14, 17].entries()) {
    const [visit, sample] = [`other visit ${i}`, `other sample ${i}`];
    await call(app, 'visit.save', visitOf(visit, 'other', DAYS[i]!, i === 0 ? 'first' : 'treatment'));
    await call(app, 'sample.save', sampleOf(sample, visit, 'other', DAYS[i]!));
    await call(app, 'reading.save', {
      id: idOf(`other reading ${i}`),
      clientId: idOf('other'),
      visitId: idOf(visit),
      sampleId: idOf(sample),
      readAt: `${DAYS[i]}T15:00:00.000Z`,
      reader: 'unfamiliar',
      readerInitials: 'QR',
      blind: true,
      lines: [],
      counted: { right, of: 24 },
    });
  }
}

/** A written page at 150 dpi with the two lines of TEXT, as PNG bytes. */
function writtenPage(): Uint8Array {
  const font = fileURLToPath(
    new URL('../../node_modules/@fontsource/patrick-hand/files/patrick-hand-latin-400-normal.woff', import.meta.url),
  );
  GlobalFonts.registerFromPath(font, 'Patrick Hand');
  const canvas = createCanvas(1240, 1754);
  const ink = canvas.getContext('2d');
  ink.fillStyle = '#fdfdfb';
  ink.fillRect(0, 0, 1240, 1754);
  ink.fillStyle = '#20263c';
  ink.font = '56px "Patrick Hand"';
  TEXT.split('\n').forEach((line, i) => ink.fillText(line, 110, 300 + i * 160));
  return canvas.toBuffer('image/png');
}

/** Puts the written page to a sample and measures it. */
async function addPageTo(app: LaunchedApp, sample: string): Promise<void> {
  const pageId = idOf(`page of ${sample}`);
  const token = await app.stage(writtenPage());
  await call(app, 'sample.addPage', { id: pageId, sampleId: idOf(sample), token, pdfPage: 1 });
  await call(app, 'sample.setScale', { pageId, pxPerMm: 150 / 25.4, source: 'dpi' });
  await call(app, 'sample.measure', { id: idOf(`measurement of ${sample}`), pageId, corrections: [] });
}

/** Puts the written page to one of the five samples (the last one) and measures it. */
export const addPage = (app: LaunchedApp, sample = 4): Promise<void> => addPageTo(app, `sample ${sample}`);

export async function openTab(app: LaunchedApp, tab: string): Promise<void> {
  const { page } = app;
  await page.reload();
  await openClient(page, 'Ines Invented');
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: tab, exact: true }).click();
}

/** What axe finds wrong on the screen, by rule and element. The shell closes any second page, and axe's usual way opens one. */
export async function axe(page: Page): Promise<unknown[]> {
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .setLegacyMode(true)
    .analyze();
  return found.violations.map((violation) => [violation.id, violation.nodes.map((node) => node.html)]);
}
