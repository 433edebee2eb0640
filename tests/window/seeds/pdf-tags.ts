/** What a screen reader finds in a PDF: title, language, tags, alternative texts (pdf.js reads them). */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PdfTags {
  title: string;
  language: string;
  tagged: boolean;
  /** Roles of the structure tree of all pages, in order: H1, P, L, Table, Figure … */
  roles: string[];
  /** Alternative text of each figure; '' where one has none. */
  figures: string[];
  /** Elements with a language of their own: role and code. */
  languages: string[];
}

interface Node {
  role?: string;
  alt?: string;
  lang?: string;
  children?: Node[];
}

export async function pdfTags(bytes: Uint8Array): Promise<PdfTags> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false }).promise;
  const info = (await pdf.getMetadata()).info as { Title?: string; Language?: string };
  const mark = (await pdf.getMarkInfo()) as { Marked?: boolean } | null;
  const roles: string[] = [];
  const figures: string[] = [];
  const languages: string[] = [];
  const walk = (node: Node): void => {
    if (node.role) roles.push(node.role);
    if (node.lang) languages.push(`${node.role ?? ''} ${node.lang}`);
    if (node.role === 'Figure') figures.push(node.alt ?? '');
    node.children?.forEach(walk);
  };
  for (let page = 1; page <= pdf.numPages; page++)
    walk(((await (await pdf.getPage(page)).getStructTree()) ?? {}) as unknown as Node);
  await pdf.destroy();
  const of = { title: info.Title ?? '', language: info.Language ?? '', tagged: mark?.Marked ?? false };
  return { ...of, roles, figures, languages };
}
