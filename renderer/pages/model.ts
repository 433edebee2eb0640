import type { PracticeSheet } from './practice.ts';
export type SheetModel = PracticeSheet;
