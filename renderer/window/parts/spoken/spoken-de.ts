import printed from '../../../../db/rules/texts/de.json' with { type: 'json' };
import rows from '../../../../db/rules/texts/screens/de.json' with { type: 'json' };
import { screensDe } from '../../../logic/texts/screens/de/screens-de.ts';
import { refusalsDe } from '../../../logic/texts/screens/de/told/refusals-de.ts';
import { spoken } from './spoken.ts';

export const spokenDe = spoken(screensDe, refusalsDe, rows, printed);
