import type { ScreenTexts } from '../en/screens-en.ts';

/** In German. Help (F1) of each screen: what it is for, in one sentence, and how it goes, in the order in which it is done. Short sentences, the words of the screen itself. */
export const helpDe: ScreenTexts['help'] = {
  start: {
    purpose: 'Legt Ihre Kartei an, öffnet sie oder zeigt die Demo.',
    steps: [
      'Tippen Sie Ihr Kürzel und zweimal eine Passphrase, dann „Kartei anlegen“.',
      'Drucken Sie das Wiederherstellungsblatt oder schreiben Sie es ab: Ohne es ist eine verlorene Passphrase eine verlorene Kartei.',
      'Um sich erst umzusehen, öffnen Sie die Demo: Ihre Klienten sind erfunden.',
    ],
  },
  caseload: {
    purpose: 'Zeigt, was heute fällig ist, und alle Klienten.',
    steps: [
      'Neuer Klient: „Klient anlegen“. Ein Name reicht.',
      'Wählen Sie eine Zeile mit den Pfeiltasten; die rechte Seite folgt. Enter tut, was die Zeile sagt.',
      'Die Listen links zeigen Teile davon: Schriftproben zum Lesen, Notizen, was endet oder abläuft.',
    ],
  },
  client: {
    purpose: 'Hält die Notiz eines Termins, den Plan für den nächsten und die Angaben der Akte.',
    steps: [
      '„Ersten Termin beginnen“ unten, oder „Termin heute beginnen“ links, wenn der von heute noch nicht da ist.',
      'Was der Klient erzählt hat, Ihr eigenes Urteil, die Reaktion: Jedes Feld wird beim Verlassen gespeichert.',
      '„Ganze Akte“ enthält Diagnose, Vorsicht, Medikamente und was der Klient schreiben möchte.',
      'Gehen Sie dann links die Schritte hinunter: Screening, Schriftprobe, Gegenlesen, Programm, Ziel, Blätter.',
    ],
  },
  intake: {
    purpose: 'Sagt, was anfangen darf und was vor dem Schreiben zu tun ist.',
    steps: [
      'Zuerst die Warnzeichen: Ein Ja hält die Arbeit an, bis Sie es angesehen haben.',
      'Hand und Körper: Sehen Sie die Zeichnung an, dann drücken Sie 3, 2, 1 oder 0. Gefragt wird nur, was zählt.',
      'Sitz und Tisch: Messen Sie, und die Zeichnung zeigt, was zu ändern ist.',
      '„Befunde“ sagt, was folgt. Dann: Schriftprobe.',
    ],
  },
  sample: {
    purpose: 'Hält ein Blatt Schrift, gemessen, mit der Art, wie es geschrieben wurde.',
    steps: [
      '„Neue Schriftprobe …“: Wählen Sie die Aufgabe, drucken oder sagen Sie den Text, lassen Sie den Klienten schreiben.',
      'Holen Sie das Blatt herein: Scan, Foto oder Einfügen. Fairhand findet Zeilen, Wörter und Buchstaben.',
      'Wörter: Sehen Sie die mit gepunkteter Linie an; berichtigen Sie, was falsch gelesen ist. Dann: Gegenlesen.',
    ],
  },
  readback: {
    purpose: 'Zählt die Wörter, die jemand lesen kann, der den Text nicht kennt.',
    steps: [
      'Jemand setzt sich an dieses Fenster, tippt sein Kürzel und liest Zeile für Zeile. Sie schauen weg.',
      'Zwei Lesende zeigen, wie weit Lesende auseinanderliegen. „Anzahl vom Papier eingeben“ nimmt eine Zählung von anderswo.',
      'Die Zeile zeigt die gelesenen Wörter mit ihrem Intervall. Dann: Programm.',
    ],
  },
  program: {
    purpose: 'Entwirft aus den Befunden das Programm für zu Hause; Sie ändern es und geben es frei.',
    steps: [
      'Jede Zeile ist eine Zeile des Blattes. Rechts steht, warum, nach welcher Regel und worauf zu achten ist.',
      'Ändern Sie den Umfang, nehmen Sie Zeilen heraus, nehmen Sie welche aus der Bibliothek auf.',
      '„Freigeben“, wenn es Ihres ist. Dann wird es gedruckt, und der nächste Termin vergleicht damit.',
    ],
  },
  goals: {
    purpose: 'Vereinbart eine geschriebene Sache, die jemand lesen können soll.',
    steps: [
      'Der nächste erreichbare Schritt wird aus den Schriftproben vorgeschlagen. Ändern Sie ihn, bis er passt.',
      'Wählen Sie an jedem Termin die erreichte Stufe.',
    ],
  },
  pages: {
    purpose: 'Druckt, was den Raum verlässt: für Familie, Kostenträger, verordnende Praxis und zum Üben.',
    steps: [
      'Wählen Sie links ein Blatt; was zu sehen ist, wird gedruckt.',
      'Was fehlt, steht über dem Blatt. Haken Sie mehrere an, um sie zusammen zu drucken.',
      '„Als ausgegeben behalten“ hält genau dieses Blatt in der Akte.',
    ],
  },
  progress: {
    purpose: 'Zeigt, ob sich etwas geändert hat und ob das mehr ist als die Schwankung von Tag zu Tag.',
    steps: [
      'Der Satz rechts ist die Antwort. „Die Zahlen dahinter“ zeigt, wie sie gefunden wurde.',
      '„Damals und jetzt“ legt zwei Blätter nebeneinander. Die Tabelle enthält jede Zahl.',
    ],
  },
  rules: {
    purpose: 'Zeigt jede Regel und Zahl, die etwas entscheidet, mit ihrer Quelle.',
    steps: [
      'Suchen Sie, oder wählen Sie Art und Quelle. Rechts steht, wann eine Regel greift.',
      'Schalten Sie eine Regel ab, oder setzen Sie eine eigene Zahl: Sie zählt ab dem nächsten Entwurf.',
    ],
  },
  records: {
    purpose: 'Macht und prüft Sicherungen und bringt Klienten von einer Kartei in eine andere.',
    steps: [
      '„Jetzt sichern“ schreibt eine verschlüsselte Kopie, öffnet sie wieder und vergleicht.',
      'Nennen Sie einen zweiten Ort, etwa einen USB-Stick: Kopien gehen dann auch dorthin.',
    ],
  },
  figures: {
    purpose: 'Befragt die ganze Kartei: erreichte Ziele, Veränderung über den Zufall hinaus, Üben, Termine.',
    steps: [
      'Wählen Sie die Gruppen: nach Diagnose oder nach dem, was geschrieben wird. Unter zehn Klienten gibt es keinen Anteil.',
      'Lesen Sie, was man nicht schließen darf: Nichts hier vergleicht Menschen oder beweist, was half.',
      'Dieselben Zahlen gehen als Tabelle ohne Namen hinaus.',
    ],
  },
  handover: {
    purpose: 'Übergibt Klienten als verschlüsselte Datei und nimmt welche auf.',
    steps: [
      'Geben Sie Ihren eigenen Schlüssel weiter; behalten Sie den der anderen Seite unter einem Namen, je einmal.',
      'Wählen Sie Klienten und einen Schlüssel, dann schreiben Sie die Datei auf einen Stick oder in den gemeinsamen Ordner.',
      'Das Aufnehmen zeigt zuerst, was sich ändern würde. Was beide geändert haben, steht nebeneinander.',
    ],
  },
  settings: {
    purpose: 'Ihr Kürzel, Aussehen, Tasten, Sperre und Passphrase.',
    steps: [
      'Jedes Feld wird beim Verlassen gespeichert.',
      '„Personen“: Wer diese Kartei benutzt, bekommt eine eigene Anmeldung. Strg+L sperrt zum Weitergeben.',
    ],
  },
};
