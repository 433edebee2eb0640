/** What the list of clients sorts by. */
interface ClientRow {
  readonly name: string;
  readonly code: string;
  readonly diagnoses: string;
  readonly visits: number;
  readonly lastVisit: string | null;
}

export type ClientColumn = 'name' | 'code' | 'diagnoses' | 'visits' | 'lastVisit';

/** Clients in the order of a column; names by the words of the language, clients without a visit last. */
export function sortClients<C extends ClientRow>(clients: readonly C[], column: ClientColumn, down: boolean): C[] {
  const words = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });
  const way = down ? -1 : 1;
  const compare = (a: C, b: C): number => {
    if (column === 'visits') return way * (a.visits - b.visits);
    const [left, right] = [a[column] ?? '', b[column] ?? ''];
    if (!left || !right) return left ? -1 : right ? 1 : 0;
    return way * words.compare(left, right);
  };
  return [...clients].sort((a, b) => compare(a, b) || words.compare(a.name, b.name));
}
