/** See desktop.js. */
import type ts from 'typescript';

export function compileDesktop(root: string): Promise<void>;
export function plainJavaScript(
  compiler: Pick<typeof ts, 'transpileModule' | 'ModuleKind' | 'ScriptTarget'>,
  text: string,
): string;
