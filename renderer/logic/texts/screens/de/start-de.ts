import type { ScreenTexts } from '../en/screens-en.ts';

/** In German. First start, unlocking, restoring, the recovery sheet. */
export const startDe: ScreenTexts['start'] = {
  recoverySheet: 'Wiederherstellungsblatt',
  thisKeyOpensCaseload:
    'Dieser Schlüssel öffnet die Kartei einmal, wenn die Passphrase verloren ist: Wählen Sie beim Entsperren „Passphrase verloren“, setzen Sie eine neue Passphrase, und ein neues Blatt tritt an die Stelle von diesem. Er wird nur jetzt gezeigt. Drucken Sie ihn oder schreiben Sie ihn auf, und schließen Sie ihn getrennt von diesem Computer ein. Groß und klein, Striche und Leerzeichen sind gleich.',
  withoutPassphraseAndWithout:
    'Ohne die Passphrase und ohne diesen Schlüssel kann niemand die Kartei öffnen, weder Sie noch wir.',
  print: 'Drucken',
  readingBackups: 'Die Sicherungen werden gelesen …',
  bringingBackupIn: 'Die Sicherung wird geholt …',
  readingWhatCanStill: 'Was noch lesbar ist, wird gelesen …',
  takingCopyIntoUse: 'Die Kopie wird in Gebrauch genommen …',
  copyIsInUse: (keptAs) => `Die Kopie ist in Gebrauch. Was vorher da war, bleibt als ${keptAs}.`,
  restoringAndComparing: 'Wird wiederhergestellt und verglichen …',
  restoredWhatWasThere: (keptAs) => `Wiederhergestellt. Was vorher da war, bleibt als ${keptAs}.`,
  restored: 'Wiederhergestellt.',
  restoreBackup: 'Sicherung wiederherstellen',
  caseloadFileIsDamaged:
    'Die Datei der Kartei ist beschädigt. Sie wurde nicht verändert. Nehmen Sie die neueste Sicherung, die sich ganz öffnen ließ; was seitdem erfasst wurde, ist vielleicht aus der beschädigten Datei zu lesen.',
  nothingIsDeletedCaseload:
    'Nichts wird gelöscht: Eine Kartei, die schon hier ist, wird unter neuem Namen beiseitegelegt. Eine Sicherung bringt ihren Schlüssel mit: Sie öffnet mit der Passphrase und dem Wiederherstellungsblatt ihres Tages. Wurde eines davon seitdem geändert, weil jemand es kennen könnte, ändern Sie es wieder.',
  passphraseOfBackup: 'Passphrase der Sicherung',
  recoveryKeyWorksAs: 'Der Wiederherstellungsschlüssel geht auch.',
  showBackups: 'Sicherungen zeigen',
  bringBackupFileFrom: 'Sicherung von anderswo holen …',
  thereIsNoBackup: 'In diesem Ordner ist keine Sicherung. Holen Sie eine vom USB-Stick oder vom anderen Computer.',
  made: 'Gemacht',
  clients: 'Klienten',
  lastVisit: 'Letzter Termin',
  newestThatOpens: 'neueste, die sich öffnet',
  notReadableWithThis: 'mit dieser Passphrase nicht lesbar',
  unknown: 'unbekannt',
  none: 'keiner',
  restoreThisOne: 'Diese wiederherstellen',
  caseloadIsDamagedAnd: 'Die Kartei ist beschädigt und keine Sicherung ist neu genug',
  fairhandReadsWhatCan:
    'Fairhand liest, was noch lesbar ist, in eine Kopie. Die beschädigte Datei bleibt, wie sie ist, bis Sie die Kopie in Gebrauch nehmen.',
  readWhatCanBe: 'Lesen, was lesbar ist',
  readClientsLastVisit: (clients, day, lost) =>
    `Gelesen: ${clients} Klienten, letzter Termin ${day !== null ? day : 'keiner'}; ${lost} Einträge waren nicht lesbar.`,
  takeThisCopyInto: 'Diese Kopie in Gebrauch nehmen',
  unlocking: 'Wird entsperrt …',
  openingDemo: 'Die Demo wird geöffnet …',
  initialsAreMissingNothing:
    'Das Kürzel fehlt. Nichts wurde angelegt. Tippen Sie das Kürzel, das Ihre Einträge zeichnet.',
  creatingCaseload: 'Die Kartei wird angelegt …',
  typeKeyFromRecovery: 'Tippen Sie den Schlüssel vom Wiederherstellungsblatt. Nichts wurde geändert.',
  openingByRecoveryKey: 'Wird mit dem Wiederherstellungsschlüssel geöffnet …',
  yourNewPassphraseIs:
    'Ihre neue Passphrase gilt, und der getippte Wiederherstellungsschlüssel ist verbraucht: Dieses Blatt tritt an seine Stelle. Ältere Sicherungen öffnen weiter mit der Passphrase und dem Blatt ihres Tages; behalten Sie also das alte Blatt so lange wie sie.',
  iHaveKeptIt: 'Verwahrt. Kartei öffnen',
  iHaveKeptItUnlock: 'Verwahrt. Wieder entsperren',
  fairhandKeepsYourCaseload:
    'Fairhand hält Ihre Kartei in einer verschlüsselten Datei auf diesem Computer. Nichts verlässt ihn.',
  createYourCaseload: 'Ihre Kartei anlegen',
  yourInitials: 'Ihr Kürzel',
  theySignEveryEntry: 'Es zeichnet jeden Eintrag.',
  clinic: 'Praxis',
  printedOnPagesOptional: 'Wird auf Blätter gedruckt. Kann leer bleiben.',
  passphrase: 'Passphrase',
  createCaseload: 'Kartei anlegen',
  keptIn: (folder) => `Liegt in ${folder}`,
  openByRecoverySheet: 'Mit dem Wiederherstellungsblatt öffnen',
  keyOfSheetWorks:
    'Der Schlüssel des Blattes gilt einmal. Sie setzen eine neue Passphrase und bekommen ein neues Blatt. In der Kartei geht nichts verloren und ändert sich nichts.',
  recoveryKey: 'Wiederherstellungsschlüssel',
  caseHyphensAndSpaces: 'Groß und klein, Striche und Leerzeichen sind gleich.',
  openCaseload: 'Kartei öffnen',
  back: 'Zurück',
  unlockCaseload: 'Kartei entsperren',
  demoNeedsNoneOpen: 'Die Demo braucht keine: „Demo-Kartei öffnen“ steht unten.',
  unlock: 'Entsperren',
  unlockByThisComputer: 'Durch diesen Computer entsperren',
  passphraseLost: 'Passphrase verloren …',
  orLookAroundFirst: 'Oder sich erst umsehen',
  inventedClinicWithInvented: 'Eine erfundene Praxis mit erfundenen Klienten, in einer eigenen Datei.',
  openDemoCaseload: 'Demo-Kartei öffnen',
  orRestoreBackup: 'Oder eine Sicherung wiederherstellen',
  fromStickFolderOr: 'Von einem Stick, einem Ordner oder einem anderen Computer.',
  restoreBackup2: 'Sicherung wiederherstellen …',
  fairhandSupportsJudgementOf:
    'Fairhand unterstützt das Urteil ausgebildeter Ergotherapeutinnen und Ergotherapeuten und ersetzt es nicht. Es stellt keine Diagnose. Örtliche Regeln, die Vorgaben der Praxis und die Verordnung gehen vor.',
  unlockItWithPassphrase: (words) => `${words} Entsperren Sie sie mit der Passphrase der Sicherung.`,
  notAvailableInBrowser:
    'In einem Browserfenster nicht verfügbar: Ein Browser gibt einer Seite keinen Weg dorthin. Im eigenen Fenster von Fairhand geht es.',
  notAvailableThisComputer: 'Nicht verfügbar: Dieser Computer bietet Fairhand keinen Schlüsselspeicher.',
  notAvailableKeyStore:
    'Nicht verfügbar: Der Schlüsselspeicher dieses Computers würde den Schlüssel ungeschützt ablegen; darum nutzt Fairhand ihn nicht.',
  fromNowOnOne: 'Von nun an öffnet ein Knopf die Kartei auf diesem Computer. Die Passphrase öffnet sie wie bisher.',
  onlyPassphraseAndRecovery: 'Nur die Passphrase und der Wiederherstellungsschlüssel öffnen die Kartei jetzt.',
  keyStoreOfThis:
    'Der Schlüsselspeicher dieses Computers kann die Kartei ohne Passphrase öffnen, für alle, die hier mit Ihrem Konto angemeldet sind. Nutzen Sie das nur, wo niemand sonst Ihr Konto nutzt, und sperren Sie den Computer, wenn Sie gehen.',
  yourPassphraseToAllow: 'Ihre Passphrase, um es zu erlauben',
  letThisComputerUnlock: 'Diesen Computer entsperren lassen',
  keyStoreOfThisComputer:
    'Der Schlüsselspeicher dieses Computers kann die Kartei öffnen, für alle, die hier mit Ihrem Konto angemeldet sind.',
  askForPassphraseAgain: 'Wieder nach der Passphrase fragen',
  orFromAnotherLaptop: 'Oder umziehen',
  everythingComesAlong:
    'Klienten, Bilder, was geändert wurde und Ihre Einstellungen kommen in einer verschlüsselten Datei mit.',
  fromAnotherLaptop: 'Ich komme von einem anderen Laptop',
  moveInExplained:
    'Auf dem alten Laptop schreibt „Sicherung“ die Datei: „Auf einen anderen Laptop umziehen“. Wählen Sie hier diese Datei, zum Beispiel auf dem Stick.',
  chooseMovingFile: 'Datei wählen …',
  orItsPath: 'Oder ihr Pfad',
  pathForLarge:
    'Der ganze Pfad der Datei oder ihres Ordners. Eine Datei über 1 GB kommt so herein, oder durch einen Doppelklick.',
  takeItFromThere: 'Von dort nehmen',
  fileIsHere: (name) => `Die Datei ist hier: ${name}.`,
  openItBy: 'Öffnen mit',
  passphraseOfOldLaptop: 'Passphrase des alten Laptops',
  bringItOver: 'Herüberholen',
  movedWhole: (clients, day, entries) =>
    `Alles ist hier: ${clients} ${clients === 1 ? 'Klient' : 'Klienten'}, letzter Termin ${day !== null ? day : 'keiner'}. Das Protokoll ist vollständig: ${entries} Einträge, jeder passt zu dem davor.`,
  movedTrailBroken:
    'Die Kartei ist hier, aber ihr Protokoll passt an einem Eintrag nicht: Etwas wurde außerhalb von Fairhand geändert, auf dem alten Laptop oder unterwegs. Lassen Sie den alten Laptop, wie er ist, und holen Sie Hilfe, bevor Sie hier arbeiten.',
  nowTellOldOne:
    'Vergleichen Sie diese Zahlen mit denen, die der alte Laptop angezeigt hat. Sagen Sie dann dort, ob seine Kartei bleibt oder gelöscht wird: Zwei, in denen gearbeitet wird, laufen auseinander.',
};
