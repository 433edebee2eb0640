import type { Told } from '../../../en/screens-en.ts';

const termine = (n: number) => (n === 1 ? '1 Termin' : `${n} Termine`);
const tage = (n: number) => (n === 1 ? '1 Tag' : `${n} Tage`);

export const paperToldDe: Told['paper'] = {
  kinds: {
    'family-summary': ['Familienblatt', 'eine Seite, einfache Worte'],
    'home-program': ['Üben zu Hause', 'mit Übungsprotokoll und Karte'],
    'practice-pages': ['Übungsblätter', 'maßstabsgetreu'],
    'spiral-sheet': ['Spiralblatt', 'zum Zeichnen, maßstabsgetreu'],
    caregiver: ['Blatt für Helfende', 'ein Hinweis, dann weniger'],
    'initial-evaluation': ['Erstbefund', 'erster Termin, mit Screening'],
    'visit-note': ['Terminnotiz', 'Text zum Kopieren'],
    'progress-report': ['Verlaufsbericht', 'für den Kostenträger'],
    letter: ['Brief', 'an die überweisende Stelle'],
    referral: ['Überweisung', 'nach einem Warnzeichen'],
    discharge: ['Abschlussbericht', 'mit Plan zum Dranbleiben'],
  },
  sheets: (count) => `${count} ${count === 1 ? 'Blatt' : 'Blätter'}`,
  rulings: {
    squares: (mm) => `Kästchen ${mm} mm`,
    dashed: (mm) => `Gestrichelte Mittellinie ${mm} mm`,
    ruled: (mm, name) => `Liniert ${mm} mm (${name})`,
    guide: (mm) => `Linienblatt zum Unterlegen ${mm} mm`,
    boxes: (mm) => `Formularkästchen ${mm} mm`,
  },
  ruledNames: { 'ruled-8.7': 'breit', 'ruled-8': 'blass', 'ruled-7.1': 'mittel', 'ruled-6.35': 'schmal' },
  otherRulings: {
    plain: 'Blanko',
    signature: 'Unterschriftsfelder',
    'signature-large': 'Große Unterschriftsfelder',
    'check-large': 'Große Übungsschecks',
    'check-true': 'Übungsschecks, echte Größe',
    'dots-30': 'Punkte zum Verbinden, 30 mm Abstand',
    'lean-10': 'Schräge Linien zum Unterlegen',
  },
  pictures: 'Bilder',
  actualSize:
    'In tatsächlicher Größe drucken (100 %). „An Seite anpassen“ macht die Linien kleiner, als sie sein sollen.',
  sinceReport: (visits, days, due, dueVisits, dueDays, reported) => {
    const limits = [
      dueVisits === null ? '' : dueVisits === 1 ? '1 Termin' : `${dueVisits} Terminen`,
      dueDays === null ? '' : dueDays === 1 ? '1 Tag' : `${dueDays} Tagen`,
    ];
    const rule =
      due === 'none'
        ? ''
        : due === 'now'
          ? '; ein Bericht ist jetzt fällig'
          : `; ein Bericht ist nach ${limits.filter(Boolean).join(' oder ')} fällig`;
    const gone = days === 0 ? '' : ` und ${tage(days)}`;
    return `${termine(visits)}${gone} seit ${reported ? 'dem letzten Bericht' : 'Beginn der Behandlung'}${rule}.`;
  },
  authorized: (used, of) =>
    used > of
      ? `${termine(used)} verbraucht, ${used - of} mehr als die ${of} genehmigten.`
      : `${used} von ${of} genehmigten Terminen verbraucht, ${of - used} übrig.`,
  certified: (day, left) =>
    left < 0
      ? `Verordnung endete am ${day}, vor ${Math.abs(left) === 1 ? '1 Tag' : `${Math.abs(left)} Tagen`}.`
      : `Verordnung bis ${day}: noch ${tage(Math.abs(left))}.`,
  missed: (visits) => (visits === 1 ? '1 Termin versäumt.' : `${visits} Termine versäumt.`),
};
