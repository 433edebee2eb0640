/** Part of a text on a page; `english` where it is English on a page of another language. */
export interface TextPart {
  text: string;
  english: boolean;
}

/** A text cut where English words stand in it; a title may begin small inside a sentence. */
export function englishParts(text: string, english: readonly string[]): TextPart[] {
  const small = text.toLowerCase();
  for (const words of english) {
    const at = small.indexOf(words.toLowerCase());
    if (at < 0 || words === '') continue;
    const [before, after] = [text.slice(0, at), text.slice(at + words.length)];
    return [
      ...(before ? englishParts(before, english) : []),
      { text: text.slice(at, at + words.length), english: true },
      ...(after ? englishParts(after, english) : []),
    ];
  }
  return [{ text, english: false }];
}
