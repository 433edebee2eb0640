import type { ClinicRules } from '../../../../db/types/rules.ts';
import { type Hazard, type LibraryItem, type Rule } from '../../../../db/types/rules.ts';
import type { Condition } from '../../../../db/types/conditions.ts';
import type { LineKind, Tier } from '../../../../db/types/program.ts';
import { hazardsInWords } from './hazard-words.ts';
import { ownItem } from './own-item.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

/** What the form asks: when all of these hold, then this item. */
export interface RuleForm {
  findings: { code: string; atMost: 0 | 1 | 2 }[];
  cautions: string[];
  diagnoses: string[];
  item: string;
  because: string;
  /** Asked where the item is writing: whether it is the day's main writing, which takes the dose first. */
  role: Rule['role'];
}

/** Next free id of the clinic's own rules: C01, C02, … */
export function nextRuleId(clinic: ClinicRules): string {
  const used = clinic.rules.flatMap((each) => Number(/^C(\d+)$/.exec(each.id)?.[1] ?? 0));
  return `C${String(Math.max(0, ...used) + 1).padStart(2, '0')}`;
}

/** A rule from the form; the sentence says what is still missing. */
export function ruleFromForm(
  form: RuleForm,
  id: string,
  words: Told['ruleWords'],
): { ok: true; rule: Rule } | { ok: false; reason: string } {
  const conditions: Condition[] = [
    ...form.findings.map(({ code, atMost }) => ({ finding: code, atMost })),
    ...form.diagnoses.map((diagnosis) => ({ diagnosis })),
    ...form.cautions.map((caution) => ({ caution })),
  ];
  if (conditions.length === 0) return { ok: false, reason: words.nameCondition };
  if (form.item === '') return { ok: false, reason: words.chooseItem };
  if (form.because.trim() === '') return { ok: false, reason: words.sayWhy };
  return {
    ok: true,
    rule: {
      id,
      when: { all: conditions },
      role: form.role,
      gives: [form.item],
      dose: null,
      because: form.because.trim(),
      advance: 'As the therapist decides.',
      stepBack: '',
      source: 'clinic',
      sourceNote: '',
    },
  };
}

/** What the form for an exercise of one's own asks. The hazards decide what can forbid it. */
export interface ItemForm {
  title: string;
  text: string;
  kind: LineKind;
  tier: Tier;
  dose: string;
  hazards: Hazard[];
  cautions: string[];
}

const base: Readonly<Record<string, string[]>> = {
  writing: ['grasp', 'pain', 'skin'],
  exercise: ['pain', 'skin', 'tone'],
  'warm-up': ['pain', 'skin', 'tone'],
};

/** An own exercise depends on what every exercise of its kind depends on, and prints at least one caution. */
export function itemFromForm(form: ItemForm, code: string): LibraryItem {
  const hazards = [...new Set([...form.hazards, ...hazardsInWords(`${form.title}. ${form.text}`)])];
  const moves = form.kind === 'exercise' || form.kind === 'warm-up';
  return ownItem(
    { code, kind: form.kind, tier: form.tier, title: form.title.trim(), text: form.text.trim() },
    {
      dose: form.dose,
      dependsOn: base[form.kind] ?? [],
      hazards,
      cautions: [
        ...new Set([...form.cautions, ...(moves || hazards.length > 0 ? ['stop-pain', 'helper-needed'] : [])]),
      ],
    },
  );
}
