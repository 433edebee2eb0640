/** Lists that still have rows to show; one of them gets a turn with each picture the screen draws. */
const waiting = new Set<() => void>();
let frame = 0;

function takeTurn(): void {
  const [first] = waiting;
  if (first) {
    waiting.delete(first);
    first();
  }
  frame = waiting.size > 0 ? requestAnimationFrame(takeTurn) : 0;
}

function askForTurn(turn: () => void): () => void {
  waiting.add(turn);
  frame ||= requestAnimationFrame(takeTurn);
  return () => void waiting.delete(turn);
}

/**
 * How much of a long list is shown: none at first, then `aTurn` rows more at each turn, so that no single task of the
 * window takes as long as the whole list. What has come stays, also when the list changes.
 * Called while a component is made.
 */
export function inTurns(aTurn: number, rows: () => number): { readonly shown: number } {
  let shown = $state(0);
  $effect(() => (shown < rows() ? askForTurn(() => (shown += aTurn)) : undefined));
  return {
    get shown() {
      return shown;
    },
  };
}
