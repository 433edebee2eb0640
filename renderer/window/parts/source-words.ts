import type { SourceTag } from '../../../db/types/common.ts';

export const sourceWords: Record<SourceTag, string> = {
  published: 'published',
  'published-from-memory': 'published, cited from memory',
  'common-practice': 'common practice, no source',
  'from-memory': 'from memory',
  computed: 'computed here',
  clinic: 'this clinic',
};
