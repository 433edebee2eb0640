/** How a crowded family page is cut to one sheet. */
import type { Program } from '../../db/types/program.ts';
import { type PageInput, setupOf } from './facts.ts';
import { type FamilyOptions, practiceSection, sawLines, setupInWords } from './family-sections.ts';
import { changeSection, type Shortening } from './fit.ts';
import type { Block, Doc } from './model.ts';
import type { Texts } from './texts.ts';

const dropSection = (key: string) => (doc: Doc) => changeSection(doc, key, () => []);
/** Keeps `n` steps, and says that there are more. */
const fewerSteps = (n: number, t: Texts) => (doc: Doc) =>
  changeSection(doc, 'practice', (blocks) =>
    blocks
      .flatMap((block): Block[] => {
        if (block.kind !== 'steps' || block.items.length <= n) return [block];
        return [{ ...block, items: block.items.slice(0, n) }];
      })
      .map((block): Block =>
        block.kind === 'text' && !block.text.startsWith(t.family.more)
          ? { ...block, text: `${t.family.more} ${block.text}` }
          : block,
      ),
  );

/** From least to most missed. Never left out: what was read, when to stop, whom to call, the next visit. */
export function shortenings(input: PageInput, program: Program | null, options: FamilyOptions, t: Texts): Shortening[] {
  const figure = setupOf(input);
  const f = t.family;
  const inWords = figure ? setupInWords(figure, input.locale, t) : [f.setUp];
  return [
    { says: 'What to bring was left out.', apply: dropSection('bring') },
    {
      says: 'The drawing of chair and table was left out; its heights are in the text.',
      against: 'height',
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'list', items: [...inWords, ...f.help] }]),
    },
    { says: 'Four practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(4, t) },
    {
      says: 'What it was at the start was left out.',
      apply: (doc) =>
        changeSection(doc, 'saw', (blocks) => {
          const short = sawLines(input, program, false, f)[0] ?? '';
          return [{ kind: 'text', text: short }, ...blocks.slice(1)];
        }),
    },
    { says: 'Three practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(3, t) },
    {
      says: 'Advice for helpers was left out; chair and table are still there.',
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'text', text: inWords.join(' ') }]),
    },
    {
      says: 'Which hand, glasses and what to do after a missed day were left out.',
      apply: (doc) => changeSection(doc, 'practice', () => practiceSection(input, program, options, true, t).blocks),
    },
    { says: 'Three practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(3, t) },
    { says: 'Two practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(2, t) },
    { says: 'Chair and table were left out.', apply: dropSection('help') },
    // The therapist chose the pictures: they go late.
    { says: 'The pictures were left out.', against: 'height', apply: dropSection('pictures') },
    { says: 'The goal was left out.', apply: dropSection('goal') },
    {
      says: 'Paper, pen and how often were left out; they are on the home program sheet.',
      apply: (doc) =>
        changeSection(doc, 'practice', (blocks) =>
          blocks.map((block): Block => (block.kind === 'text' ? { ...block, text: f.more } : block)),
        ),
    },
  ];
}
