/** What is printed on a practice page to write on. */
export type RulingKind =
  'squares' | 'dashed' | 'ruled' | 'plain' | 'guide' | 'boxes' | 'signature' | 'dots' | 'lean' | 'check';
