import type { Told } from '../../en/screens-en.ts';

/** In German. Spirals on paper: what the drawn line shows. */
export const spiralDe: Told['spiral'] = {
  names: { traced: 'Auf der Linie', free: 'Frei' },
  leaves: (mm, percent, turns) =>
    `Die Linie weicht um ${mm} mm (rms) von einer gleichmäßigen Spirale ab, ${percent} % des Abstands der Windungen, über ${turns} Windungen.`,
  noSwings: 'Keine Schwingungen treten hervor.',
  swings: (turn, cm) =>
    `Sie schwingt ${turn}-mal pro Windung hinaus und zurück${cm === '' ? '' : `, am regelmäßigsten ${cm}-mal pro cm Linie`}.`,
  noTime: 'Ohne die Zeit des Zeichnens werden keine Schwingungen pro Sekunde angegeben.',
  perSecond: (seconds, hz) => `Gezeichnet in ${seconds} s: im Mittel ${hz} Schwingungen pro Sekunde.`,
  fromPrinted: (mm) => `Sie liegt ${mm} mm (rms) von der gedruckten Linie, langsames Wandern eingeschlossen.`,
  before: (day, mm, swings, hz) =>
    `Am ${day}: ${mm} mm, ${swings} Schwingungen pro Windung${hz === '' ? '' : `, ${hz} pro Sekunde`}.`,
  caution:
    'Gemessen wird die Linie, nicht woher sie kommt: Auch raues Papier, ein harter Stift, Ecken und eine langsame Hand schwingen. Langsames Wandern (unter 2,5 Schwingungen pro Windung) gilt als Form der Spirale. Ohne weitere Blätter desselben Tages ist nicht bekannt, wie sehr diese Hand streut; zwei verschiedene Blätter zeigen darum noch keine Änderung.',
};
