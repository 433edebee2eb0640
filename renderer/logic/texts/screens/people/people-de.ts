import type { ScreenTexts } from '../en/screens-en.ts';

/** Wer sich an der Kartei anmeldet. */
export const peopleDe: ScreenTexts['people'] = {
  people: 'Personen',
  yours: 'Eigene',
  eachSignsIn: 'Jede Person meldet sich mit Kürzel und eigener Passphrase an, und jeder Eintrag sagt, von wem er ist.',
  oneSignInForAll:
    'Diese Kartei hat eine Anmeldung. Wo mehrere sie benutzen, geben Sie jeder Person eine eigene: Das Protokoll sagt dann, wer was getan hat, und wer geht, kann ausgeschlossen werden.',
  notInDemo: 'Die Demo hat eine Anmeldung für alle.',
  assistantsManageNobody: 'Nur eine Therapeutin oder ein Therapeut fügt Personen hinzu oder entfernt sie.',
  initials: 'Kürzel',
  name: 'Name',
  role: 'Rolle',
  state: 'Stand',
  therapist: 'Therapeutin oder Therapeut',
  assistant: 'Assistenz oder in Ausbildung',
  signedInNow: 'angemeldet',
  removedOn: (day) => `entfernt am ${day}`,
  notFinished: 'Entfernen nicht beendet',
  removalCutOff: (initials) =>
    `Das Entfernen von ${initials} brach ab, bevor der Schlüssel gewechselt war. Das Fenster lässt ${initials} nicht mehr ein, eine alte Kopie der Schlüsseldatei aber täte es. Beenden Sie es rechts.`,
  addPerson: 'Person hinzufügen',
  addThisPerson: 'Diese Person hinzufügen',
  cancel: 'Abbrechen',
  nameAndInitials: 'Name und Kürzel fehlen. Niemand wurde hinzugefügt.',
  initialsHint: 'Es zeichnet jeden Eintrag. Niemand sonst hat oder hatte hier dasselbe.',
  newPersonTypes: 'Die neue Person tippt hier jetzt ihre eigene Passphrase; niemand sonst muss sie kennen.',
  herPassphrase: 'Passphrase der neuen Person',
  yourPassphrase: 'Ihre eigene Passphrase',
  yourPassphraseHint: 'Damit niemand, der nur das Fenster offen vorfindet, Personen hinzufügen kann.',
  sheetWillFollow:
    'Ein neues Wiederherstellungsblatt folgt, und das alte öffnet diese Kartei nicht mehr. Hat dieser Computer sie selbst geöffnet, so endet das.',
  wrapping: 'Die Anmeldung wird eingerichtet …',
  canSignIn: (initials) => `${initials} kann sich jetzt anmelden: Sperren, dann Kürzel und Passphrase.`,
  newSheetFollows: 'Die Person ist hinzugefügt. Dieses neue Wiederherstellungsblatt ersetzt das alte.',
  signIn: 'Diese Anmeldung',
  signsAs: (initials) => `Zeichnet als ${initials}.`,
  whatAssistantsMay:
    'Trägt ein; das Eingetragene wartet auf eine Gegenzeichnung. Kann kein Programm freigeben, kein Warnzeichen abschließen, keine Befunderhebung unterschreiben, kein Wiederherstellungsblatt erstellen und keine Personen verwalten.',
  removedMeans: (day) =>
    `Entfernt am ${day}; dabei wurde der Schlüssel der Datei gewechselt. Frühere Einträge bleiben, wie sie sind. Sicherungen von vorher öffnen sich noch mit der Passphrase ihres Tages: Löschen Sie die, die niemand öffnen soll.`,
  ownInSettings:
    'Ihre Berufsbezeichnung, Passphrase und Darstellung stehen unter Einstellungen. Ihre Rolle kann eine andere Therapeutin oder ein anderer Therapeut ändern.',
  removeOf: (initials) => `${initials} entfernen …`,
  finishRemoval: (initials) => `Entfernen von ${initials} beenden …`,
  removeQuestion: (initials) => `Die Anmeldung von ${initials} beenden?`,
  whatRemovingDoes:
    'Die ganze Datei wird unter einem neuen Schlüssel verschlüsselt. Die Passphrase dieser Person öffnet nichts mehr davon, auch eine alte Kopie der Schlüsseldatei nicht. Alle anderen melden sich an wie bisher, und das Wiederherstellungsblatt gilt weiter. Einträge bleiben; Worte, die diese Person in Formularen stehen ließ, werden niemandem gezeigt. Sicherungen von vorher öffnen sich noch mit den Passphrasen ihres Tages.',
  removeSignIn: 'Anmeldung beenden',
  initialsToSignIn: 'Kürzel',
  whoeverComesNext: 'Wer hier als Nächstes arbeitet.',
  whosePassphrase: 'Wessen Passphrase neu gesetzt wird.',
  signedInAs: (initials) => `Angemeldet: ${initials}`,
  fromTheSignIn: (initials) => `Kürzel: ${initials}, aus der Anmeldung.`,
  onePersonOnly:
    'Nicht verfügbar, wo sich mehrere anmelden: Das Computerkonto kann nicht unterscheiden, wer von ihnen an der Tastatur sitzt.',
  ownPassphraseChanges:
    'Die ganze Datei wird unter einem neuen Schlüssel verschlüsselt und gesperrt. Ihre alte Passphrase und alte Schlüsseldateien öffnen dann nichts mehr von dieser Kartei; die Passphrasen der anderen und das Wiederherstellungsblatt gelten weiter. Sicherungen von vorher öffnen sich noch mit den Passphrasen ihres Tages.',
  passphraseIsChanged: 'Ihre Passphrase ist geändert. Melden Sie sich mit der neuen an.',
};
