import type { toldClinicEn } from '../../en/told/told-clinic-en.ts';
import { flagsToldEs } from './flags-es.ts';

export const toldClinicEs: typeof toldClinicEn = { flags: flagsToldEs };
