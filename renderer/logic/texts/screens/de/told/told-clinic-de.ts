import type { toldClinicEn } from '../../en/told/told-clinic-en.ts';
import { flagsToldDe } from './flags-de.ts';

export const toldClinicDe: typeof toldClinicEn = { flags: flagsToldDe };
