/** Any client that the vocabulary can describe, likely ones more often. */
import fc from 'fast-check';
import type { InputFinding, ProgramInput } from '../../../db/types/program-input.ts';
import type { RuleTable } from '../../../db/types/rules.ts';

export interface Case {
  input: ProgramInput;
  extraCaution: string;
}

export function anyCase(rules: RuleTable): fc.Arbitrary<Case> {
  const { findings, cautions, diagnoses, measures } = rules.vocabulary;
  const side = fc.constantFrom('right' as const, 'left' as const, 'both' as const, 'none' as const);
  const grade = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(1 as const, 2 as const, 3 as const) },
    { weight: 1, arbitrary: fc.constantFrom(0 as const, null) },
  );
  const finding = (code: string, details: string[]): fc.Arbitrary<InputFinding> =>
    fc.record({
      code: fc.constant(code),
      grade,
      side: fc.oneof({ weight: 5, arbitrary: fc.constant('right' as const) }, side),
      source: fc.constant('case'),
      detail: details.length === 0 ? fc.constant(null) : fc.option(fc.constantFrom(...details), { freq: 2 }),
    });
  const items = findings.filter((each) => each.from === 'item');
  const calm = (each: (typeof items)[number]): string[] => each.details.map((one) => one.code);
  // Every item tested in some clients, a few left out in others; every finding of measures or eye now and then.
  const screened: fc.Arbitrary<InputFinding[]> = fc
    .tuple(...items.map((each) => finding(each.code, calm(each))))
    .chain((all) =>
      fc.oneof(
        { weight: 3, arbitrary: fc.constant(all) },
        { weight: 1, arbitrary: fc.subarray(all) },
        // Fine but for a few: what a real client looks like.
        {
          weight: 4,
          arbitrary: fc.subarray(all, { maxLength: 6 }).map((worse) =>
            items.map(
              (item) =>
                worse.find((each) => each.code === item.code) ?? {
                  code: item.code,
                  grade: 3 as const,
                  side: 'right' as const,
                  source: 'case',
                  detail: item.code === 'wrist' ? 'sixty-or-more' : null,
                },
            ),
          ),
        },
      ),
    );
  const seen: fc.Arbitrary<InputFinding[]> = fc
    .subarray(
      findings.filter((each) => each.from !== 'item').map((each) => each.code),
      { maxLength: 5 },
    )
    .chain((codes) =>
      codes.length === 0 ? fc.constant<InputFinding[]>([]) : fc.tuple(...codes.map((code) => finding(code, []))),
    );
  const measure = fc.constantFrom(...measures).chain((each) =>
    fc.record({
      code: fc.constant(each.code),
      value: fc.option(fc.double({ min: -5, max: 120, noNaN: true }), { freq: 8 }),
      unit: fc.constant(each.units[0] ?? ''),
    }),
  );
  // Words read decide the tier, so they are there more often than chance would have it.
  const read = fc.constantFrom<ProgramInput['measures']>(
    [],
    [{ code: 'legibility', value: 60, unit: '%' }],
    [{ code: 'legibility', value: 80, unit: '%' }],
    [{ code: 'legibility', value: 95, unit: '%' }],
    [
      { code: 'legibility', value: 95, unit: '%' },
      { code: 'words-per-minute', value: 8, unit: 'per minute' },
      { code: 'words-per-minute-needed', value: 12, unit: 'per minute' },
    ],
  );
  // How much writing tires decides the dose.
  const rise = fc
    .constantFrom(null, 0, 1, 1, 1, 2, 2, 3, 5, 6)
    .map((value): ProgramInput['measures'] =>
      value === null ? [] : [{ code: 'fatigue-rise', value, unit: 'points' }],
    );
  const flag = fc.constantFrom(...rules.redFlags.map((each) => each.code));
  // A reviewed flag may be a precaution of its own: a few at a time of those, so that they do not hide the rest.
  const asReviewed = (code: string): { code: string; reviewed: boolean } => ({ code, reviewed: true });
  const asked = JSON.stringify([rules.derivedCautions, rules.vetoes]);
  const [rare, usual] = [true, false].map((is) =>
    rules.redFlags.map(({ code }) => code).filter((code) => asked.includes(`"flag":"${code}"`) === is),
  ) as [string[], string[]];
  const reviewed = fc
    .oneof({ weight: 3, arbitrary: fc.constant<string[]>([]) }, fc.subarray(rare, { maxLength: 2 }))
    .map((some): ProgramInput['redFlags'] => [...usual, ...some].map(asReviewed));
  // What an answer raises is reviewed as well, where flags were.
  const seenWith = ({ findings, redFlags }: Pick<ProgramInput, 'findings' | 'redFlags'>): ProgramInput['redFlags'] =>
    redFlags.length < usual.length
      ? []
      : rules.flagsFromAnswers
          .filter(({ flag: code }) => rare.includes(code))
          .filter(({ item, gradeAtMost, details }) =>
            findings.some(
              ({ code, grade, detail }) =>
                code === item && ((grade ?? 3) <= (gradeAtMost ?? -1) || details.includes(detail ?? '')),
            ),
          )
          .map(({ flag: code }) => asReviewed(code));
  const redFlags: fc.Arbitrary<ProgramInput['redFlags']> = fc.oneof(
    { weight: 7, arbitrary: reviewed },
    { weight: 2, arbitrary: fc.constant<ProgramInput['redFlags']>([]) },
    { weight: 1, arbitrary: fc.array<ProgramInput['redFlags'][number]>(flag, { maxLength: 2 }) },
  );
  const cautionCodes = cautions.filter((each) => each.group !== 'derived').map((each) => each.code);
  const cleared = ['helper', 'weight-bearing-cleared', 'hand-change-agreed', 'balance-checked', 'referrer-order'];
  return fc.record({
    input: fc
      .record({
        hand: fc.constantFrom('right' as const, 'right' as const, 'left' as const, null),
        findings: fc.tuple(screened, seen).map(([a, b]) => [...a, ...b]),
        redFlags,
        // Alone, with everything cleared, with a few cautions, and with a few beside what was cleared.
        cautions: fc
          .tuple(
            fc.constantFrom<string[]>([], ['helper'], cleared, cleared),
            fc.subarray(cautionCodes, { maxLength: 4 }),
          )
          .chain(([circumstances, codes]) =>
            fc.constantFrom<string[]>(circumstances, circumstances, [...new Set([...circumstances, ...codes])], codes),
          ),
        occasions: fc.subarray(
          rules.vocabulary.occasions.map(({ code }) => ({ code, words: ['oat milk'], topics: [] })),
          { maxLength: 3 },
        ),
        diagnoses: fc.subarray(
          diagnoses.map((each) => each.code),
          { maxLength: 2 },
        ),
        measures: fc
          .tuple(fc.array(measure, { maxLength: 6 }), read, rise)
          .map(([some, words, tires]): ProgramInput['measures'] => [...some, ...words, ...tires]),
        confusions: fc.constantFrom<ProgramInput['confusions']>(
          [],
          [{ intended: 'a', read: 'o', count: 3 }],
          [{ intended: '1', read: '7', count: 1 }],
        ),
        bouts: fc.array(
          fc.array(
            fc.integer({ min: 0, max: 8 }).map((right) => ({ right, words: 8 })),
            { maxLength: 8 },
          ),
          { maxLength: 3 },
        ),
        interests: fc.constantFrom<string[]>([], ['garden'], ['cooking']),
        language: fc.constantFrom('en', 'es', 'fi'),
        current: fc.constantFrom<ProgramInput['current']>(null, null, { tier: 3, paper: 'dashed-10', content: null }),
      })
      .map((each): ProgramInput => ({ version: 1, ...each, redFlags: [...each.redFlags, ...seenWith(each)] })),
    extraCaution: fc.constantFrom(...cautionCodes),
  });
}
