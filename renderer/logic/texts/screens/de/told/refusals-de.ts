import type { InkRefusalCode } from '../../../../../ink/index.ts';
import type { MessageCode } from '../../../../../../electron/contract/messages.ts';
import type { Refusals } from '../../refusals.ts';

/** In German. What cannot be done: what happened, what is safe, what to do next. */
const sentences: Readonly<Record<MessageCode, string>> = {
  'unknown-request':
    'Dieses Fenster hat etwas verlangt, das Fairhand nicht kennt. Nichts wurde geändert. Starten Sie Fairhand neu.',
  'malformed-request':
    'Etwas in diesem Eintrag lässt sich so nicht speichern ({detail}). Nichts wurde geändert. Berichtigen Sie es und versuchen Sie es noch einmal.',
  internal:
    'In Fairhand ist etwas schiefgegangen. Was vorher gespeichert war, ist sicher. Versuchen Sie es noch einmal; geschieht es wieder, starten Sie Fairhand neu.',
  locked: 'Die Kartei ist gesperrt. Nichts ging verloren. Entsperren Sie sie mit Ihrer Passphrase, um weiterzumachen.',
  'no-caseload':
    'In diesem Ordner gibt es noch keine Kartei. Legen Sie eine an, öffnen Sie die Demo, oder stellen Sie eine Sicherung wieder her.',
  'caseload-exists':
    'In diesem Ordner gibt es schon eine Kartei. Sie blieb, wie sie ist. Entsperren Sie sie, oder wählen Sie einen anderen Ordner.',
  'wrong-passphrase':
    'Diese Passphrase öffnet die Kartei nicht. Die Kartei ist unversehrt. Prüfen Sie Großbuchstaben und Tastatur und versuchen Sie es noch einmal.',
  'wrong-recovery-key':
    'Dieser Wiederherstellungsschlüssel öffnet die Kartei nicht. Die Kartei ist unversehrt. Nur der Schlüssel des neuesten Blattes gilt; ein benutzter oder ersetzter öffnet nichts mehr. Prüfen Sie die Buchstaben und versuchen Sie es noch einmal.',
  'wait-before-retry':
    'Mehrere Passphrasen oder Schlüssel waren falsch. Die Kartei ist unversehrt. Warten Sie {detail} Sekunden und versuchen Sie es dann noch einmal.',
  'passphrase-too-short':
    'Diese Passphrase ist zu kurz, um Gesundheitsdaten zu schützen. Nichts wurde geändert. Nehmen Sie mindestens 12 Zeichen; ein paar Wörter ohne Zusammenhang merkt man sich leicht.',
  damaged:
    'Die Datei der Kartei ist beschädigt. Sie wurde nicht geändert und wird nicht gelöscht. Stellen Sie die neueste Sicherung wieder her, oder holen Sie Hilfe für die Datei.',
  'system-key-unusable':
    'Der Schlüsselspeicher dieses Computers hat den Schlüssel nicht herausgegeben. Die Kartei ist unversehrt. Tippen Sie die Passphrase; in den Einstellungen lässt sich der Schlüsselspeicher neu einrichten.',
  'key-file-missing':
    'Die Schlüsseldatei neben der Kartei fehlt oder ist nicht lesbar. Die Kartei ist unversehrt, lässt sich ohne sie aber nicht öffnen. Legen Sie die Schlüsseldatei zurück, oder stellen Sie eine Sicherung wieder her.',
  'newer-version':
    'Diese Kartei wurde von einem neueren Fairhand geschrieben. Sie wurde nicht geändert. Öffnen Sie sie mit jener Version.',
  'locked-by-another':
    'Ein anderes Fenster von Fairhand hat diese Kartei geöffnet. Nichts wurde geändert. Benutzen Sie jenes Fenster, oder schließen Sie es zuerst.',
  'folder-not-writable':
    'Fairhand kann in diesen Ordner nicht schreiben. Nichts wurde geändert. Wählen Sie einen anderen Ordner, oder erbitten Sie das Schreibrecht.',
  'disk-full':
    'Der Datenträger ist voll. Alles vorher Gespeicherte ist sicher; der letzte Eintrag steht noch auf dem Bildschirm. Schaffen Sie Platz und versuchen Sie es noch einmal.',
  'not-found':
    'Dieser Eintrag ist nicht mehr in der Kartei. Nichts wurde geändert. Gehen Sie zurück zur Kartei und öffnen Sie den Klienten noch einmal.',
  'already-approved':
    'Dieses Programm wurde freigegeben und steht fest. Es wurde nicht geändert. Beginnen Sie ein neues Programm aus einer Kopie.',
  'already-issued':
    'Dieses Blatt wurde ausgegeben und steht fest. Es wurde nicht geändert. Machen Sie stattdessen ein neues Blatt.',
  'red-flag-open':
    'Bei diesem Klienten ist ein Warnzeichen offen. Es wurde kein Programm freigegeben. Sehen Sie das Überweisungsblatt; geben Sie frei, wenn das Warnzeichen geklärt ist.',
  'practice-not-safe':
    'Dieses Blatt zeigt Übungen, die für diesen Klienten jetzt nicht sicher sind ({detail}). Das Blatt wurde nicht behalten. Öffnen Sie es neu; was nicht getan werden darf, bleibt weg.',
  'red-flags-not-asked':
    'Die Fragen zu Warnzeichen sind nicht alle beantwortet. Es wurde kein Programm freigegeben. Stellen Sie sie zuerst; das dauert etwa drei Minuten.',
  'veto-not-overridden':
    'Eine Zeile dieses Programms ist für diesen Klienten nach dem Erfassten nicht sicher ({detail}). Das Programm wurde nicht freigegeben. Entfernen Sie die Zeile, oder behalten Sie sie und nennen Sie Ihren Grund.',
  'nothing-to-undo':
    'Bei diesem Klienten wurde seit dem Öffnen von Fairhand nichts geändert, also gibt es nichts rückgängig zu machen. Das Protokoll zeigt, was vorher geändert wurde.',
  'export-too-large':
    'Diese Blätter sind zusammen größer als {detail} MB, mehr als eine solche Datei enthalten sollte. Nichts wurde gespeichert. Speichern Sie ohne die Scans, oder exportieren Sie den Klienten als Datei von Fairhand.',
  'handover-forked':
    'Diese Übergabe und diese Kartei haben verschiedene Einträge unter derselben Nummer: Einer der beiden Ordner wurde kopiert, und an beiden wurde weitergearbeitet. Nichts wurde übernommen, nichts ging verloren. Bitten Sie die andere Person, ihre neueste Sicherung wiederherzustellen, die ihrem Laptop einen eigenen Namen gibt, und noch einmal zu übergeben.',
  'handover-not-for-us':
    'Diese Übergabe ist für einen anderen Schlüssel als Ihren verschlossen. Nichts wurde übernommen. Schicken Sie der anderen Person Ihren Schlüssel noch einmal und erbitten Sie eine neue Übergabe.',
  'not-a-handover':
    'Diese Datei ist keine Übergabe von Fairhand, oder sie bricht vor dem Ende ab. Nichts wurde übernommen. Warten Sie, bis sie ganz kopiert ist, oder erbitten Sie sie noch einmal.',
  'handover-newer':
    'Diese Übergabe wurde von einem neueren Fairhand geschrieben. Nichts wurde übernommen. Installieren Sie hier jene Version und übernehmen Sie sie dann.',
  'handover-older':
    'Diese Übergabe wurde von einem älteren Fairhand in einer Form geschrieben, die nicht mehr gelesen wird. Nichts wurde übernommen. Bitten Sie die andere Person, diese Version zu installieren und noch einmal zu übergeben.',
  'key-not-one':
    'Das ist kein Schlüssel für Übergaben. Nichts wurde behalten. Kopieren Sie die ganze Zeile, die mit age1 beginnt, vom Bildschirm der anderen Person.',
  'key-is-secret':
    'Das ist ein geheimer Schlüssel, nicht der zum Weitergeben. Er wurde nicht behalten. Wer ihn geschickt hat, sollte einen neuen machen; erbitten Sie die Zeile, die mit age1 beginnt.',
  'key-is-own':
    'Das ist der Schlüssel dieser Kartei selbst. Nichts wurde behalten. Erbitten Sie den der anderen Person; Ihrer ist der zum Weitergeben.',
  'share-gone':
    'Der gemeinsame Ordner ist gerade nicht da. Nichts ging verloren, und keine halbe Datei blieb zurück. Verbinden Sie sich mit ihm und versuchen Sie es noch einmal, oder speichern Sie die Übergabe als Datei.',
  'code-taken': 'Ein anderer Klient hat diesen Code schon. Nichts wurde geändert. Wählen Sie einen anderen Code.',
  'co-sign-self':
    'Sie haben diesen Eintrag gemacht, also muss ihn jemand anderes gegenzeichnen. Nichts wurde geändert, und der Eintrag wartet unter „Fällig“. Bitten Sie die Person, die Sie anleitet, sich anzumelden und zu zeichnen.',
  'co-sign-assistant':
    'Assistenz oder Auszubildende können nicht gegenzeichnen. Nichts wurde geändert, und der Eintrag wartet unter „Fällig“. Bitten Sie die Therapeutin oder den Therapeuten zu zeichnen.',
  'assistant-approves':
    'Assistenz oder Auszubildende können kein Programm freigeben. Der Entwurf bleibt, wie er ist. Bitten Sie die Therapeutin oder den Therapeuten, ihn anzusehen und freizugeben.',
  'assistant-clears':
    'Assistenz oder Auszubildende können kein Warnzeichen abschließen. Es bleibt offen, und nichts wurde geändert. Bitten Sie die Therapeutin oder den Therapeuten, es jetzt zu klären.',
  'assistant-evaluates':
    'Assistenz oder Auszubildende können keine Befunderhebung unterschreiben. Das Blatt bleibt als Entwurf. Bitten Sie die Therapeutin oder den Therapeuten, es zu speichern oder zu drucken.',
  'assistant-manages':
    'Assistenz oder Auszubildende können weder Personen verwalten noch ein Wiederherstellungsblatt erstellen. Nichts wurde geändert. Bitten Sie die Therapeutin oder den Therapeuten darum.',
  'assistant-erases':
    'Assistenz oder Auszubildende können weder Akten löschen noch die Kartei umziehen. Nichts wurde geändert. Bitten Sie die Therapeutin oder den Therapeuten darum.',
  'initials-missing':
    'Das Kürzel fehlt. Nichts wurde geändert. Mehrere benutzen diese Kartei: Tippen Sie auch Ihr Kürzel.',
  'initials-taken':
    'Jemand hat oder hatte hier das Kürzel {detail}. Niemand wurde hinzugefügt. Nehmen Sie ein anderes: Das Protokoll muss beide unterscheiden.',
  'initials-unknown':
    'Niemand meldet sich hier mit dem Kürzel {detail} an. Nichts wurde geändert, und der Wiederherstellungsschlüssel gilt noch. Prüfen Sie das Kürzel und versuchen Sie es noch einmal.',
  'not-oneself':
    'Niemand nimmt sich selbst Anmeldung oder Rolle, damit immer eine Therapeutin oder ein Therapeut bleibt. Nichts wurde geändert. Bitten Sie eine andere Therapeutin oder einen anderen Therapeuten darum.',
  'people-not-in-demo':
    'Die Demo hat eine Anmeldung für alle. Nichts wurde geändert. Fügen Sie Personen in Ihrer eigenen Kartei hinzu.',
  'people-too-many':
    'Auf der Liste stehen {detail} Personen, so viele wie eine Kartei fasst. Niemand wurde hinzugefügt.',
  'sign-in-decides':
    'Kürzel und Rolle kommen aus der Anmeldung. Nichts wurde geändert. Eine andere Therapeutin oder ein anderer Therapeut kann eine Rolle unter Einstellungen, Personen ändern.',
  'date-in-future': 'Dieses Datum liegt in der Zukunft. Nichts wurde geändert. Prüfen Sie Tag, Monat und Jahr.',
  'ink-empty':
    'Vom Stift kam keine Schrift. Nichts wurde behalten. Prüfen Sie, ob der Stift auf dieser Fläche schreibt, und beginnen Sie noch einmal.',
  'ink-unreadable': '{detail} Beim Klienten wurde nichts hinzugefügt. Wählen Sie eine andere Datei.',
  'ink-known':
    'Diese Tinten-Datei ist bei diesem Klienten schon vorhanden. Nichts wurde hinzugefügt. Wählen Sie eine andere Datei.',
  'date-too-old': 'Dieses Datum liegt zu weit zurück, um zu stimmen. Nichts wurde geändert. Prüfen Sie das Jahr.',
  'demo-not-ours':
    'Der Ordner „demo“ enthält etwas, das nicht die Demo von Fairhand ist. Nichts wurde gelöscht. Sehen Sie selbst in diesen Ordner.',
  'passphrase-too-weak':
    'Diese Passphrase ist zu schnell erraten: gängige Wörter oder Namen, Wörter der Praxis, Wiederholungen, eine Jahreszahl oder Buchstaben in Folge. Nichts wurde geändert. Nehmen Sie vier oder fünf Wörter ohne Zusammenhang.',
  'empty-file': 'Diese Datei ist leer. Nichts wurde hinzugefügt. Scannen oder kopieren Sie das Blatt noch einmal.',
  'unreadable-file':
    'Diese Datei lässt sich nicht als Bild oder PDF lesen. Nichts wurde hinzugefügt. Speichern Sie das Blatt als PNG, JPEG, TIFF oder PDF und versuchen Sie es noch einmal.',
  'not-an-image':
    'Diese Datei ist kein Bild und kein PDF. Nichts wurde hinzugefügt. Wählen Sie einen Scan oder ein Foto des Blattes.',
  truncated:
    'Dieses Bild bricht vor seinem Ende ab. Nichts wurde hinzugefügt. Kopieren oder scannen Sie es noch einmal.',
  'too-large':
    'Dieses Bild ist zu groß (über 100 Millionen Pixel oder über 200 MB). Nichts wurde hinzugefügt. Scannen Sie mit 300 dpi.',
  'trial-open':
    'Ein Versuch dieses Klienten ist noch nicht beendet. Er blieb, wie er ist. Entscheiden oder beenden Sie ihn zuerst, dann beginnen Sie einen neuen.',
  'no-new-text':
    'Es ist kein Satz mehr übrig, den binnen eines Jahres noch niemand gesehen hat. Nichts wurde geändert. Fügen Sie unter „Regeln“ Satzrahmen oder Wörter hinzu, oder nehmen Sie einen gelieferten Text.',
  'page-not-found': 'Dieses PDF hat keine solche Seite. Nichts wurde hinzugefügt. Wählen Sie eine andere Seite.',
  'decode-timeout':
    'Das Lesen dieses Bildes dauerte zu lange und wurde abgebrochen. Nichts wurde hinzugefügt. Speichern Sie es als PNG oder JPEG und versuchen Sie es noch einmal.',
  'no-scale':
    'Dieses Blatt hat noch keinen Maßstab, darum lässt sich nichts in Millimetern messen. Das Bild bleibt erhalten. Geben Sie die dpi des Scans an, oder markieren Sie zwei Punkte mit bekanntem Abstand.',
  'scale-out-of-range':
    'Dieser Maßstab kann nicht stimmen ({detail}). Das Bild bleibt erhalten. Prüfen Sie die dpi oder den Abstand.',
  'setup-impossible':
    'Diese Höhen passen nicht zusammen ({detail}). Nichts wurde berechnet. Messen Sie noch einmal, in Millimetern.',
  cancelled: 'Abgebrochen, wie Sie wollten. Nichts wurde geändert.',
  'backup-failed':
    'Die Sicherung konnte nicht fertig werden. Die Kartei ist sicher, und keine halbe Sicherung blieb zurück. Prüfen Sie den Datenträger und versuchen Sie es noch einmal.',
  'backup-unverified':
    'Die Sicherung wurde geschrieben, las sich aber nicht gleich zurück. Sie wurde entfernt. Die Kartei ist sicher. Nehmen Sie einen anderen Datenträger.',
  'backup-pictures-missing':
    'Diese Sicherung entstand von selbst und hat ihre Bilder im Ordner „pictures“ neben sich, der hier nicht vollständig ist. Nichts wurde wiederhergestellt. Geben Sie den Pfad der Datei dort an, wo dieser Ordner liegt, oder wählen Sie eine Sicherung von Hand.',
  'not-a-backup':
    'Diese Datei ist keine Sicherung von Fairhand, oder sie ist beschädigt. Die Kartei wurde nicht geändert. Wählen Sie eine andere Datei.',
  'not-an-export':
    'Diese Datei ist kein aus Fairhand exportierter Klient, oder sie ist beschädigt. Nichts wurde hinzugefügt. Wählen Sie eine andere Datei.',
  'save-failed':
    'Die Datei konnte nicht geschrieben werden. In der Kartei wurde nichts geändert. Wählen Sie einen anderen Ort.',
  'print-failed':
    'Das Blatt konnte nicht gedruckt werden. Es ist noch hier. Versuchen Sie es noch einmal, oder speichern Sie es als PDF.',
  'not-due':
    'Ein gewählter Klient steht nicht auf der Liste der fälligen Akten. Nichts wurde gelöscht. Sehen Sie die Liste noch einmal an; ein einzelner Klient wird in der eigenen Akte gelöscht.',
  'erase-not-confirmed':
    'Die eingetippte Zahl ist nicht die der gewählten Klienten. Nichts wurde gelöscht. Zählen Sie, und tippen Sie sie noch einmal.',
  'not-moved':
    'Diese Kartei ist nicht auf einen anderen Laptop umgezogen. Nichts wurde gelöscht. Schreiben Sie zuerst die Datei für den anderen Laptop.',
  'demo-missing':
    'Die Demo-Kartei ist in dieser Installation nicht enthalten. Ihre eigene Kartei ist davon nicht betroffen.',
  'rule-table-refused': 'Die Änderung wurde abgelehnt: {detail}. Die benutzte Regeltabelle bleibt, wie sie ist.',
};

/** Why an ink file is not read. */
const ink: Readonly<Record<InkRefusalCode, string>> = {
  dtd: 'Diese Tinten-Datei legt einen eigenen Dokumenttyp oder eigene Entitäten fest, die anderen Inhalt verbergen könnten. Nichts wurde behalten. Exportieren Sie die Tinte ohne sie noch einmal.',
  'not-well-formed':
    'Diese Tinten-Datei ist beschädigt: Sie ist kein ganzes XML. Nichts wurde behalten. Kopieren oder exportieren Sie sie noch einmal.',
  'other-root':
    'Diese Datei ist XML, aber kein InkML: Ihr äußerstes Element ist nicht „ink“. Nichts wurde behalten. Wählen Sie eine InkML-Datei.',
  'no-position':
    'Die Punkte dieser Tinten-Datei haben kein X oder kein Y. Nichts wurde behalten. Exportieren Sie die Tinte mit Positionen noch einmal.',
  'column-count':
    'Ein Punkt dieser Tinten-Datei hat mehr oder weniger Werte, als ihr Format angibt. Nichts wurde behalten. Exportieren Sie die Tinte noch einmal.',
  'not-a-number':
    'Ein Wert dieser Tinten-Datei ist keine endliche Zahl. Nichts wurde behalten. Exportieren Sie die Tinte noch einmal.',
  'value-too-large':
    'Ein Wert dieser Tinten-Datei ist größer als 10 Millionen, was kein Stift schreibt. Nichts wurde behalten. Exportieren Sie die Tinte noch einmal.',
  'file-too-large': 'Diese Tinten-Datei ist größer als 32 MB. Nichts wurde behalten. Exportieren Sie kürzere Stücke.',
  'too-many-samples':
    'Diese Tinten-Datei hat mehr als 2.000.000 Punkte. Nichts wurde behalten. Exportieren Sie kürzere Stücke.',
  'too-many-traces':
    'Diese Tinten-Datei hat mehr als 20.000 Züge. Nichts wurde behalten. Exportieren Sie kürzere Stücke.',
  'too-deep':
    'Die Elemente dieser Tinten-Datei liegen mehr als 32 Ebenen tief. Nichts wurde behalten. Exportieren Sie die Tinte noch einmal.',
};

export const refusalsDe: Refusals = { sentences, ink, seeTheEntry: 'siehe den Eintrag' };
