import type { Told } from '../../en/screens-en.ts';

/** In German. What the system's own dialogs and menu say. */
export const systemDe: Told['system'] = {
  notSavedYet: 'Etwas, das Sie getippt haben, ist noch nicht gespeichert.',
  stayAndLook: 'Bleiben Sie und sehen Sie die Meldung oben im Fenster an. Was vorher gespeichert war, ist sicher.',
  stay: 'Bleiben',
  closeWithoutIt: 'Ohne Speichern schließen',
  cannotStart: 'Fairhand kann nicht starten',
  cannotWriteInto: (folder) =>
    `Es kann nicht in den Ordner der Kartei ${folder} schreiben. Nichts wurde geändert. Wählen Sie mit --data einen anderen Ordner, oder erbitten Sie das Schreibrecht.`,
  view: 'Ansicht',
  window: 'Fenster',
  about: {
    window: 'Fenster',
    browser: 'ein installierter Browser, ohne Netz',
    system: 'System',
    ruleTable: 'Regeltabelle',
    measures: 'Messung der Blätter',
    change: 'Modell der Änderung',
    tables: 'Tabellen der Kartei',
  },
};
