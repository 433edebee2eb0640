/**
 * What must hold for every draft, said again in code of its own: it reads the client's answers directly and names
 * items by what they are, so that a wrong row of the veto table cannot excuse itself.
 */
import { ProgramLine } from '../../../db/types/program.ts';
import type { ProgramInput } from '../../../db/types/program-input.ts';
import { byCode } from '../../../db/types/rule-table/once-for.ts';
import type { RuleTable } from '../../../db/types/rules.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { type Composition } from '../../../renderer/logic/program/draft/stopped-draft.ts';
import { clashing } from '../../cases/judge.ts';
import { amountClashes } from './amounts.ts';
import { checkProgram } from '../../../renderer/logic/program/draft/vetoes.ts';

const putty = ['putty-squeeze', 'putty-pinch', 'putty-letters'];
const stretches = ['slow-opening', 'open-hand-lean', 'rest-and-open'];
const handWork = [
  'pick-up-put-down',
  'bend-straighten',
  'walk-the-barrel',
  'roll-the-barrel',
  'turn-end-to-end',
  'clips-to-fingertips',
  'slow-thumb-to-tips',
  'thumb-to-tips',
  'wrist-lifts',
  'slow-hand-warm-up',
];
const angled = ['big-ovals'];
const pens = [
  'pen-line',
  'ribbed-barrel',
  'thick-sleeve',
  'smooth-sleeve',
  'low-force-pen',
  'easy-thumb-pen',
  'soft-pen-pad',
  'firm-pen',
  'soft-pencil-check',
  'quick-dry-pen',
];
const postures = ['posture-line', 'set-up-first', 'forearm-on-table', 'forearm-heel-support', 'pelvis-support'];
const seats = ['seat-and-table-line', 'raise-seat-footrest', 'lower-table', 'raise-table', 'thigh-room', 'footrest'];
const wobble = ['dot-to-dot', 'print-apart', 'large-slow-letters', 'anchor-and-pause', 'weight-trial'];
const moves = ['pick-up-put-down', 'bend-straighten', 'walk-the-barrel', 'roll-the-barrel', 'turn-end-to-end'];
/** Hands that heal: no active work before it was cleared (CLINICAL-2, b2). */
const healing = ['fracture-healing', 'recent-hand-surgery', 'tendon-repair', 'open-wound'];
const weakens = ['als', 'myasthenia', 'guillain-barre', 'myositis', 'post-polio'];
const counted = ['warm-up', 'exercise', 'writing'];

/** Sentences on everything wrong with one draft; empty = all properties hold. */
function wrongWith(input: ProgramInput, draft: Composition, rules: RuleTable, shapes = true): string[] {
  const out: string[] = [];
  const items = new Set(draft.lines.map((line) => line.item ?? ''));
  const say = (holds: boolean, sentence: string): void => {
    if (!holds) out.push(sentence);
  };
  const own = input.findings.filter(
    (each) =>
      input.hand === null ||
      each.side === input.hand ||
      each.side === 'both' ||
      each.side === 'none' ||
      !sided(each.code),
  );
  function sided(code: string): boolean {
    return byCode(rules.vocabulary.findings).get(code)?.sided ?? false;
  }
  const found = Map.groupBy(own, (each) => each.code);
  /** Lowest grade; -1 = not tested. */
  const grade = (code: string): number => Math.min(...(found.get(code)?.map((each) => each.grade ?? -1) ?? [-1]));
  const low = (code: string, most: number): boolean =>
    found.get(code)?.some((each) => each.grade !== null && each.grade <= most) ?? false;
  const detail = (code: string, ...names: string[]): boolean =>
    found.get(code)?.some((each) => names.includes(each.detail ?? '')) ?? false;
  const noted = input.cautions.flatMap((each) =>
    typeof each === 'string' ? [each] : each.side === 'none' || each.side === input.hand ? [each.code] : [],
  );
  const caution = (...codes: string[]): boolean => codes.some((code) => noted.includes(code));
  const diagnosis = (...codes: string[]): boolean => codes.some((code) => input.diagnoses.includes(code));
  const none = (codes: readonly string[], when: boolean, why: string): void => {
    if (when) for (const code of codes) if (items.has(code)) out.push(`${code} although ${why}`);
  };

  // Red flags.
  const gradeOf = new Map(rules.redFlags.map((each) => [each.code, each.grade]));
  const open = input.redFlags.flatMap((each) => (typeof each === 'string' ? [each] : each.reviewed ? [] : [each.code]));
  const emergency = open.some((code) => gradeOf.get(code) === 'emergency');
  if (emergency) say(draft.lines.length === 0 && draft.stopped, 'an emergency is open and lines are there');
  if (open.length > 0) {
    say(draft.stopped, 'a red flag is open and the draft is not stopped');
    say(
      draft.lines.every((line) => ['setup', 'advice', 'refer'].includes(line.kind)),
      'a red flag is open and there is more than set-up, advice and referral',
    );
  }
  const reviewed = input.redFlags.flatMap((each) => (typeof each !== 'string' && each.reviewed ? [each.code] : []));
  const anyLow = (code: string): boolean => input.findings.some((each) => each.code === code && each.grade === 0);
  if (anyLow('pain') && !reviewed.includes('pain-high')) say(draft.stopped, 'pain of 5 or more goes on');
  if (anyLow('tone') && !reviewed.includes('tone-fixed')) say(draft.stopped, 'fixed tone goes on');
  if (anyLow('skin') && !reviewed.includes('open-skin')) say(draft.stopped, 'broken skin goes on');

  // What was reviewed stays a precaution.
  none(
    ['neck-turns', 'slant-and-stand', 'big-ovals'],
    reviewed.includes('neck-arm'),
    'the neck sent pain into the arm',
  );
  none(
    ['neck-turns', 'slant-and-stand', 'big-ovals', 'standing-lines'],
    reviewed.includes('balance-loss'),
    'balance was lost',
  );
  none([...putty, 'weight-trial'], reviewed.includes('open-skin'), 'the skin was open');
  none([...putty, 'open-hand-lean'], reviewed.includes('hot-hand'), 'the hand was hot');
  const felt = ['sort-looking', 'sort-eyes-closed'];
  none(felt, caution('fragile-skin', 'cold-sensitive') || diagnosis('scleroderma'), 'skin that rough things hurt');
  const rises = input.measures.some(
    ({ code, value }) => ['pain-rise', 'log-pain-rise'].includes(code) && (value ?? 0) >= 2,
  );
  none([...putty, 'weight-trial'], rises, 'pain goes up with writing');
  none(putty, caution('botulinum'), 'an injection weakens the hand');

  // Putty.
  none(putty, grade('tone') !== 3, 'tone is raised or untested');
  none(putty, grade('strength') !== 1 && grade('strength') !== 2, 'strength is not 1 or 2');
  none(putty, grade('pain') < 2, 'pain is over 2 or untested');
  none(putty, grade('touch') < 2, 'touch is under 2 or untested');
  none(putty, grade('skin') < 3, 'skin is not intact or untested');
  none(putty, diagnosis(...weakens) && !caution('referrer-order'), 'the condition weakens with use');
  none(putty, caution('hot-joint', 'arthritis-flare', 'putty-allergy', 'fragile-skin'), 'a caution');
  none(putty, diagnosis('rheumatoid-arthritis'), 'rheumatoid joints are not squeezed against putty');
  none(['thumb-to-tips'], caution('contracture') || diagnosis('burn', 'scleroderma'), 'quick work at a tight joint');
  none(moves, diagnosis('als', 'myasthenia'), 'the hand weakens with repeats');
  none(moves, diagnosis(...weakens) && low('strength', 1), 'a weak hand that weakens with use');
  none(['putty-pinch'], caution('thumb-arthritis') || detail('pain', 'thumb-base'), 'the thumb base hurts');
  // One page says one thing: no two answers of a group, and one amount for one thing.
  if (!draft.stopped) for (const clash of clashing(draft.lines)) say(false, `one page says both: ${clash}`);
  for (const clash of amountClashes(draft.lines)) say(false, clash);
  // Brisk work.
  const brisk = draft.lines.filter((line) => counted.includes(line.kind) && /quick|brisk|fast/i.test(line.text));
  say(brisk.length === 0 || grade('tone') === 3, 'brisk work with raised or untested tone');
  // Tone.
  none([...stretches, ...handWork], low('tone', 0), 'tone is 0');
  none(['slow-opening', 'open-hand-lean', 'slow-thumb-to-tips'], grade('tone') < 0, 'tone is untested');
  // Weight bearing.
  const lean = ['open-hand-lean'];
  none(lean, grade('tone') !== 1, 'tone is not 1');
  none(lean, !detail('wrist', 'sixty-or-more'), 'passive wrist extension is not known to be 60 degrees');
  none(lean, !caution('weight-bearing-cleared'), 'it was not cleared');
  none(lean, grade('touch') < 2, 'there is no protective touch');
  none(lean, grade('pain') < 2 || grade('skin') < 2, 'the hand hurts or swells');
  none(
    lean,
    caution(
      'shoulder-pain',
      'unstable-shoulder',
      'fracture-healing',
      'recent-hand-surgery',
      'contracture',
      'open-wound',
      'hot-joint',
      'arthritis-flare',
      'severe-osteoporosis',
      'fistula-arm',
      'disproportionate-pain',
    ),
    'a contraindication',
  );
  none(lean, diagnosis('cord-injury'), 'cord injury');
  none(lean, !caution('helper') && (grade('attention') < 2 || low('field', 1)), 'alone with neglect or poor attention');
  // Stretches.
  const neck = caution(
    'rheumatoid-neck',
    'neck-surgery-or-fracture',
    'osteoporosis',
    'severe-osteoporosis',
    'dizziness',
  );
  none(['neck-turns'], neck, 'neck or bones at risk');
  none(
    [...angled, 'slant-and-stand'],
    caution('rheumatoid-neck', 'neck-surgery-or-fracture', 'dizziness') || diagnosis('brain-injury'),
    'neck at risk, dizziness or concussion',
  );
  none(stretches, caution(...healing, 'cleared-active'), 'the hand heals');
  none(['table-slides', ...angled, 'slant-and-stand'], caution('shoulder-pain', 'unstable-shoulder'), 'the shoulder');
  // Weights, speed, standing.
  none(['weight-trial'], !detail('tremor', 'postural', 'action', 'end-point'), 'the type of tremor is unknown');
  none(
    ['weight-trial'],
    diagnosis('parkinson') || caution('shoulder-pain', 'unstable-shoulder', 'fragile-skin') || grade('fatigue') < 2,
    'a contraindication of weights',
  );
  none(['timed-short-lines'], grade('tone') < 3 || grade('pain') < 2 || diagnosis('ataxia'), 'speed is barred');
  none(['timed-short-lines'], low('shrinking', 2), 'writing shrinks');
  none(['standing-lines'], !caution('balance-checked'), 'balance was not checked');
  none(['raise-seat-footrest'], caution('wheelchair') && !caution('transfer-reviewed'), 'transfers were not reviewed');
  none(['sort-eyes-closed'], grade('touch') !== 2, 'touch is not 2');
  none(['sort-looking', 'sort-eyes-closed'], detail('touch', 'over-sensitive'), 'touch is over-sensitive');
  none(['thick-sleeve'], low('touch', 1), 'touch is 1 or less');
  none(['other-hand-writing'], !caution('hand-change-agreed'), 'the change of hand was not agreed');
  none(['dictation-first'], diagnosis('aphasia') || grade('language') < 2, 'language forbids dictation');
  none(['slant-and-stand'], caution('bifocals'), 'bifocals');
  none(handWork, caution('hot-joint', 'arthritis-flare'), 'a joint is hot');
  if (!caution('helper') && grade('attention') < 2)
    say(
      draft.lines.every((line) => line.kind !== 'exercise' && line.kind !== 'warm-up'),
      'exercise alone with attention below 2 or untested',
    );

  none([...putty, 'thumb-to-tips'], low('pain', 1), 'pain is 3 or more');
  none(
    ['thick-sleeve', 'smooth-sleeve', ...stretches, 'sort-looking', 'sort-eyes-closed'],
    low('skin', 1),
    'skin is 1 or less',
  );
  none(
    [...handWork, ...stretches, 'neck-turns', ...angled, 'dot-to-dot', ...putty],
    low('skin', 0),
    'the skin is broken or hot',
  );
  say(!low('skin', 0) || draft.lines.every((line) => line.kind !== 'writing'), 'writing with broken skin');
  none([...angled, 'neck-turns', 'slant-and-stand'], detail('neck', 'dizzy', 'arm-signs'), 'dizzy, or arm signs');
  none(
    [...angled, 'table-slides', 'weight-trial', 'open-hand-lean'],
    detail('arm-support', 'unstable'),
    'the shoulder is unstable',
  );
  none(
    [...angled, 'weight-trial'],
    detail('arm-support', 'painful') || detail('pain', 'shoulder'),
    'the shoulder hurts',
  );
  none(['weight-trial'], detail('tremor', 'rest') || low('skin', 2), 'rest tremor or fragile skin');
  none([...stretches, ...putty], caution('contracture'), 'a precaution of this arm');
  none(['open-hand-lean', ...putty], caution('fistula-arm'), 'a fistula in this arm');
  none(
    [...putty, 'thumb-to-tips', 'sort-looking', 'sort-eyes-closed'],
    caution('disproportionate-pain') || diagnosis('regional-pain'),
    'pain out of proportion',
  );
  none(
    [...putty, 'clips-to-fingertips', 'sort-eyes-closed'],
    caution('mouths-objects'),
    'things may end up in the mouth',
  );
  none(putty, grade('attention') < 2, 'attention is under 2 or untested');
  none(putty, caution('fragile-skin'), 'fragile skin');
  none(
    ['failing-letters', 'close-then-lift', 'three-heights', 'letter-ladder'],
    caution('other-script') || grade('motor-letters') === 3,
    'another script, or letters that are well made',
  );
  none(
    ['slant-and-stand'],
    detail('acuity', 'bifocal') ||
      low('arm-support', 1) ||
      caution('unstable-shoulder', 'rheumatoid-neck', 'neck-surgery-or-fracture'),
    'the slope would raise the chin or lose the arm',
  );
  none(
    [...stretches, ...handWork, ...putty],
    detail('tone', 'new-or-worse', 'painful'),
    'tone is new, worse or painful',
  );
  none([...putty, 'standing-lines', 'timed-short-lines'], low('fatigue', 1), 'marked fatigue');
  const cramp = diagnosis('dystonia') || reviewed.includes('writing-cramp');
  none([...putty, 'thumb-to-tips', 'timed-short-lines'], cramp, 'cramp with writing');
  none([...putty, 'sort-looking'], diagnosis('burn', 'scleroderma'), 'tight or fragile skin');
  none(['thumb-to-tips'], diagnosis('myasthenia', 'ataxia'), 'quick repeats are barred');
  none(['neck-turns'], diagnosis('rheumatoid-arthritis') || low('neck', 1), 'the neck is at risk');
  none([...angled, 'standing-lines'], low('trunk', 0), 'cannot sit without support');

  none(
    ['clips-to-fingertips', 'sort-eyes-closed', 'standing-lines', 'guess-and-compare'],
    grade('attention') < 2 && !caution('helper'),
    'attention is under 2 or untested, and nobody helps',
  );

  // CLINICAL-2, part b.
  const pressed = caution('nerve-compressed') || diagnosis('carpal-tunnel');
  const barred = caution(...healing) && !caution('cleared-active');
  say(
    !barred || draft.stopped || draft.lines.every((line) => !counted.includes(line.kind)),
    'active work with a hand that heals and is not cleared',
  );
  none(['pen-trial', 'weight-trial', 'hold-trial', 'wrist-driven-hold', 'gentle-range'], barred, 'the hand heals');
  none(
    [...putty, 'thumb-to-tips', 'weight-trial'],
    caution(...healing, 'cleared-active') && !caution('referrer-order'),
    'cleared is active only',
  );
  none([...putty, 'wrist-lifts', 'open-hand-lean', 'weight-trial'], pressed, 'a nerve is pressed');
  none(['forearm-heel-support'], pressed || diagnosis('nerve-injury'), 'nothing presses on the elbow');
  none([...putty, 'ribbed-barrel'], caution('thumb-arthritis') || detail('pain', 'thumb-base'), 'the thumb base hurts');
  none(['thumb-to-tips', 'slow-thumb-to-tips'], low('opposition', 0), 'the thumb meets no finger');
  none([...moves.slice(1), 'clips-to-fingertips'], low('in-hand', 0), 'nothing moves in the hand');
  none(moves, low('grasp', 0), 'the pen cannot be held');
  none(['wrist-lifts', ...putty], low('wrist', 0), 'the wrist cannot lift');
  none(['table-slides', ...angled], low('arm-support', 0), 'the arm is carried by a hand');
  none(['sort-looking', 'sort-eyes-closed'], low('touch', 0), 'nothing is felt');
  none(
    ['dot-to-dot', 'print-apart', 'large-slow-letters', 'anchor-and-pause'],
    low('tremor', 0),
    'the pen stays on no target',
  );
  const tenodesis =
    caution('tenodesis-grip') ||
    (diagnosis('cord-injury') && (low('grasp', 2) || low('opposition', 2)) && !caution('tenodesis-denied'));
  none([...stretches, 'weight-trial', ...moves], tenodesis, 'the wrist closes the hand');
  none(
    [...putty, ...moves, 'clips-to-fingertips', 'thumb-to-tips', 'weight-trial'],
    cramp,
    'cramp: no strengthening, no finger drill',
  );
  none(['putty-pinch', 'ribbed-barrel'], diagnosis('rheumatoid-arthritis'), 'no ribs, no resisted pinch');
  const flare = caution('arthritis-flare', 'hot-joint');
  say(!flare || draft.lines.every((line) => !['warm-up', 'exercise'].includes(line.kind)), 'drills in a flare');
  // Measured twice: the last counts.
  const read = input.measures.findLast((each) => each.code === 'legibility' && each.value !== null)?.value ?? 0;
  const legible = read >= 90;
  none(
    wobble.filter((code) => code !== 'print-apart'),
    legible && low('tremor', 2) && grade('low-legibility') < 0,
    'the words are read',
  );
  const numb = low('touch', 1);
  for (const line of draft.lines.filter((each) => counted.includes(each.kind))) {
    say(
      !numb || line.cautions.some((text) => text.includes('does not feel well')),
      `${line.item} does not speak of touch`,
    );
    say(!pressed || line.cautions.some((text) => text.includes('tingles')), `${line.item} does not speak of tingling`);
    say(line.tier <= draft.tier + 1, `${line.item} is tier ${line.tier} in a program of tier ${draft.tier}`);
  }
  if (diagnosis('amputation'))
    say(
      draft.lines.every((line) => !line.text.includes('first hand')),
      'speaks of the first hand',
    );

  // One page never says two things.
  const some = (codes: readonly string[]): string[] => codes.filter((code) => items.has(code));
  for (const group of [
    pens,
    postures,
    seats,
    ['flatter-slant', 'slant-and-stand'],
    ['sort-looking', 'sort-eyes-closed'],
    ['paper-in-the-middle', 'left-hand-set-up'],
  ])
    say(some(group).length <= 1, `two answers: ${some(group).join(', ')}`);
  say(!items.has('leave-the-wobble') || some(wobble).length === 0, 'leaves the wobble and drills it');
  say(draft.lines.filter((line) => line.kind === 'paper').length <= 1, 'two papers');

  // At least one line of writing where nothing bars it (b22).
  const ready = ['grasp', 'seating', 'skin', 'pain'].every((code) => grade(code) >= 1);
  if (ready && !draft.stopped && !barred && !low('hand-choice', 0))
    say(
      draft.lines.some((line) => line.kind === 'writing' && line.dose.minutes !== null),
      'no line of writing',
    );

  // Nothing rests on what was not tested.
  for (const line of draft.lines) {
    const item = byCode(rules.items).get(line.item ?? '');
    const missing = item?.dependsOn.find((code) => grade(code) < 0);
    say(missing === undefined, `${line.item} rests on ${missing}, which was not tested`);
    say(line.because !== '' && line.rule !== null, `${line.item} does not say why`);
    say(!shapes || ProgramLine.safeParse(line).success, `${line.item} has not the shape of a program line`);
  }

  // Limits.
  const minutes = (kinds: readonly string[]): number =>
    draft.lines
      .filter((line) => kinds.includes(line.kind))
      .reduce((sum, line) => sum + (line.dose.minutes ?? 0) * (line.dose.timesPerDay ?? 1), 0);
  const all = minutes(counted);
  // The caps of CLINICAL-2, part c, read from the answers.
  const rise = input.measures.findLast((each) => each.code === 'fatigue-rise' && each.value !== null)?.value;
  const byRise =
    rise === undefined || rise === null ? 18 : rise <= 1 ? 30 : rise <= 2 ? 24 : rise <= 3 ? 18 : rise < 6 ? 10 : 6;
  const caps = [
    detail('fatigue', 'not-recovered') ? 6 : byRise,
    low('fatigue', 0) ? 10 : low('fatigue', 1) ? 18 : low('fatigue', 2) ? 24 : 30,
    low('attention', 1) ? 15 : 30,
    diagnosis(...weakens) ? 20 : 30,
    cramp ? 20 : 30,
    pressed ? 24 : 30,
    flare ? 10 : 30,
  ];
  say(all <= Math.min(...caps), `${all} minutes a day, ${Math.min(...caps)} at most`);
  if (Math.min(byRise, low('fatigue', 0) ? 10 : 30) <= 10 || detail('fatigue', 'not-recovered'))
    say(
      draft.lines.every((line) => !['warm-up', 'exercise'].includes(line.kind) || stretches.includes(line.item ?? '')),
      'drills although writing tires markedly',
    );
  say(minutes(['setup', 'tool', 'paper', 'content', 'advice', 'refer']) === 0, 'equipment takes minutes');
  const day = draft.lines.filter((line) => counted.includes(line.kind) && line.item !== 'open-hand-lean');
  say(day.length <= 5, 'more than five items');
  const penHeld = grade('grasp') >= 1 && !low('hand-choice', 0);
  if (penHeld) {
    say(minutes(['writing']) * 2 >= all, `${minutes(['writing'])} of ${all} minutes are writing`);
    say(minutes(['warm-up']) * 5 <= all, `${minutes(['warm-up'])} of ${all} minutes are warm-up`);
  }
  say(new Set(draft.lines.map((line) => line.id)).size === draft.lines.length, 'a line stands twice');
  say(draft.stopped || checkProgram(draft.lines, input, rules).mayApprove, 'the draft could not be approved');
  return out;
}

export interface KnownDraft {
  /** The draft of the input, where the caller has made it already. */
  draft: Composition;
  /** Draft it twice and check the shape of each line: one case in ten is enough where there are many. */
  deep: boolean;
}

/** Everything wrong with the draft of one input, with what needs a second draft: same again, and one caution more. */
export function wrongWithInput(
  input: ProgramInput,
  extraCaution: string,
  rules: RuleTable,
  known: KnownDraft = { draft: compose(input, rules), deep: true },
): string[] {
  const { draft, deep } = known;
  const before = deep ? JSON.stringify(input) : '';
  const out = wrongWith(input, draft, rules, deep);
  if (deep && JSON.stringify(compose(input, rules)) !== JSON.stringify(draft))
    out.push('the same input gave another draft');
  if (deep && before !== JSON.stringify(input)) out.push('the input was changed');
  const more: ProgramInput = { ...input, cautions: [...new Set([...input.cautions, extraCaution])] };
  out.push(...wrongWith(more, compose(more, rules), rules, deep).map((each) => `${each} (with ${extraCaution} added)`));
  return out;
}
