/**
 * The shipped intake screen, read and checked once.
 * Shapes are in db/types/items.ts, so that pure logic can name them.
 */
import { ItemTable, RedFlagTable, SetupTable } from '../types/items.ts';
import itemsJson from './items.json' with { type: 'json' };
import redFlagsJson from './red-flags.json' with { type: 'json' };
import setupJson from './setup.json' with { type: 'json' };

export { ItemTable, RedFlagTable, SetupTable };

export const shippedItems: ItemTable = ItemTable.parse(itemsJson);
export const shippedRedFlags: RedFlagTable = RedFlagTable.parse(redFlagsJson);
export const shippedSetup: SetupTable = SetupTable.parse(setupJson);
