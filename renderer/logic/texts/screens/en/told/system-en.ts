/** What the system's own dialogs and menu say. */
export const systemEn = {
  notSavedYet: 'Something you typed is not saved yet.',
  stayAndLook: 'Stay, and look at the message at the top of the window. What was saved before is safe.',
  stay: 'Stay',
  closeWithoutIt: 'Close without it',
  cannotStart: 'Fairhand cannot start',
  cannotWriteInto: (folder: string) =>
    `It cannot write into the caseload folder ${folder}. Nothing was changed. Choose another folder with --data, or ask for write permission.`,
  view: 'View',
  window: 'Window',
  about: {
    window: 'Window',
    browser: 'an installed browser, without network',
    system: 'System',
    ruleTable: 'Rule table',
    measures: 'Measures of pages',
    change: 'Change model',
    tables: 'Tables of the caseload',
  },
};
