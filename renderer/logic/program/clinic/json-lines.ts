/** In which line of a JSON text a value stands, so that a refused rule file can be mended with an editor. */

type Path = readonly (string | number)[];

/**
 * @param text JSON that parses
 * @param path keys and indexes from the top
 * @returns line counted from 1; the line of the nearest value above it where the path itself is not there
 */
export function lineOfPath(text: string, path: Path): number {
  let at = 0;
  let found = 0;
  const space = (): void => {
    while (/\s/.test(text.charAt(at))) at += 1;
  };
  const string = (): string => {
    const from = at;
    at += 1;
    while (text.charAt(at) !== '"') at += text.charAt(at) === '\\' ? 2 : 1;
    at += 1;
    return JSON.parse(text.slice(from, at)) as string;
  };
  /** Walks one value; `rest` is what is still to be found in it, null when it lies off the path. */
  const value = (rest: Path | null): void => {
    space();
    if (rest !== null) found = at;
    const open = text.charAt(at);
    if (open === '"') {
      string();
      return;
    }
    if (open !== '{' && open !== '[') {
      while (at < text.length && !/[,\]}\s]/.test(text.charAt(at))) at += 1;
      return;
    }
    at += 1;
    space();
    for (let index = 0; text.charAt(at) !== '}' && text.charAt(at) !== ']'; index += 1) {
      let step: string | number = index;
      if (open === '{') {
        step = string();
        space();
        at += 1;
      }
      value(rest !== null && rest.length > 0 && String(rest[0]) === String(step) ? rest.slice(1) : null);
      space();
      if (text.charAt(at) === ',') at += 1;
      space();
    }
    at += 1;
  };
  value(path);
  return text.slice(0, found).split('\n').length;
}

/** Levels of JSON that are read. What Fairhand writes has fewer than twenty. */
const DEEPEST_JSON = 100;

/** True when JSON text is nested deeper than that: its readers call themselves for every level. */
export function isTooDeep(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    if (quoted) {
      if (char === 0x5c) at += 1;
      else if (char === 0x22) quoted = false;
    } else if (char === 0x22) quoted = true;
    else if (char === 0x5b || char === 0x7b) {
      depth += 1;
      if (depth > DEEPEST_JSON) return true;
    } else if (char === 0x5d || char === 0x7d) depth -= 1;
  }
  return false;
}

/** Line of a syntax error as the parser tells it ("at position 17", "line 3 column 4"); 1 where it does not say. */
export function lineOfSyntaxError(text: string, message: string): number {
  const line = /line (\d+)/.exec(message)?.[1];
  if (line) return Number(line);
  const position = /position (\d+)/.exec(message)?.[1];
  return position ? text.slice(0, Number(position)).split('\n').length : 1;
}
