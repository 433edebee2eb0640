import { describe, expect, test } from 'vitest';
import { shippedItems, shippedRedFlags } from '../../../db/rules/screen/items-schema.ts';

const items = shippedItems.items;
const codes = items.map((item) => item.code);
const flagCodes = shippedRedFlags.flags.map((flag) => flag.code);

describe('the shipped screen holds together', () => {
  test('codes are unique and eight items are short', () => {
    expect(new Set(codes).size).toBe(codes.length);
    expect(new Set(flagCodes).size).toBe(flagCodes.length);
    expect(items.filter((item) => item.short)).toHaveLength(8);
  });

  test('every long item can open, and opens on items that exist', () => {
    for (const item of items) {
      expect(item.short || item.opensWhen.length > 0, item.code).toBe(true);
      for (const condition of item.opensWhen)
        if (condition.when === 'grade-at-most') expect(codes).toContain(condition.item);
    }
  });

  test('flags from answers name items, details and flags that exist, and can be met', () => {
    for (const rule of shippedRedFlags.fromAnswers) {
      const item = items.find((each) => each.code === rule.item);
      expect(flagCodes).toContain(rule.flag);
      const details = item?.detail?.choices.map((choice) => choice.code) ?? [];
      for (const detail of rule.details) expect(details).toContain(detail);
      expect(
        rule.gradeAtMost !== null ||
          rule.ratingAtLeast !== null ||
          rule.riseAtLeast !== null ||
          rule.details.length > 0,
      ).toBe(true);
    }
  });

  test('a flag that is not asked arises from an answer or from retests', () => {
    const arising = new Set([...shippedRedFlags.fromAnswers.map((rule) => rule.flag), shippedRedFlags.steadyLoss.flag]);
    for (const flag of shippedRedFlags.flags) if (!flag.asked) expect(arising).toContain(flag.code);
  });

  test('every emergency says to stop or set aside first', () => {
    for (const flag of shippedRedFlags.flags) {
      if (flag.grade === 'emergency' && flag.path === 'medical') expect(flag.doNow[0]).toBe('Stop everything.');
    }
  });

  test('areas of work need items that exist', () => {
    for (const area of shippedItems.mayStart) for (const need of area.needs) expect(codes).toContain(need.item);
  });
});
