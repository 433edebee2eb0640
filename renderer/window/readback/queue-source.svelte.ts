/** What is waiting to be read: of the open client, or of the whole caseload so that clients and dates can be mixed. */
import { ask } from '../../../electron/contract/ask.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { Reading } from '../../../db/types/reading.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { limitsOf } from '../../logic/rules/limits.ts';
import { samplesToRead, type LinePicture, type SampleToRead } from '../../logic/readback/line-pictures.ts';
import { exposureOf, meetings, type Exposure, type TextMet } from '../../logic/readback/exposure.ts';
import { readingQueue, type QueueLine, type ReaderOf } from '../../logic/readback/queue.ts';
import { sameEnlargement } from '../../logic/readback/true-size.ts';
import { readingBy, withLine } from '../../logic/readback/reading-lines.ts';

export class QueueSource {
  readonly open: OpenRecord;
  /** Records of the other clients, once asked for; null = this client only. */
  #others = $state.raw<ClientRecord[] | null>(null);
  /** Texts that the reader has met anywhere in the caseload, and whose initials were asked about. */
  #met = $state.raw<{ initials: string; texts: readonly TextMet[] }>({ initials: '', texts: [] });
  /** Readings made here for other clients since their records were loaded. */
  #made = $state.raw<Reading[]>([]);

  constructor(open: OpenRecord) {
    this.open = open;
  }

  /** Loads the readable samples of every client that is not archived. */
  async loadAll(): Promise<void> {
    const list = await ask('caseload.list', {});
    const others = list.filter((entry) => entry.id !== this.open.clientId && !entry.archivedOn);
    const records: ClientRecord[] = [];
    for (const { id } of others) records.push(await ask('client.open', { clientId: id }));
    this.#others = records;
  }

  /** Asks which texts somebody has met: of all clients, whether their lines are read here or not. */
  async loadMet(initials: string): Promise<void> {
    const { met } = await ask('readback.textsMet', { initials });
    this.#met = { initials, texts: met };
  }

  #metBy({ reader, initials }: ReaderOf): readonly TextMet[] {
    // Family know the client's words anyway; they are kept apart from other readers.
    return reader === 'family' || this.#met.initials.trim().toLowerCase() !== initials.trim().toLowerCase()
      ? []
      : this.#met.texts;
  }

  /** What this reader knows already of the texts that wait; null: nothing. */
  exposure(who: ReaderOf, lines: readonly QueueLine[]): Exposure | null {
    const waiting = new Set(lines.map(({ sampleId }) => sampleId));
    return exposureOf(
      this.samples.filter(({ sampleId }) => waiting.has(sampleId)),
      this.#metBy(who),
    );
  }

  readonly samples = $derived.by((): SampleToRead[] =>
    [this.open.record, ...(this.#others ?? [])].flatMap(samplesToRead),
  );

  readonly readings = $derived.by((): Reading[] => {
    const known = [this.open.record, ...(this.#others ?? [])].flatMap((record) => record.readings);
    const made = new Map(this.#made.map((reading) => [reading.id, reading]));
    return [...known.filter((reading) => !made.has(reading.id)), ...made.values()];
  });

  /** Lines with a picture that this reader may read now, shuffled. */
  waiting(who: ReaderOf, random: () => number): QueueLine[] {
    return readingQueue(this.samples, this.readings, who, this.#metBy(who), random, limitsOf(this.open.rules)).filter(
      (line) => this.pictureOf(line) !== null,
    );
  }

  /** Lines that this reader could read but for having met their texts lately. */
  heldBack(who: ReaderOf): number {
    const all = readingQueue(this.samples, this.readings, who, [], () => 0, limitsOf(this.open.rules));
    return all.filter((line) => this.pictureOf(line) !== null).length - this.waiting(who, () => 0).length;
  }

  pictureOf(line: QueueLine): LinePicture | null {
    return this.samples.find((sample) => sample.sampleId === line.sampleId)?.pictures[line.line] ?? null;
  }

  /** Adds one typed line to this reader's reading of the sample and saves it. @throws Refusal */
  async add(
    who: ReaderOf,
    line: QueueLine,
    { read, seconds, enlargement }: { read: string; seconds: number; enlargement: number | null },
  ): Promise<void> {
    const sample = this.samples.find((one) => one.sampleId === line.sampleId);
    if (!sample) return;
    const before = readingBy(this.readings, sample.sampleId, who.reader, who.initials);
    const now = this.open.now();
    const reading = {
      id: before?.id ?? this.open.newId(),
      clientId: sample.clientId,
      visitId: sample.visitId,
      sampleId: sample.sampleId,
      readAt: before?.readAt ?? now,
      reader: who.reader,
      readerInitials: who.initials.trim(),
      blind: who.reader !== 'therapist',
      enlargement: sameEnlargement(before, enlargement),
      textMetBefore: before?.textMetBefore ?? meetings(sample, this.#metBy(who)).length,
      lines: withLine(sample.lines, before?.lines ?? [], line.line, read, seconds),
      counted: null,
    };
    if (!before) {
      const text = {
        sampleId: sample.sampleId,
        how: 'read' as const,
        at: now,
        codes: sample.textCodes,
        text: sample.text,
      };
      this.#met = { ...this.#met, texts: [...this.#met.texts, text] };
    }
    if (sample.clientId === this.open.clientId) {
      await this.open.save('reading', reading);
      return;
    }
    // Another client's line: shown as read at once, stored without opening that client.
    this.#made = [...this.#made.filter((one) => one.id !== reading.id), { ...reading, at: now, by: '–' }];
    await this.open.app.saving.run(`reading/${reading.id}`, () => ask('reading.save', reading));
  }
}
