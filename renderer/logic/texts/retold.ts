/** Sentences that a record keeps in English (why a line is in a program, what a page warns of), told in another language. */
import type { TableWords } from './table-words.ts';

type Sentences = Readonly<Record<string, unknown>>;
type Tell = (...values: string[]) => string;

interface Form {
  english: RegExp;
  /** Place in the sentence of each value. */
  order: number[];
  tell: Tell;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The English sentence as a pattern that gives its values back. */
function formOf(english: Tell, tell: Tell): Form {
  const marks = Array.from({ length: english.length }, (_, i) => `\uE000${i}\uE001`);
  const order: number[] = [];
  const pattern = escaped(english(...marks)).replace(/\uE000(\d)\uE001/g, (_, at: string) => {
    order.push(Number(at));
    return '(.+)';
  });
  return { english: new RegExp(`^${pattern}$`, 's'), order, tell };
}

/**
 * @param english sentences whose words do not change with their values
 * @param other the same in another language
 * @param table words of the rule table, which stand alone, within a sentence, or one behind the other
 */
export function retold(english: Sentences, other: Sentences, table: TableWords): TableWords {
  const whole = new Map<string, string>();
  const forms: Form[] = [];
  for (const [key, words] of Object.entries(english)) {
    const told = other[key];
    if (typeof words === 'string') whole.set(words, told as string);
    else forms.push(formOf(words as Tell, told as Tell));
  }
  // The longest words first: what a shorter form would take for a value stands in them.
  forms.sort((a, b) => b.english.source.length - a.english.source.length);
  const quoted = (text: string): string => text.replace(/"([^"]+)"/g, (_, name: string) => `"${tell(name)}"`);

  const one = (text: string): string => {
    const known = whole.get(text) ?? table(text);
    if (known !== text) return known;
    for (const form of forms) {
      const found = form.english.exec(text);
      if (!found) continue;
      const values: string[] = [];
      form.order.forEach((at, i) => (values[at] = tell(found[i + 1]!)));
      return form.tell(...values);
    }
    return text;
  };

  /** Sentences of the table stand one behind the other: each as long as it is known. */
  function tell(text: string): string {
    const known = one(text);
    if (known !== text) return known;
    const parts = text.split(/(?<=[.!?:”"]) (?=\S)/);
    if (parts.length < 2) return quoted(text);
    const said: string[] = [];
    for (let from = 0; from < parts.length;) {
      let to = parts.length;
      while (to > from + 1 && one(parts.slice(from, to).join(' ')) === parts.slice(from, to).join(' ')) to -= 1;
      said.push(quoted(one(parts.slice(from, to).join(' '))));
      from = to;
    }
    return said.join(' ');
  }
  const cache = new Map<string, string>();
  return (text) => {
    if (text === '') return text;
    const kept = cache.get(text);
    if (kept !== undefined) return kept;
    const told = tell(text);
    if (cache.size > 4000) cache.clear();
    cache.set(text, told);
    return told;
  };
}
