import { doseHows } from './dose-hows.ts';
import type { Texts } from './en.ts';

const minutes = (n: number): string => `${String(n).replace('.', ',')} ${n === 1 ? 'Minute' : 'Minuten'}`;

/** German, in the same shape. Written for this program; to be checked by a German-speaking clinician before first use. */
export const de: Texts = {
  practice: {
    bar: (mm) => `${mm} mm`,
    measured: (mm) => `${mm} mm lang?`,
    yes: 'ja',
    no: 'nein',
    title: 'Übungsblatt',
    dayTitle: (day, days, what) => `Übungsblatt ${day} von ${days}: ${what}`,
    instruction: 'Hören Sie auf, wenn eine Zeile schwer lesbar wird.',
    sample: 'Bitte rufen Sie vor halb neun zurück.',
    rest: (minutes) => `Hier aufhören. ${minutes} Minuten Pause, dann sehen Sie Ihre Zeilen an.`,
    restFresh: 'Hier aufhören. Pause, bis Sie so frisch sind wie am Anfang, dann sehen Sie Ihre Zeilen an.',
    nextTime: 'Für heute hier aufhören. Die Zeilen darunter sind für das nächste Mal.',
    check: { date: 'Datum', payTo: 'Zahlen Sie an', sum: 'Betrag in Worten', sign: 'Unterschrift', mark: 'ÜBUNG' },
    figures: ['1 7 1 7', '4 9 4 9', '0 6 0 6', '12,50', '407,96'],
  },
  spiral: {
    title: 'Zwei Spiralen',
    hand: 'Hand',
    seconds: 'Sekunden',
    traced: '1  Auf der Linie',
    tracedHow: [
      'Von der Mitte nach außen,',
      'auf der grauen Linie,',
      'ohne anzuhalten.',
      'Dunkler Stift. Die Hand',
      'liegt nicht auf dem Tisch.',
    ],
    free: '2  Frei',
    freeHow: ['Von der Mitte nach außen,', 'vier Runden ohne Linie,', 'etwa so groß wie oben,', 'ohne anzuhalten.'],
  },
  occasions: {
    signature: 'Unterschrift',
    check: 'Scheck',
    list: 'Liste',
    message: 'Nachricht',
    form: 'Formular',
    card: 'Karte',
    diary: 'Tagebuch',
    work: 'Notizen bei der Arbeit',
    recipe: 'Rezept',
    'name-address': 'Name und Adresse',
    numbers: 'Datum und Zahlen',
    board: 'Tafel',
    other: 'eigene Wörter',
  },
  common: {
    name: 'Name',
    date: 'Datum',
    next: 'Nächster Termin',
    hand: { right: 'rechts', left: 'links' },
    call: (name, number) => `Fragen? Rufen Sie an: ${[name, number].filter(Boolean).join(', ')}.`,
    callBlank: 'Fragen? Rufen Sie an: ______________________',
    deferShort:
      'Dieses Blatt ist von Ihrer Ergotherapie. Wurde Ihnen etwas anderes gesagt, fragen Sie uns bitte zuerst.',
    deferLong:
      'Dieses Blatt hilft, aber es ersetzt nicht das Urteil der Ergotherapie, die es Ihnen gab. Es ist keine Diagnose. ' +
      'Halten Sie sich an Ihre Ergotherapie und an die Regeln vor Ort, wenn sie etwas anderes sagen. ' +
      'Rufen Sie im Notfall den Notruf an.',
    from: (who, clinic) => [who, clinic].filter(Boolean).join(', '),
    pageOf: (page, pages) => `Blatt ${page} von ${pages}`,
  },
  dose: {
    minutes,
    lines: (n) => `${n} ${n === 1 ? 'Zeile' : 'Zeilen'}`,
    reps: (sets, reps) => (sets && sets > 1 ? `${sets} Runden, je ${reps}-mal` : `${reps}-mal`),
    restTime: ({ least, most }) =>
      most === null
        ? `mindestens ${minutes(least)}`
        : most === least
          ? minutes(least)
          : `${least} bis ${minutes(most)}`,
    rest: (time) => `Pause: ${time}`,
    restAfterEach: (time) => `nach jeder Runde Pause: ${time}`,
    doThese: (often) => `Machen Sie das ${often}.`,
    perDay: (n) => (n === 1 ? 'einmal am Tag' : n === 2 ? 'zweimal am Tag' : `${n}-mal am Tag`),
    perWeek: (n) => (n === 7 ? 'jeden Tag' : n === 1 ? 'an einem Tag pro Woche' : `an ${n} Tagen pro Woche`),
    turns: (turns, each) => (turns === 1 ? `eine Runde, ${minutes(each)}` : `${turns} Runden, je ${minutes(each)}`),
    linesATurn: (n) => `${n} ${n === 1 ? 'Zeile' : 'Zeilen'} pro Runde`,
    how: doseHows,
  },
  stop: {
    title: 'Wann Sie aufhören',
    line: 'Hören Sie auf, wenn eine Zeile schwer lesbar wird. Das gehört zum Plan.',
    signs:
      'Hören Sie auf und rufen Sie uns an: Schmerz, der mehr als leicht ist oder zunimmt, Kribbeln, taube Finger, ' +
      'die Haut ändert ihre Farbe.',
    signsSore:
      'Hören Sie auf und rufen Sie uns an: mehr Schmerz als am Anfang, Kribbeln, taube Finger, die Haut ändert ihre Farbe.',
    emergency:
      'Wählen Sie den Notruf: neue Schwäche, eine Seite taub, Gesicht oder Sprache anders als sonst, plötzlicher oder ' +
      'neuer Schwindel, kein Gleichgewicht, Sie sehen doppelt oder gehen schlecht.',
  },
  family: {
    title: 'Ihr Termin zum Schreiben',
    sawTitle: 'Was wir gesehen haben',
    saw: {
      unfamiliar: (right, of, readers) =>
        `${readers > 1 ? `${readers} fremde Personen lasen etwa` : 'Jemand Fremdes las'} ${right} von ${of} Wörtern.${of < 20 ? ' Ein kurzer Text kann täuschen.' : ''}`,
      family: (right, of, readers) =>
        `${readers > 1 ? `${readers} Personen, die Ihnen nahe stehen, lasen etwa` : 'Jemand, der Ihnen nahe steht, las'} ${right} von ${of} Wörtern.`,
      therapist: (right, of) => `In der Therapie wurden ${right} von ${of} Wörtern gelesen.`,
    },
    allAgain: 'Auch beim letzten Mal waren es alle. Wir können etwas Schwereres probieren.',
    noneAgain: 'Es war wie beim letzten Mal. Nun sehen wir einzelne Buchstaben an: Sie ändern sich zuerst.',
    sawMore: {
      up: 'Das ist mehr als vorher, und mehr als das übliche Auf und Ab.',
      down: 'Das ist weniger als vorher, und mehr als das übliche Auf und Ab. Wir sehen den Plan mit Ihnen an.',
      steady: 'Das ist etwa so viel wie vorher.',
      'cannot-tell': 'An manchen Tagen geht das Schreiben besser als an anderen. Wir wissen es noch nicht.',
      'not-comparable': 'Dieses Mal haben Sie anders geschrieben. Darum können wir es noch nicht vergleichen.',
      nothing: '',
    },
    probably: {
      up: 'Es sieht nach mehr aus als vorher. Ein weiterer Tag mit Schreiben zeigt, ob es so ist.',
      down: 'Es sieht nach weniger aus als vorher. Ein weiterer Tag mit Schreiben zeigt, ob es so ist.',
    },
    lastTime: (right, of) => `Beim letzten Mal waren es ${right} von ${of}.`,
    firstTime: (right, of) => `Am Anfang waren es ${right} von ${of}.`,
    notReadYet:
      'Heute haben Sie für uns geschrieben. Es hat noch niemand gelesen. Wir sagen es Ihnen beim nächsten Mal.',
    noSample: 'Heute haben wir Ihr Schreiben nicht geprüft.',
    harderChanged: 'Heute war es schwerer. Wir haben den Plan geändert.',
    harder: 'Heute war es schwerer. Das kommt vor. Wir sehen beim nächsten Mal wieder hin.',
    otherConditions: 'Dieses Mal war einiges anders. Das ist schwer zu vergleichen.',
    picture: (date) => `Geschrieben am ${date}`,
    pictureOf: (caption) => `Bild von Zeilen in Handschrift. ${caption}.`,
    then: (date) => `Am Anfang, ${date}`,
    now: (date) => `Jetzt, ${date}`,
    goalTitle: 'Ihr Ziel',
    goalRead: {
      unfamiliar: (right, of) => `Jemand Fremdes liest ${right} von ${of} Wörtern.`,
      family: (right, of) => `Ihre Familie kann ${right} von ${of} Wörtern lesen.`,
    },
    inYourWords: (words) => `Sie sagten: „${words}“`,
    nextStep: (step) => `Nächster Schritt: ${step.replace(/[.\s]*$/, '.')}`,
    practiceTitle: 'Was Sie üben',
    noProgram: 'Zurzeit üben Sie nicht zu Hause.',
    more: 'Mehr steht auf Ihrem Blatt „Üben zu Hause“.',
    elsewhere: 'Was Sie üben, steht auf Ihrem Blatt „Üben zu Hause“.',
    careElsewhere: 'Beachten Sie Ihr Blatt „Üben zu Hause“.',
    // Nouns keep their capital.
    inSentence: (title) => title,
    use: (what) => `Nehmen Sie: ${what}.`,
    hand: (hand) => `Schreiben Sie mit ${hand}.`,
    glasses: 'Setzen Sie die Brille auf.',
    afterTablet: (minutes) => `Fangen Sie etwa ${minutes} Minuten nach Ihrer Tablette an.`,
    missed: 'Einen Tag verpasst? Das macht nichts. Machen Sie nicht das Doppelte.',
    bring: 'Bringen Sie bitte Stift, Blätter und Protokoll mit.',
    helpTitle: 'Wie andere helfen können',
    setUp: 'Stellen Sie Stuhl, Tisch und Papier bereit.',
    help: [
      'Loben Sie die Mühe. Verbessern Sie nicht jeden Buchstaben.',
      'Halten Sie die Hand nur, wenn wir es gezeigt haben.',
    ],
    setupTitle: 'Stuhl und Tisch',
    setup: {
      like: 'Stellen Sie Stuhl und Tisch so.',
      seat: (cm) => `Sitz: ${cm} hoch, wenn Sie darauf sitzen.`,
      table: (cm) => `Tisch: ${cm} hoch.`,
      footrest: (cm) =>
        `Stellen Sie einen festen Block von ${cm} unter beide Füße. Schieben Sie ihn vor dem Aufstehen weg.`,
      raiseChair: ({ now, by, cushion }) =>
        `Ihr Stuhl ist ${now} hoch: ${cushion ? `Mit einem festen Kissen um ${by} höher` : `Stellen Sie ihn um ${by} höher`}.`,
      lowerChair: ({ now, by }) => `Ihr Stuhl ist ${now} hoch: Stellen Sie ihn um ${by} niedriger.`,
      raise: (cm) => `Stellen Sie den Tisch mit festen Klötzen um ${cm} höher.`,
      labels: { seat: 'Sitz', table: 'Tisch', footrest: 'Füße' },
    },
  },
  program: {
    title: 'Üben zu Hause',
    forAll: 'Für alles hier:',
    visitTitle: 'Bei uns, an Ihren Terminen',
    setupTitle: 'Bevor Sie anfangen',
    doTitle: 'Was Sie tun',
    useTitle: 'Was Sie benutzen',
    goodTitle: 'Gut zu wissen',
    careTitle: 'Vorsicht',
    helpTitle: 'Für alle, die helfen',
    dayTotal: (minutes) => `Im Ganzen etwa ${minutes} Minuten an einem Tag mit Übung.`,
    draft: 'ENTWURF, noch nicht freigegeben',
    notCoSigned: 'Nicht gegengezeichnet',
    preparedBy: (by, signedBy) =>
      `Erstellt von ${by} (Assistenz oder in Ausbildung), ${signedBy === null ? 'nicht gegengezeichnet' : `gegengezeichnet von ${signedBy}`}.`,
    approved: (date, by, rules) => `Freigegeben am ${date} von ${by}. Regeln ${rules}.`,
  },
  log: {
    title: 'Übungsprotokoll',
    intro:
      'Eine Zeile pro Tag. Füllen Sie aus oder kreuzen Sie an, was passt. Müde und Schmerz: 0 ist nichts, 10 ist am meisten. ' +
      'Jemand anderes darf ankreuzen.',
    head: ['Tag', 'Getan', 'Minuten', 'Müde vorher', 'Müde danach', 'Schmerz', 'Es war'],
    circles: { done: 'ja', felt: ['leicht', 'mittel', 'schwer'] },
    stop: 'Hören Sie auf, wenn eine Zeile schwer lesbar wird. Das gehört zum Plan.',
    bring: 'Bringen Sie dieses Blatt zum nächsten Termin mit.',
  },
  caregiver: {
    title: 'Wie Sie helfen können',
    setupTitle: 'Bevor Sie anfangen',
    seat: (height) => `Der Sitz ist ${height} hoch.`,
    cueTitle: 'Ein Wort vor der Zeile',
    task: (title) => `Aufgabe für heute: ${title.replace(/[.\s]*$/, '.')}`,
    cue: [
      'Sagen Sie vor der Zeile ein kurzes Wort: das, das wir Ihnen gesagt haben.',
      'Sagen Sie nichts, solange der Stift sich bewegt.',
      'Warten Sie 10 Sekunden, bevor Sie helfen.',
      'Sagen Sie dann eine Sache, die gut war.',
    ],
    fadingTitle: 'Dann weniger helfen',
    fading: [
      'Zuerst: ein Wort vor jeder Zeile.',
      'Dann: vor jeder zweiten Zeile.',
      'Dann: nur vor der ersten Zeile.',
      'Dann: kein Wort.',
      'Gehen Sie nach 3 guten Tagen einen Schritt weiter. Gehen Sie nach einem schweren Tag einen Schritt zurück.',
    ],
    notTitle: 'Was nicht hilft',
    not: [
      'Halten Sie nicht die Hand.',
      'Verbessern Sie keine Buchstaben.',
      'Schreiben Sie keine Wörter zu Ende.',
      'Machen Sie nicht weiter, wenn die Hand müde ist.',
    ],
  },
  card: {
    title: 'Beim Schreiben prüfen',
    beforeTitle: 'Bevor ich anfange',
    before: [
      'Körper und Arm so, wie es mir gezeigt wurde.',
      'Papier gedreht, wie es mir gezeigt wurde.',
      'Stift bereit, Brille auf, wenn ich sie brauche.',
    ],
    duringTitle: 'Nach jeder Zeile',
    during: [
      'Ich sehe die Zeile an. Kann ich jedes Wort lesen?',
      'Halte ich den Stift, wie es mir gezeigt wurde? Liegt die Hand richtig?',
      'Pause. Die Hand ruht offen.',
    ],
    afterTitle: 'Am Ende',
    after: [
      'Ich schätze: Man kann ____ von ____ Wörtern lesen.',
      'Jemand konnte ____ von ____ Wörtern lesen.',
      'Wurden die Zeilen nach einer Pause schlechter, mache ich das nächste Mal länger Pause.',
    ],
    stop: 'Ich höre auf, wenn eine Zeile schwer lesbar wird. Ich mache später oder morgen weiter.',
    signed: {
      duringTitle: 'Nach jeder Unterschrift',
      look: 'Ich sehe sie an. Ist es meine?',
      stop: 'Ich höre auf, wenn die Hand müde wird. Ich mache später oder morgen weiter.',
    },
  },
};
