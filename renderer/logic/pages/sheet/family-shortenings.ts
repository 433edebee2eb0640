/** How a crowded family page is cut to one sheet. */
import type { Program } from '../../../../db/types/program.ts';
import { goalOf, type PageInput, setupOf } from './page-facts.ts';
import { type FamilyOptions, goalBlocks, practiceLines, practiceSection, sawBlocks } from '../kinds/family-sections.ts';
import { setupInWords } from '../kinds/setup-section.ts';
import { changeSection, type Shortening } from './fit-sheets.ts';
import type { Block, Doc } from './packet.ts';
import type { Texts } from '../../texts/en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

const dropSection = (key: string) => (doc: Doc) => changeSection(doc, key, () => []);
/** Keeps the `n` steps that matter most, and says that there are more. */
const fewerSteps = (n: number, program: Program | null, t: Texts) => (doc: Doc) =>
  changeSection(doc, 'practice', (blocks) => {
    if (!program) return blocks;
    const kept = new Set(practiceLines(program, n).map((line) => line.title));
    const cut = blocks.map((block): Block => {
      if (block.kind !== 'steps' || block.items.length <= n) return block;
      return { ...block, items: block.items.filter((step) => kept.has(step.title)) };
    });
    const changed = cut.some((block, i) => block !== blocks[i]);
    return changed ? withMore(cut, t) : cut;
  });

/** The words under the practice lines begin with where the rest stands. */
function withMore(blocks: readonly Block[], t: Texts): Block[] {
  const last = blocks.at(-1);
  const { more } = t.family;
  if (last?.kind !== 'text') return [...blocks, { kind: 'text', text: more }];
  if (last.text.startsWith(more)) return [...blocks];
  return [...blocks.slice(0, -1), { ...last, text: `${more} ${last.text}` }];
}

/**
 * From least to most missed. Never left out: what was read, when to stop, whom to call, the next visit;
 * the client's own cautions only where the program sheet that carries them is named instead.
 */
export function shortenings(input: PageInput, program: Program | null, options: FamilyOptions, t: Texts): Shortening[] {
  const figure = setupOf(input);
  const f = t.family;
  const goal = goalOf(input);
  const inWords = figure ? setupInWords(figure, input.locale, t) : [f.setUp];
  return [
    { says: toldEnglish.printed.noBring, apply: dropSection('bring') },
    {
      says: toldEnglish.printed.noWordCount,
      apply: (doc) => changeSection(doc, 'goal', (blocks) => (goal ? goalBlocks(goal, false, f) : blocks)),
    },
    {
      says: toldEnglish.printed.noDrawing,
      against: 'height',
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'list', items: [...inWords, ...f.help] }]),
    },
    { says: toldEnglish.printed.fourLines, apply: fewerSteps(4, program, t) },
    { says: toldEnglish.printed.threeLines, apply: fewerSteps(3, program, t) },
    {
      says: toldEnglish.printed.noHelperAdvice,
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'text', text: inWords.join(' ') }]),
    },
    {
      says: toldEnglish.printed.noHand,
      apply: (doc) => changeSection(doc, 'practice', () => practiceSection(input, program, options, true, t).blocks),
    },
    {
      says: toldEnglish.printed.noStart,
      apply: (doc) => changeSection(doc, 'saw', () => sawBlocks(input, program, options.ownWords, false, f)),
    },
    { says: toldEnglish.printed.twoLines, apply: fewerSteps(2, program, t) },
    { says: toldEnglish.printed.noSeat, apply: dropSection('help') },
    {
      says: toldEnglish.printed.cautionsTogether,
      against: 'height',
      apply: (doc) =>
        changeSection(doc, 'stop', (blocks) => blocks.map((block) => withOwn(block, (own) => own.join(' ')))),
    },
    {
      says: toldEnglish.printed.noPaperPen,
      apply: (doc) =>
        changeSection(doc, 'practice', (blocks) => [
          ...blocks.filter((block) => block.kind === 'steps'),
          { kind: 'text', text: f.more },
        ]),
    },
    { says: toldEnglish.printed.noGoal, apply: dropSection('goal') },
    { says: toldEnglish.printed.picturesOut, against: 'height', apply: dropSection('pictures') },
    {
      says: toldEnglish.printed.practiceElsewhere,
      apply: (doc) => ({
        ...doc,
        sections: doc.sections.map((section) =>
          section.key === 'practice' && section.blocks.some((block) => block.kind === 'steps')
            ? { ...section, title: '', blocks: [{ kind: 'text', text: f.elsewhere }] }
            : section,
        ),
      }),
    },
    {
      says: toldEnglish.printed.cautionsElsewhere,
      apply: (doc) =>
        changeSection(doc, 'stop', (blocks) => blocks.map((block) => withOwn(block, () => f.careElsewhere))),
    },
  ];
}

/** The client's own cautions, between the first and the last two lines, as one. */
function withOwn(block: Block, one: (own: string[]) => string): Block {
  if (block.kind !== 'stop' || block.items.length < 4) return block;
  return { ...block, items: [block.items[0]!, one(block.items.slice(1, -2)), ...block.items.slice(-2)] };
}
