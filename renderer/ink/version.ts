/** Method of every measure of ink; raise it when a value may change (tests/ink/snapshots holds each version). */
export const INK_METHOD = 'ink-3';
