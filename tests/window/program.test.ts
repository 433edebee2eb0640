/** The home program in the real window: drafted at once, explained, changed, kept safe, approved and frozen. */
import { readFileSync } from 'node:fs';
import { expect, test, type LaunchedApp } from './app.ts';
import { axe, call, DAYS, idOf, openTab, seedClient } from './seeds/progress-seed.ts';

/** Writing that shrinks, raised tone, no attention check: a client for whom much is forbidden. */
const grades: Record<string, number> = {
  'hand-choice': 2,
  skin: 3,
  pain: 3,
  tone: 1,
  touch: 3,
  grasp: 2,
  tremor: 3,
  seating: 2,
  'in-hand': 1,
  opposition: 2,
  language: 3,
  attention: 3,
};

async function seedIntake(app: LaunchedApp): Promise<void> {
  const { rules } = (await call(app, 'rules.current', {})) as {
    rules: { redFlagTable: { flags: { code: string; asked: boolean }[] } };
  };
  const fact = { clientId: idOf('client'), visitId: idOf('visit 4'), note: '' };
  for (const flag of rules.redFlagTable.flags.filter((each) => each.asked)) {
    await call(app, 'intake.flag', {
      ...fact,
      id: idOf(`flag ${flag.code}`),
      flag: flag.code,
      present: false,
      review: null,
    });
  }
  for (const [item, grade] of Object.entries(grades)) {
    await call(app, 'intake.answer', {
      ...fact,
      id: idOf(`answer ${item}`),
      item,
      side: 'right',
      state: 'graded',
      grade,
      reason: '',
      detail: null,
      before: null,
      after: null,
    });
  }
}

test('a program is drafted, explained, changed, approved and frozen by keyboard', async ({ app }) => {
  await seedClient(app);
  await seedIntake(app);
  await openTab(app, 'Program');
  const { page } = app;
  const lines = page.locator('table.program tbody tr');
  await expect(page.getByRole('button', { name: 'Open the hand slowly' })).toBeVisible();
  const beside = (part: string) =>
    page.getByRole('group', { name: 'Beside the lines' }).getByRole('button', { name: part }).click();
  await beside('Kept out');
  await expect(page.getByText('Not given, for safety')).toBeVisible();
  await beside('Findings');

  // A finding lights its lines, and a line its findings.
  const tone = page.getByRole('button', { name: /Tone in wrist/ }).first();
  await tone.focus();
  await page.keyboard.press('Enter');
  await expect(lines.filter({ hasText: 'Open the hand slowly' })).toHaveClass(/lit/);
  await page.keyboard.press('Enter');

  // Words and dose are changed, and saved.
  await lines.getByRole('button', { name: 'Your name and address' }).click();
  await beside('Line');
  const copy = page.getByRole('article', { name: 'Your name and address' });
  await copy.getByRole('button', { name: /^Edit/ }).focus();
  await page.keyboard.press('Enter');
  await copy.getByLabel('Minutes each time').fill('8');
  await page.keyboard.press('Tab');
  await copy.getByRole('button', { name: 'Done' }).focus();
  await page.keyboard.press('Enter');
  await expect(copy).toContainText('3 turns of 2.7 minutes');
  await expect(lines.filter({ hasText: 'Your name and address' }).locator('td.number').first()).toHaveText('8');
  await expect(copy).toContainText('changed by hand');

  // What is forbidden can be added only with a reason.
  await page.keyboard.press('Alt+a');
  await page.getByLabel('Search the library').fill('putty squeeze');
  await expect(page.getByText(/Forbidden now:/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Add, with a reason Soft putty: squeeze' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  const approve = page.getByRole('button', { name: /^Approve/ });
  await expect(approve).toHaveCount(0);
  // The way to what blocks is the filled button.
  await page.getByRole('button', { name: 'Review, then approve' }).click();
  const putty = page.getByRole('article', { name: 'Soft putty: squeeze' });
  await putty.getByLabel(/Reason for keeping it/).fill('Tried in the clinic, tone stays low.');
  await page.keyboard.press('Tab');
  await expect(putty).toContainText('Kept against a caution');
  await expect(approve).toBeEnabled();

  // Order by keys, and undo.
  await lines.getByRole('button', { name: 'Soft putty: squeeze' }).focus();
  const before = await lines.locator('[data-line]').allTextContents();
  await page.keyboard.press('Alt+ArrowUp');
  await expect(async () => expect(await lines.locator('[data-line]').allTextContents()).not.toEqual(before)).toPass();
  await page.keyboard.press('Control+z');
  await expect(async () => expect(await lines.locator('[data-line]').allTextContents()).toEqual(before)).toPass();

  // Order by drag: down to the very end, and up again.
  const titles = () => lines.locator('[data-line]').allTextContents();
  const drag = async (from: number, to: number) => {
    await lines.nth(from).dispatchEvent('dragstart');
    await lines.nth(to).dispatchEvent('dragover');
    await lines.nth(to).dispatchEvent('drop');
  };
  const end = before.length - 1;
  await drag(end - 1, end);
  await expect(async () => expect((await titles()).at(-1)).toBe(before.at(-2))).toPass();
  await drag(end, end - 1);
  await expect(async () => expect(await titles()).toEqual(before)).toPass();

  for (let theme = 0; theme < 2; theme++) {
    expect(await axe(page)).toEqual([]);
    await page.keyboard.press('Alt+t');
  }

  await approve.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Approved .* It is frozen/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Edit/ })).toHaveCount(0);
  await expect(putty).toContainText('Tried in the clinic, tone stays low. (AB)');

  // A new draft starts from a copy, and says what changed.
  await page.getByRole('button', { name: 'Change it in a new draft' }).click();
  await page.getByRole('button', { name: 'Remove Soft putty: squeeze' }).click();
  // What was taken out stands in the Undo button's place; the focus is on the next line.
  await expect(page.getByText('“Soft putty: squeeze” taken out.')).toBeVisible();
  expect(await page.evaluate(() => document.activeElement?.hasAttribute('data-line'))).toBe(true);
  await beside('Kept out');
  await page.getByText(/^Against the program of/).click();
  await expect(page.getByRole('row', { name: /Gone Soft putty: squeeze/ })).toBeVisible();
});

test('an open red flag leaves no exercise and says what to do', async ({ app }) => {
  await seedClient(app);
  await seedIntake(app);
  await call(app, 'intake.flag', {
    clientId: idOf('client'),
    visitId: idOf('visit 4'),
    note: '',
    id: idOf('flag hot-hand'),
    flag: 'hot-hand',
    present: true,
    review: null,
  });
  await openTab(app, 'Program');
  const { page } = app;
  await expect(page.getByText(/No exercise is drafted until this was reviewed/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Approve/ })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Open the hand slowly' })).toHaveCount(0);
  // Nothing blank can be printed either.
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: 'Pages', exact: true }).click();
  await page.getByRole('radio', { name: /^Practice pages/ }).click();
  await expect(page.getByText('There is nothing to print yet.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save as PDF' })).toBeDisabled();
  await expect(page.getByRole('button', { name: /^Print/ })).toBeDisabled();
});

test('the clinic makes a rule, tries it on the caseload, exports and imports it', async ({ app }) => {
  await seedClient(app);
  await seedIntake(app);
  const { page } = app;
  await page.reload();
  await openTab(app, 'Program');
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Rules', exact: true }).click();
  await page.getByRole('button', { name: 'Make a rule' }).click();
  await page.getByLabel('When this finding').selectOption('grasp');
  await page.getByRole('button', { name: 'Add this finding' }).click();
  await page.getByLabel('then give').selectOption('line-window');
  await page.getByLabel('because').fill('Our clients like it.');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'Try it on the caseload' }).click();
  await expect(page.getByText('Would change 1 of 1 draft.')).toBeVisible();
  expect(await axe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Keep this rule' }).click();
  await expect(page.getByText(/New drafts follow it/)).toBeVisible();

  await page.getByRole('button', { name: "Export the clinic's own rules" }).click();
  await expect(page.getByText(/The file is saved/)).toBeVisible();
  const file = readFileSync(`${app.saveFolder}/fairhand-clinic-rules.json`, 'utf8');
  const upload = (text: string) =>
    page
      .getByLabel('Rule file')
      .setInputFiles({ name: 'rules.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await upload(file.replace('"grasp"', '"ghost"'));
  await expect(page.getByText(/Line \d+: There is no finding "ghost"/)).toBeVisible();
  await upload(file.replace('"atMost": 2', '"atMost": "two"'));
  await expect(page.getByText(/Line \d+: In "atMost" stands "two", but it has to be a number\./)).toBeVisible();
  await page.getByRole('button', { name: 'Restore the shipped table' }).click();
  await upload(file.replace(/"basedOn": "[^"]*"/, '"basedOn": "2020.1"'));
  await expect(page.getByText(/Would change 1 of 1 draft/)).toBeVisible();
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect(page.getByText('The imported rules are in use.')).toBeVisible();

  // A file from before rules had a role: asked about the one that gives writing, then never again.
  const kept = JSON.parse(file) as { rules: Record<string, unknown>[] };
  const [{ role: _role, ...rule }] = kept.rules as [Record<string, unknown>];
  const old = { ...kept, formatVersion: 1, rules: [{ ...rule, gives: ['copy-lines'] }] };
  await upload(JSON.stringify(old));
  const question = page.getByRole('radiogroup', { name: "Is C01 the day's main writing?" });
  await expect(page.getByRole('button', { name: 'Keep these answers' })).toBeDisabled();
  expect(await axe(page)).toEqual([]);
  await question.getByRole('radio', { name: 'Yes, the main writing' }).click();
  await page.getByRole('button', { name: 'Keep these answers' }).click();
  await page.getByRole('button', { name: 'Use it' }).click();
  await expect(page.getByText('The imported rules are in use.')).toBeVisible();
  await expect(question).toHaveCount(0);
  const { changes } = (await call(app, 'rules.current', {})) as { changes: { rules: { id: string; role: string }[] } };
  expect(changes.rules).toMatchObject([{ id: 'C01', role: 'main-writing' }]);
  for (const name of ['Rules', 'Thresholds', 'Make an exercise']) {
    await page.getByLabel('Rule table').getByRole('button', { name, exact: true }).click();
    expect(await axe(page), name).toEqual([]);
  }

  // Texts are data too: a frame, a word, a topic; what does not fit gets a sentence and is still in the field.
  await page.getByLabel('Rule table').getByRole('button', { name: 'Texts' }).click();
  const field = page.getByLabel('A new frame');
  await field.fill('The {ghost} will be here at ten tomorrow morning');
  await page.getByRole('button', { name: 'Keep this frame' }).click();
  await expect(page.getByText(/asks for words called "ghost", and there is no such list/)).toBeVisible();
  await expect(field).toHaveValue(/ghost/);
  await field.fill('Our {trade} sings in the {room} on Sundays.');
  await page.getByRole('button', { name: 'Keep this frame' }).click();
  await expect(page.getByText('Saved. Texts made from now on follow it.')).toBeVisible();
  // What was refused before is said no more.
  await expect(page.getByText(/there is no such list/)).toHaveCount(0);
  const own = page.getByRole('row', { name: /sings in the/ });
  await expect(own).toContainText(/clinic/i);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/texts.png` });
  expect(await axe(page)).toEqual([]);
  await own.getByRole('button', { name: /^Take back/ }).click();
  await expect(own).toHaveCount(0);
  await page
    .getByRole('button', { name: /^Switch off/ })
    .first()
    .click();
  await expect(page.getByText(/^Frame switched off/)).toBeVisible();
  await page.getByRole('radio', { name: 'Word lists' }).click();
  const list = page.locator('details').filter({ hasText: '{person}, measured texts' });
  await list.locator('summary').click();
  await list.getByRole('textbox').fill('plumber, baker');
  await list.getByRole('button', { name: 'Keep these words' }).click();
  await expect(page.getByText(/"person" has 2 words and needs 8/)).toBeVisible();
  await page.getByRole('radio', { name: 'Topics' }).click();
  const topic = page
    .locator('details:visible')
    .filter({ hasText: /\d words/ })
    .first();
  // Another language has words of its own, and what was typed into a list is there again.
  await topic.locator('summary').click();
  const words = await topic.getByRole('textbox').inputValue();
  await page.getByRole('radio', { name: 'Español' }).click();
  await topic.locator('summary').click();
  await expect(topic.getByRole('textbox')).not.toHaveValue(words);
  await page.getByRole('radio', { name: 'English' }).click();
  await page.getByRole('radio', { name: 'Word lists' }).click();
  await list.locator('summary').click();
  await expect(list.getByRole('textbox')).toHaveValue('plumber, baker');
  await page.getByRole('radio', { name: 'Topics' }).click();
  await topic.locator('summary').click();
  await topic.getByRole('button', { name: 'Switch off' }).click();
  await expect(page.getByText(/^Topic switched off/)).toBeVisible();
  const now = (await call(app, 'rules.current', {})) as { changes: { off: string[] } };
  expect(now.changes.off).toHaveLength(2);
});

test('the proposal rests on what came back', async ({ app }) => {
  await seedClient(app);
  await seedIntake(app);
  await openTab(app, 'Program');
  await app.page.getByRole('button', { name: /^Approve/ }).click();
  await expect(app.page.getByText(/It is frozen/)).toBeVisible();
  const today = new Date().toISOString().slice(0, 10);
  expect(DAYS[4]! < today).toBe(true);
  await app.page.getByRole('button', { name: /Start a visit today/ }).click();
  await expect(app.page.getByRole('heading', { name: /^Proposed:/ })).toBeVisible();
  await expect(app.page.getByText('Nothing has come back from practice yet.')).toBeVisible();
});

test('finding and line light each other, the approved program is one key from its print', async ({ app }) => {
  await seedClient(app);
  await seedIntake(app);
  await openTab(app, 'Program');
  const { page } = app;
  await expect(page.locator('.day')).toContainText(/of 5 items, \d+ of 30 minutes/);
  const slow = page.locator('table.program tbody tr').filter({ hasText: 'Open the hand slowly' });
  await page.getByRole('group', { name: 'Beside the lines' }).getByRole('button', { name: 'Findings' }).click();
  const tone = page.getByRole('button', { name: /Tone in wrist/ }).first();
  await tone.hover();
  await expect(slow).toHaveClass(/lit/);
  await page.getByRole('heading', { level: 1, name: 'Program' }).hover();
  await expect(slow).not.toHaveClass(/lit/);
  await slow.hover();
  await expect(tone).toHaveClass(/lit/);
  // Ctrl+Enter goes to the filled button; it never approves by itself.
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('button', { name: /^Approve/ })).toBeFocused();
  await expect(page.getByText(/It is frozen/)).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/It is frozen/)).toBeVisible();
  await page.keyboard.press('Alt+p');
  await expect(page.getByRole('button', { name: /Save as PDF/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Home program' }).first()).toBeVisible();
});

test('a number of the set-up is changed by the clinic, shown with what was shipped, and put back', async ({ app }) => {
  await seedClient(app);
  const { page } = app;
  await page.reload();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Rules', exact: true }).click();
  await page.getByLabel('Rule table').getByRole('button', { name: 'Thresholds' }).click();
  await page.getByLabel('Find a threshold').fill('table above elbow for writing');
  const field = page.getByLabel('Table above the elbow for writing, at most');
  await field.fill('60');
  await page.keyboard.press('Tab');
  await expect(page.getByText(/One number is/)).toBeVisible();
  await expect(page.getByText('50 mm')).toBeVisible();
  await field.focus();
  expect(await axe(page)).toEqual([]);
  // Above what makes sense, and against its own lower end, it is refused with a sentence.
  await field.fill('500');
  await page.keyboard.press('Tab');
  await expect(page.getByText(/must lie between/)).toBeVisible();
  await page.getByRole('button', { name: /^Back to it/ }).click();
  await expect(page.getByText('All numbers are as shipped.')).toBeVisible();
});
