/** See desktop.js. */
export function compileDesktop(root: string): Promise<void>;
export function plainJavaScript(ts: typeof import('typescript'), text: string): string;
