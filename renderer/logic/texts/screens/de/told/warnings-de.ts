import type { Told } from '../../en/screens-en.ts';

const printed =
  'Die Buchstaben sind alle gleich hoch und stehen auf einer geraden Linie. Gedruckte Wörter sagen nichts über eine Hand. Lassen Sie sie aus, oder decken Sie den Druck ab und scannen Sie noch einmal.';

/** In German. What to know about a written page or a drawn sheet before its numbers are read. */
export const warningsDe: Told['warnings'] = {
  plain: {
    blank: 'Auf diesem Blatt wurde keine Schrift gefunden. Prüfen Sie, ob die richtige Seite gescannt wurde.',
    'not-writing':
      'Das Bild ist voller kleiner Flecken, darum war keine Schrift zu erkennen. Scannen Sie das Blatt noch einmal, ohne Muster oder Foto dahinter.',
    'text-too-small':
      'Die Schrift ist nur wenige Pixel hoch, zu klein zum Messen. Scannen Sie noch einmal mit mindestens 300 dpi.',
    'no-scale':
      'Der Maßstab dieses Blattes ist nicht bekannt, darum wurde nichts gemessen. Geben Sie die dpi, den gedruckten Balken oder zwei Punkte mit bekanntem Abstand an.',
    'all-black': 'Das Bild ist überall dunkel. Scannen oder fotografieren Sie das Blatt noch einmal.',
    'too-small': 'Das Bild hat zu wenige Pixel für ein Blatt. Prüfen Sie die Datei.',
    'edge-cut':
      'Eine Kante des Blattes liegt außerhalb des Fotos, darum sind Winkel und Maßstab nicht verlässlich. Machen Sie das Foto noch einmal, mit allen vier Kanten und etwas Tisch.',
    'paper-unknown':
      'Das Blatt passt zu keiner bekannten Papiergröße; der angegebene Maßstab wurde benutzt. Prüfen Sie einen bekannten Abstand auf dem Blatt.',
    'scale-contradicts-paper':
      'Der angegebene Maßstab weicht um mehr als 1 % von der Größe des Blattes im Foto ab; benutzt wurde das Blatt. Prüfen Sie den Maßstab.',
    'scale-contradicts-marks':
      'Der angegebene Maßstab weicht um mehr als 1 % von den Eckmarken des Blattes ab. Prüfen Sie, ob es in Originalgröße gedruckt und mit den angegebenen dpi gescannt wurde.',
    'axes-differ':
      'Die Kästchen oder Eckmarken des Papiers sind um mehr als 1 % breiter als hoch oder höher als breit. Prüfen Sie, wie das Blatt gescannt oder fotografiert wurde.',
    'writing-cut':
      'Die Schrift läuft seitlich aus dem Bild, darum sind die Wörter dort nicht ganz. Scannen Sie das Blatt mit seinen Rändern.',
    'few-words': 'Auf diesem Blatt stehen weniger als fünf Wörter: zu wenige, um Größe oder Abstände zu beurteilen.',
    'text-under-12-px':
      'Die kleinen Buchstaben sind unter 12 Pixel hoch, darum sind Längen ungenau. Scannen Sie noch einmal mit mindestens 300 dpi.',
    blur: 'Das Bild ist nicht scharf, darum sind Längen ungenau. Scannen Sie es noch einmal, oder halten Sie die Kamera ruhig.',
    sideways:
      'Die Schrift läuft das Blatt hinauf oder hinunter: Das Bild liegt auf der Seite. Drehen Sie es und messen Sie noch einmal.',
    'upside-down': 'Das Blatt scheint auf dem Kopf zu stehen. Drehen Sie es und messen Sie noch einmal.',
    mirrored: 'Das Blatt scheint gespiegelt zu sein. Wenden Sie es und messen Sie noch einmal.',
    'text-unfit':
      'Der angegebene Text passt nicht zu den Wörtern auf diesem Blatt und wurde nicht benutzt. Prüfen Sie, ob es der geschriebene Text ist.',
    'few-letters':
      'Weniger als fünfzehn kleine Buchstaben waren lesbar: zu wenige für Höhe und Gleichmäßigkeit. Nehmen Sie eine längere Schriftprobe.',
    'other-script':
      'Der Text steht in einer anderen als der lateinischen Schrift. Zeilen, Größe und Abstände lassen sich messen; welche Buchstaben klein, hoch oder geschlossen sind, ist nicht bekannt.',
    'unusual-script':
      'Wenige Buchstaben ragen über die kleinen hinaus und viele hängen unter die Zeile, wie in keinem lateinischen Text. Steht das Blatt auf dem Kopf, drehen Sie es. Ist es eine andere Schrift, benutzen Sie nur Zeilen und Abstände.',
    'no-spiral':
      'In diesem Bild wurde keine Spirale gefunden. Scannen Sie das Blatt ganz und gerade, ohne weitere Zeichnungen darauf.',
    'few-turns': 'Die Spirale hat zu wenige Windungen, um ihr Schwanken zu beurteilen: Zwei oder mehr sind nötig.',
    'spiral-broken': 'Teile der Linie fehlen oder kreuzen sich, darum sind die Zahlen ungenau.',
  },
  printedAll: `Alle Zeilen sehen gedruckt aus, nicht geschrieben. ${printed}`,
  printedOne: (line) => `Zeile ${line} sieht gedruckt aus, nicht geschrieben. ${printed}`,
  printedSome: (lines) => `Die Zeilen ${lines} sehen gedruckt aus, nicht geschrieben. ${printed}`,
  hands: (line) =>
    `Größe, Schräge oder Strich ändern sich ab Zeile ${line} auf Dauer: vielleicht zwei Personen, zwei Stifte oder zwei Schreibweisen. Messwerte des ganzen Blattes vermischen sie. Messen Sie eines nach dem anderen.`,
  faint: (percent) =>
    `Die Schrift ist blass (Kontrast ${percent} %). Das Bild wurde vor dem Lesen abgedunkelt, aber feine Striche können verloren gehen, und die Buchstaben geraten kleiner. Scannen Sie es dunkler, oder lassen Sie mit weicherem Bleistift oder Kugelschreiber schreiben.`,
  leftOut: (words) => `Auf dem Blatt nicht gefunden, vielleicht ausgelassen: ${words}.`,
  foreign: (n) =>
    `${n === 1 ? 'Ein Wort auf dem Blatt steht' : `${n} Wörter auf dem Blatt stehen`} nicht im Text: vielleicht durchgestrichen oder hinzugefügt.`,
  lookAtWords: 'Sehen Sie die Wörter an und berichtigen Sie, was nicht stimmt.',
  doubtful: (gaps) =>
    `Lücken zwischen Buchstaben und zwischen Wörtern ähneln sich hier sehr: ${gaps === 1 ? 'Etwa 1 Lücke kann' : `Etwa ${gaps} Lücken können`} für die andere Art gehalten worden sein. Sehen Sie die markierten Wörter an, verbinden oder teilen Sie sie, oder geben Sie den Text an.`,
  rulingUnusual: (mm) =>
    `Nach diesem Maßstab liegen die gedruckten Linien ${mm} mm auseinander, was kein übliches Papier ist. Prüfen Sie den Maßstab.`,
  rulingDiffers: (mm, known) =>
    `Nach diesem Maßstab liegen die gedruckten Linien ${mm} mm auseinander, dieses Papier hat aber ${known} mm. Prüfen Sie den Maßstab.`,
  sizeUnlikely: (mm) =>
    `Nach diesem Maßstab sind die kleinen Buchstaben ${mm} mm hoch, was keine übliche Handschrift ist. Prüfen Sie den Maßstab, bevor Sie eine Zahl dieses Blattes benutzen.`,
  spiralAlone:
    'Die vier Eckmarken des gedruckten Blattes waren nicht zu sehen, darum wurde das Bild für eine einzelne Spirale auf blankem Papier gehalten. Scannen Sie das ganze Blatt, um beide zu haben.',
  spiralNoScale:
    'Weder die Eckmarken des gedruckten Blattes noch ein Maßstab wurden gefunden, darum wurde nichts gemessen. Scannen Sie das ganze Blatt mit allen vier Ecken.',
  spiralPale:
    'Der Stift ist kaum dunkler als die gedruckte Linie, darum wird die Linie vielleicht nur in Teilen gelesen. Nehmen Sie einen dunklen Stift.',
};
