import { InkRefusal, INK_LIMITS } from './ink-refusal.ts';

/** What a reader of XML hears. Names come without their namespace prefix. */
export interface XmlListener {
  open: (name: string, attributes: ReadonlyMap<string, string>) => void;
  text: (text: string) => void;
  close: (name: string) => void;
}

const NAME = /[A-Za-z_:\u00c0-\uffff][-A-Za-z0-9._:\u00b7\u00c0-\uffff]*/y;
const SPACE = /[ \t\r\n]*/y;
/** Characters that XML 1.0 forbids. */
// eslint-disable-next-line no-control-regex
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/;
const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

const broken = (): InkRefusal => new InkRefusal('not-well-formed');

const isCharacter = (code: number): boolean =>
  code === 9 ||
  code === 10 ||
  code === 13 ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  (code >= 0x10000 && code <= 0x10ffff);

/** Text with its five entities and its character numbers put in. */
function unescaped(text: string): string {
  if (!text.includes('&')) return text;
  return text.replaceAll(/&([^;&]{0,10};?)/g, (_, inside: string) => {
    if (!inside.endsWith(';')) throw broken();
    const name = inside.slice(0, -1);
    const number = /^#(?:x([0-9a-fA-F]{1,6})|([0-9]{1,7}))$/.exec(name);
    if (number) {
      const code = number[1] === undefined ? Number(number[2]) : Number.parseInt(number[1], 16);
      if (!isCharacter(code)) throw broken();
      return String.fromCodePoint(code);
    }
    const known = Object.hasOwn(ENTITIES, name) ? ENTITIES[name] : undefined;
    // An entity that the file would have to declare: declared ones are refused with the DTD.
    if (known === undefined) throw new InkRefusal(/^[A-Za-z_][\w.-]*$/.test(name) ? 'dtd' : 'not-well-formed');
    return known;
  });
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);

/**
 * Reads XML 1.0 strictly, without document types and entities of its own.
 * @throws InkRefusal when it is not well-formed, declares a DTD, or lies deeper than 32 levels
 */
export function readXml(source: string, listener: XmlListener): void {
  const text = source.startsWith('\ufeff') ? source.slice(1) : source;
  if (FORBIDDEN.test(text)) throw broken();
  const open: string[] = [];
  let hasRoot = false;
  let at = 0;

  const skipSpace = (): boolean => {
    SPACE.lastIndex = at;
    SPACE.test(text);
    const moved = SPACE.lastIndex > at;
    at = SPACE.lastIndex;
    return moved;
  };
  const name = (): string => {
    NAME.lastIndex = at;
    const found = NAME.exec(text);
    if (!found) throw broken();
    at = NAME.lastIndex;
    return found[0];
  };
  const until = (end: string): string => {
    const found = text.indexOf(end, at);
    if (found < 0) throw broken();
    const inside = text.slice(at, found);
    at = found + end.length;
    return inside;
  };
  const readAttributes = (): Map<string, string> => {
    const attributes = new Map<string, string>();
    for (;;) {
      const spaced = skipSpace();
      const next = text[at];
      if (next === '>' || next === '/') return attributes;
      if (!spaced) throw broken();
      const key = name();
      skipSpace();
      if (text[at++] !== '=') throw broken();
      skipSpace();
      const quote = text[at++];
      if (quote !== '"' && quote !== "'") throw broken();
      const value = until(quote);
      if (value.includes('<') || attributes.has(key)) throw broken();
      attributes.set(key, unescaped(value.replaceAll(/[\t\r\n]/g, ' ')));
    }
  };
  const readTag = (): void => {
    const tag = name();
    if (open.length === 0 && hasRoot) throw broken();
    hasRoot = true;
    const attributes = readAttributes();
    const isEmpty = text[at] === '/';
    if (isEmpty) at += 1;
    if (text[at++] !== '>') throw broken();
    if (open.length >= INK_LIMITS.depth) throw new InkRefusal('too-deep');
    listener.open(localName(tag), attributes);
    if (isEmpty) listener.close(localName(tag));
    else open.push(tag);
  };
  const readMarkup = (): void => {
    if (text.startsWith('<!--', at)) {
      at += 4;
      if (until('--').length < 0 || text[at++] !== '>') throw broken();
    } else if (text.startsWith('<![CDATA[', at)) {
      if (open.length === 0) throw broken();
      at += 9;
      listener.text(until(']]>'));
    } else if (text.startsWith('<!', at)) {
      throw new InkRefusal(
        /^<!(DOCTYPE|ENTITY|ELEMENT|ATTLIST|NOTATION)/.test(text.slice(at, at + 12)) ? 'dtd' : 'not-well-formed',
      );
    } else if (text.startsWith('<?', at)) {
      const isFirst = at === 0;
      at += 2;
      const target = name();
      if (target.toLowerCase() === 'xml' && !isFirst) throw broken();
      until('?>');
    } else if (text.startsWith('</', at)) {
      at += 2;
      const tag = name();
      skipSpace();
      if (text[at++] !== '>' || open.pop() !== tag) throw broken();
      listener.close(localName(tag));
    } else {
      at += 1;
      readTag();
    }
  };

  while (at < text.length) {
    const next = text.indexOf('<', at);
    const between = text.slice(at, next < 0 ? text.length : next);
    if (between !== '') {
      if (open.length === 0 && /[^ \t\r\n]/.test(between)) throw broken();
      if (between.includes(']]>')) throw broken();
      if (open.length > 0) listener.text(unescaped(between));
    }
    if (next < 0) break;
    at = next;
    readMarkup();
  }
  if (!hasRoot || open.length > 0) throw broken();
}
