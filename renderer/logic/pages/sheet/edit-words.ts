import { paginate } from './break-sheets.ts';
import type { Doc, DocSheet, Packet, Section } from './packet.ts';

/** Called with where the words stand in a sheet, starting with the sheet's index, and the new words. */
export type EditWords = (path: (string | number)[], text: string) => void;

/** A copy of plain data with the text at `path` replaced; an empty text takes a list item away. */
export function withText<T>(data: T, path: readonly (string | number)[], text: string): T {
  const [key, ...rest] = path;
  if (key === undefined) return text as T;
  if (Array.isArray(data)) {
    const index = Number(key);
    if (rest.length === 0 && text === '' && typeof data[index] === 'string')
      return data.filter((_, i) => i !== index) as T;
    return data.map((item: unknown, i) => (i === index ? withText(item, rest, text) : item)) as T;
  }
  const object = data as Record<string, unknown>;
  return { ...object, [key]: withText(object[String(key)], rest, text) } as T;
}

/** The page that sheets were broken from. */
function joinSheets(sheets: readonly DocSheet[]): Doc {
  const sections: Section[] = [];
  for (const sheet of sheets)
    for (const section of sheet.sections) {
      const open = sections.find((s) => s.key === section.key);
      if (open) open.blocks = [...open.blocks, ...section.blocks];
      else sections.push({ ...section });
    }
  const { sheet, language, pt, title, lead, foot } = sheets[0]!;
  return { sheet, ...(language && { language }), pt, title, lead, foot, sections };
}

/** Breaks a packet's text pages anew after an edit; drawings and other documents in it stay as they are. */
export function repaginate(packet: Packet): Packet {
  const sheets = [];
  for (let i = 0; i < packet.sheets.length;) {
    const first = packet.sheets[i]!;
    if (first.type !== 'doc') {
      sheets.push(first);
      i++;
      continue;
    }
    const group = packet.sheets.slice(i, i + first.pages) as DocSheet[];
    sheets.push(...paginate(joinSheets(group)));
    i += group.length;
  }
  return { ...packet, sheets };
}
