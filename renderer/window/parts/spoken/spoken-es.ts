import printed from '../../../../db/rules/texts/es.json' with { type: 'json' };
import rows from '../../../../db/rules/texts/screens/es.json' with { type: 'json' };
import { screensEs } from '../../../logic/texts/screens/es/screens-es.ts';
import { refusalsEs } from '../../../logic/texts/screens/es/told/refusals-es.ts';
import { spoken } from './spoken.ts';

export const spokenEs = spoken(screensEs, refusalsEs, rows, printed);
