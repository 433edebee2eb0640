import type { toldRecordEn } from '../../en/told/told-record-en.ts';

export const toldRecordDe: typeof toldRecordEn = {};
