/**
 * The shipped intake screen, read and checked once.
 * Shapes are in db/types/items.ts, so that pure logic can name them.
 */
import type { Threshold } from '../../types/rules.ts';
import { screenThresholds, screenWith, type ScreenTables } from './screen-thresholds.ts';
import { ItemTable, RedFlagTable, SetupTable } from '../../types/items.ts';
import itemsJson from './items.json' with { type: 'json' };
import redFlagsJson from './red-flags.json' with { type: 'json' };
import setupJson from './setup.json' with { type: 'json' };

export { ItemTable, RedFlagTable, SetupTable };

/** As the files have it: sentences still have gaps for the numbers in use. */
const asWritten = {
  intake: ItemTable.parse(itemsJson),
  redFlagTable: RedFlagTable.parse(redFlagsJson),
  setup: SetupTable.parse(setupJson),
};

/** The numbers of the screen as rows of the threshold table. */
export const shippedScreenThresholds = screenThresholds(asWritten);

/** The screen with the values of a threshold table. */
export const screenTables = (thresholds: readonly Threshold[]): ScreenTables => screenWith(asWritten, thresholds);

const shipped = screenTables([]);
export const shippedItems: ItemTable = shipped.intake;
export const shippedRedFlags: RedFlagTable = shipped.redFlagTable;
export const shippedSetup: SetupTable = shipped.setup;
