import type { LibraryItem } from '../../../../db/types/rules.ts';
import { hazardsInWords } from './hazard-words.ts';

type Said = Pick<LibraryItem, 'code' | 'kind' | 'tier' | 'title' | 'text'>;
type More = Partial<Pick<LibraryItem, 'dose' | 'dependsOn' | 'hazards' | 'cautions'>>;

/** An item of the clinic's or the therapist's own: one wording, judged by what its words give away unless more is said. */
export const ownItem = ({ code, kind, tier, title, text }: Said, more: More = {}): LibraryItem => ({
  code,
  kind,
  tier,
  title,
  text,
  dose: '',
  dependsOn: [],
  hazards: more.hazards ?? hazardsInWords(`${title}. ${text}`),
  cautions: [],
  drawing: null,
  next: null,
  versions: [],
  additions: [],
  onTier: 'own',
  occasion: null,
  opening: false,
  ownPlace: false,
  penInHand: false,
  holdsPen: false,
  source: 'clinic',
  sourceNote: '',
  ...more,
});
