/**
 * Worked cases told shortly: only what differs from a screen in which every item was seen and is fine. A grade is written
 * "1 painful @left": the grade or "nt" for not tested, then what was noted, then a side that is not the usual one; a
 * measure taken twice is a list; letters read as others are "4>9".
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { RuleTable } from '../../db/types/rules.ts';
import { WorkedCase } from './judge.ts';

const Short = z.strictObject({
  name: z.string(),
  why: z.string(),
  hand: z.enum(['right', 'left']).default('right'),
  grades: z.record(z.string(), z.string().regex(/^([0-3]|nt)( [a-z-]+)?( @(left|right|both))?$/)).default({}),
  diagnoses: z.array(z.string()).default([]),
  cautions: z.array(z.unknown()).default([]),
  redFlags: z.array(z.unknown()).default([]),
  /** In the first unit of the vocabulary. */
  measures: z.record(z.string(), z.union([z.number(), z.array(z.number())])).default({}),
  confusions: z.record(z.string().regex(/^.>.$/), z.number()).default({}),
  language: z.string().default('en'),
  occasions: z.record(z.string(), z.array(z.string())).default({}),
  include: WorkedCase.shape.mustInclude,
  not: WorkedCase.shape.mustNot,
  /** What is said on which lines: the selector, then any of these words. */
  say: z.array(z.tuple([z.string()], z.string())).default([]),
  /** Words that would contradict this client or another line, and stand nowhere. */
  unsaid: z.array(z.string()).default([]),
  minutes: z.number(),
  tier: z.number(),
  stop: z.boolean().default(false),
});

const usual =
  'skin pain tone touch grasp tremor in-hand opposition wrist strength arm-support seating attention fatigue acuity field copying language';

function findingOf([code, told]: [string, string], hand: string, { vocabulary }: RuleTable) {
  const [grade = '', ...rest] = told.split(' ');
  const sided = vocabulary.findings.find((each) => each.code === code)?.sided || code === 'field';
  const side = rest.find((each) => each.startsWith('@'))?.slice(1) ?? (sided ? hand : 'none');
  const detail = rest.find((each) => !each.startsWith('@')) ?? (code === 'tone' && grade !== '3' ? 'usual' : '');
  return { code, grade: grade === 'nt' ? null : Number(grade), side, source: 'screen', ...(detail && { detail }) };
}

/** The cases of a file of tests/cases that is told shortly, as worked cases, each with what may stand nowhere. */
export function toldShortly(name: string, rules: RuleTable): (WorkedCase & { unsaid: string[] })[] {
  const file: unknown = JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));
  const fine = Object.fromEntries(usual.split(' ').map((code) => [code, '3']));
  return Short.array()
    .parse(file)
    .map((each) => ({
      name: each.name,
      why: each.why,
      findings: {
        version: 1,
        hand: each.hand,
        findings: Object.entries({ ...fine, ...each.grades }).map((row) => findingOf(row, each.hand, rules)),
        redFlags: each.redFlags,
        cautions: each.cautions,
        diagnoses: each.diagnoses,
        measures: Object.entries(each.measures).flatMap(([code, values]) =>
          [values].flat().map((value) => ({
            code,
            value,
            unit: rules.vocabulary.measures.find((one) => one.code === code)?.units[0],
          })),
        ),
        confusions: Object.entries(each.confusions).map(([pair, count]) => ({
          intended: pair[0],
          read: pair[2],
          count,
        })),
        language: each.language,
        occasions: Object.entries(each.occasions).map(([code, words]) => ({ code, words })),
      },
      mustInclude: each.include,
      mustNot: each.not,
      mustCaution: each.say.map(([on, ...anyOf]) => ({ on, anyOf })),
      minutesMax: each.minutes,
      tierMax: each.tier,
      stop: each.stop,
      unsaid: each.unsaid,
    }));
}
