/** What a command is: a name, a key, a condition and what it does to the window's state (`Host`). */
export interface CommandOf<Host> {
  readonly id: string;
  readonly label: string;
  /** As shown: 'Ctrl+K', 'Alt+1', 'n'. Single letters act only while no text field has the focus. */
  readonly key?: string;
  readonly when?: (host: Host) => boolean;
  readonly run: (host: Host) => void;
}
