/**
 * Spanish for what the lines of the shipped rule table tell client and family to do, and for the titles of set-up,
 * advice and referral lines, by their English words. Written for this program; to be checked by a Spanish-speaking
 * clinician before first use.
 */
export const shippedEsTexts: Readonly<Record<string, string>> = {
  // Hand and arm.
  'Pick the pen up. Hold it. Put it down. Open your hand each time.':
    'Tome el bolígrafo. Sujételo. Déjelo en la mesa. Abra la mano cada vez.',
  'Hold the pen. Bend your fingers to bring it to you. Straighten them to push it away.':
    'Sujete el bolígrafo. Doble los dedos para acercarlo. Estírelos para alejarlo.',
  'Walk your fingers up the pen to the top. Walk them back to the tip.':
    'Suba con los dedos por el bolígrafo hasta arriba. Baje otra vez hasta la punta.',
  'Roll the pen to and fro between your thumb and the tips of two fingers.':
    'Haga rodar el bolígrafo entre el pulgar y la punta de dos dedos.',
  'Turn the pen end to end with one hand, then back.': 'Dé la vuelta al bolígrafo con una mano, y otra vez al revés.',
  'Hold three paper clips in your palm. Bring them to your fingertips, one by one.':
    'Tenga tres clips en la palma. Llévelos a la punta de los dedos, uno por uno.',
  'Lay your hand on the table. With the other hand, open it flat, very slowly. Count to 30. Let go slowly.':
    'Ponga la mano en la mesa. Con la otra mano ábrala del todo, muy despacio. Cuente hasta 30. Suelte despacio.',
  'Sit. Put your open hand flat next to you. Lean on it a little, slowly. Breathe. Come back.':
    'Siéntese. Ponga la mano abierta a su lado. Apóyese un poco en ella, despacio. Respire. Vuelva.',
  'Touch your thumb to each fingertip, very slowly. Open the hand wide in between.':
    'Toque con el pulgar la punta de cada dedo, muy despacio. Abra bien la mano entre uno y otro.',
  'Touch your thumb to each fingertip, one by one, as quick as it stays neat.':
    'Toque con el pulgar la punta de cada dedo, uno por uno, tan rápido como le salga bien.',
  'Open and close your hand slowly. Then draw big slow rounds on the paper.':
    'Abra y cierre la mano despacio. Luego dibuje círculos grandes y lentos en el papel.',
  'Put the pen down. Let your hand lie open. Spread the fingers gently and let go.':
    'Deje el bolígrafo. Deje la mano abierta. Separe los dedos con suavidad y suelte.',
  'Sit tall. Turn your head slowly to one side, then to the other. Keep the shoulders down.':
    'Siéntese derecho. Gire la cabeza despacio a un lado y al otro. Los hombros, bajos.',
  'Squeeze the soft putty gently. Open your hand all the way after each one.':
    'Apriete la masilla blanda con suavidad. Abra la mano del todo cada vez.',
  'Roll the soft putty into a rope. Pinch it gently between thumb and finger.':
    'Haga un rollo con la masilla blanda. Pellízquelo con suavidad entre el pulgar y un dedo.',
  'Flatten the putty. Draw strokes and letters in it with your finger. Watch your finger.':
    'Aplane la masilla. Dibuje trazos y letras en ella con el dedo. Mire el dedo.',
  'Lay your forearm on the table with the hand over the edge. Lift the hand slowly. Hold it. Let it down.':
    'Apoye el antebrazo en la mesa, con la mano fuera del borde. Suba la mano despacio. Manténgala. Bájela.',
  'Lay your hand on a cloth. Slide it slowly over the table and back. Keep your shoulder down.':
    'Ponga la mano sobre un paño. Deslícela despacio por la mesa, ida y vuelta. El hombro, bajo.',
  'Feel each thing with your fingers and look at it. Sort soft from rough.':
    'Toque cada cosa con los dedos y mírela. Separe lo suave de lo áspero.',
  'Close your eyes. Feel a coin or a key. Name it. Look to check.':
    'Cierre los ojos. Toque una moneda o una llave. Diga qué es. Mire si acertó.',
  // Writing.
  'Copy one line at a time. Look at the model, then write. Leave a gap between words.':
    'Copie una línea cada vez. Mire el modelo y escriba. Deje un hueco entre palabras.',
  'Write your own list, note or card. Write so that someone else can read it.':
    'Escriba su lista, nota o tarjeta. Escriba de modo que otra persona lo lea.',
  'Look at the picture. Copy the word under it. Say it if you can.':
    'Mire el dibujo. Copie la palabra. Dígala si puede.',
  'These letters were hard to read: {letters}. Look, write, cover, write again, compare.':
    'Costó leer estas letras: {letters}. Mire, escriba, tape, escriba otra vez, compare.',
  'Write small letters, then capitals, then numbers. One letter in each box.':
    'Escriba minúsculas, luego mayúsculas, luego números. Una letra en cada casilla.',
  'Write numbers and sums of money. Give each figure its own box. Make the 1, 4, 7 and 9 clear.':
    'Escriba números y cantidades de dinero. Cada cifra en su casilla. Que se distingan bien 1, 4, 7 y 9.',
  'Print each letter by itself. Use short words.': 'Escriba cada letra suelta. Use palabras cortas.',
  'Print your letters for now. Do not join them. Your own style comes back once it reads well.':
    'Por ahora escriba letras sueltas. No las una. Su letra vuelve cuando se lea bien.',
  'Write one line in print and one in your own style. Keep the style that reads well.':
    'Escriba una línea con letras sueltas y otra con su letra. Quédese con la que se lee bien.',
  'Put your pen on the first dot. Write to the last dot. Watch the tip.':
    'Ponga el bolígrafo en el primer punto. Escriba hasta el último. Mire la punta.',
  'Put your arm down first. Wait two seconds. Then let the pen touch the paper.':
    'Primero apoye el brazo. Espere dos segundos. Luego toque el papel con el bolígrafo.',
  'Before each line say: "Fill the space." Make the letters touch both lines.':
    'Antes de cada línea diga: «Lleno el espacio». Que las letras toquen las dos líneas.',
  'Write four or five words. Stop at the mark. Lift your hand, move it on, make the first letter big again.':
    'Escriba cuatro o cinco palabras. Pare en la marca. Levante la mano, muévala y haga grande la primera letra.',
  'Lift the pen after each letter. Put one letter in each box.':
    'Levante el bolígrafo después de cada letra. Una letra por casilla.',
  'Lay the spacer after each word. Start the next word behind it.':
    'Ponga el separador después de cada palabra. Empiece la siguiente detrás.',
  'Start at the dot and aim for the dot at the end. Let the letters stand on the line.':
    'Empiece en el punto y vaya hacia el punto del final. Que las letras se apoyen en la línea.',
  'Write a, d, g, o and q slowly. Close the round. Then lift the pen.':
    'Escriba a, d, g, o y q despacio. Cierre el círculo. Luego levante el bolígrafo.',
  'Write pairs: h and n, d and a, g and a, y and v. Make the tall ones tall. Let the others hang.':
    'Escriba parejas: h y n, d y a, g y a, y y v. Las altas, bien altas. Las otras, que bajen.',
  'Write a row of words. Make all the middle letters touch the dashed line.':
    'Escriba una fila de palabras. Que las letras medianas toquen la línea de rayas.',
  'Lay the page with slanted lines under your sheet. Let the long strokes follow them.':
    'Ponga la hoja de líneas inclinadas debajo de la suya. Que los trazos largos las sigan.',
  'Look at the model. Put the letter in the box so that it stands on the line.':
    'Mire el modelo. Ponga la letra en la casilla, apoyada en la línea.',
  'Write one word dark and one word light. Then write as light as you can still read.':
    'Escriba una palabra fuerte y otra suave. Luego escriba tan suave como aún pueda leer.',
  'Someone reads three short lines to you. Write them down. Then write three of your own.':
    'Alguien le lee tres líneas cortas. Escríbalas. Luego escriba tres suyas.',
  'Write three short lines. Take the time. Next time be a bit quicker, but stay easy to read.':
    'Escriba tres líneas cortas. Mida el tiempo. La próxima vez un poco más rápido, pero que se lea bien.',
  // Chair, table, paper.
  'Chair and table first': 'Primero, silla y mesa',
  'Higher seat and a footrest': 'Asiento más alto y reposapiés',
  'The table is high for you. Sit on the firm cushion and put both feet on the footrest.':
    'La mesa es alta para usted. Siéntese en el cojín firme y ponga los dos pies en el reposapiés.',
  'Higher table': 'Mesa más alta',
  'The table is low for you. Put the blocks under the legs so that your arm can rest on the top.':
    'La mesa es baja para usted. Ponga los bloques bajo las patas, para que el brazo descanse encima.',
  Footrest: 'Reposapiés',
  'Put the footrest under both feet so that your heels rest on it.':
    'Ponga el reposapiés bajo los dos pies, con los talones apoyados.',
  'Room for the legs': 'Sitio para las piernas',
  'Use a table without a drawer. Your legs need room under it.':
    'Use una mesa sin cajón. Las piernas necesitan sitio debajo.',
  'Flatter slope': 'Menos inclinación',
  'Take the slope down until your arm stays on it and does not slide.':
    'Baje la inclinación hasta que el brazo no resbale.',
  'Forearm on the table': 'Antebrazo en la mesa',
  'Move the chair in. Let your forearm lie on the table, up to the elbow, while you write.':
    'Acerque la silla. El antebrazo descansa en la mesa, hasta el codo, mientras escribe.',
  'Elbow, forearm and hand on the table': 'Codo, antebrazo y mano en la mesa',
  'Sit well back': 'Bien atrás en la silla',
  'Sit well back. Put the rolled towel behind your lower back. Keep your chest near the table.':
    'Siéntese bien atrás. Ponga la toalla enrollada detrás de la cintura. El pecho, cerca de la mesa.',
  'Turn of the forearm': 'Giro del antebrazo',
  'Turn the paper, not the wrist. Lay the forearm where it turns with ease.':
    'Gire el papel, no la muñeca. Ponga el antebrazo donde gire con facilidad.',
  'Left-hand set-up': 'Para escribir con la izquierda',
  'Lay the paper to the left. Turn its top to the right. Keep your hand under the line. Let the light come from the right. Use loose sheets, or turn the pad so that no ring is under your hand. If your hand hooks by habit, let it.':
    'Ponga el papel a la izquierda. Gire la parte de arriba a la derecha. La mano, debajo de la línea. La luz, desde la derecha. Use hojas sueltas, o gire el cuaderno para que no haya anillas bajo la mano. Si su mano se dobla por costumbre, déjela.',
  'Paper in the middle, bright line': 'Papel en el centro, línea viva',
  'Put the paper straight in front of you. Draw the bright line down the side you miss. Find the line before each row.':
    'Ponga el papel recto, delante de usted. Trace la línea viva en el lado que se le escapa. Búsquela antes de cada fila.',
  'Look to the edge': 'Mirar hasta el borde',
  'Put your finger on the edge of the paper on the side you do not see. Look to the finger before each line.':
    'Ponga un dedo en el borde del papel, en el lado que no ve. Mire el dedo antes de cada línea.',
  'Sloped board and stand': 'Tablero inclinado y atril',
  'Write on the sloped board. Put what you copy on the stand, at the height of your eyes.':
    'Escriba en el tablero inclinado. Ponga lo que copia en el atril, a la altura de los ojos.',
  // Good to know.
  'When the hand is loose': 'Cuando la mano está suelta',
  'Write at the time of day when your hand is loosest.': 'Escriba a la hora en que la mano está más suelta.',
  'When the tablet works': 'Cuando hace efecto la pastilla',
  'Write when your tablet works best. Write the time on the sheet each day.':
    'Escriba cuando la pastilla le haga más efecto. Apunte la hora en la hoja cada día.',
  'Best time and usual time': 'La mejor hora y la hora de siempre',
  'Once a week write one line at your best time and one at your usual time. Put both times on the sheet.':
    'Una vez por semana escriba una línea en su mejor hora y otra en la de siempre. Apunte las dos horas.',
  'When you are fresh': 'Cuando esté descansado',
  'Write in the morning or after a rest, in a cool room. On a bad day do less.':
    'Escriba por la mañana o después de descansar, en un cuarto fresco. En un mal día haga menos.',
  'Short turns with rests': 'Ratos cortos con descansos',
  'Write a few lines, put the pen down, rest. Go on when you are nearly as fresh as before.':
    'Escriba unas líneas, deje el bolígrafo, descanse. Siga cuando esté casi tan fresco como antes.',
  'Two minutes off': 'Dos minutos de pausa',
  'One card, one step': 'Una tarjeta, un paso',
  'Let the lines wobble': 'Deje que tiemblen las líneas',
  'Your lines wobble and can still be read. That is fine. There is no drill for it.':
    'Sus líneas tiemblan y aun así se leen. Está bien. No hay que practicar nada para eso.',
  'Keep your own hold': 'Su manera de sujetar',
  'You hold the pen in your own way, and it works. Keep it.':
    'Usted sujeta el bolígrafo a su manera, y funciona. Siga así.',
  'Eyes on the hand': 'Los ojos en la mano',
  'Watch your hand while you write. Look at the skin before and after. Keep the hand away from heat and sharp things.':
    'Mire la mano mientras escribe. Mire la piel antes y después. La mano, lejos del calor y de cosas afiladas.',
  'Look at the skin': 'Mire la piel',
  'Look at the finger pads before and after you write. Wear no sleeve at night.':
    'Mire las yemas antes y después de escribir. De noche no lleve ninguna funda.',
  'Something you want to write': 'Algo que quiera escribir',
  'Choose one thing you would like to write this week. We start with that.':
    'Elija una cosa que le gustaría escribir esta semana. Empezamos por ahí.',
  'Change one thing': 'Cambiar una cosa',
  'We change one thing now and look again in two weeks. You keep on writing.':
    'Ahora cambiamos una cosa y miramos otra vez en dos semanas. Usted sigue escribiendo.',
  'Look, fix, pause': 'Mirar, corregir, pausa',
  'After each line stop and look. Can you read it? Fix your hold. Take a breath. If the next line is worse, take a longer rest.':
    'Después de cada línea pare y mire. ¿Se lee? Acomode la mano. Respire. Si la siguiente sale peor, descanse más.',
  'Guess, then compare': 'Adivinar y comparar',
  'Guess how many words someone else can read. Let them read. Compare.':
    'Adivine cuántas palabras podrá leer otra persona. Que las lea. Compare.',
  'One line on plain paper': 'Una línea en papel blanco',
  'At each visit write one line on plain paper, with no help. We keep these lines side by side.':
    'En cada visita escriba una línea en papel blanco, sin ayuda. Guardamos estas líneas juntas.',
  'Pen grip diary': 'Diario del adaptador',
  'Write on the sheet which grip you used. Once a week write one line without it.':
    'Apunte en la hoja qué adaptador usó. Una vez por semana escriba una línea sin él.',
  'Which hand': 'Qué mano',
  'Other ways to write': 'Otras maneras de escribir',
  'For now let someone write for you, speak to the phone, or type. That is no step back.':
    'Por ahora deje que alguien escriba por usted, dicte al teléfono o use el teclado. No es un paso atrás.',
  'Days since the injection': 'Días desde la inyección',
  'Write on the sheet how many days ago you had the injection.': 'Apunte en la hoja cuántos días hace de la inyección.',
  'A reader of your script': 'Quien lee su escritura',
  'Someone who reads your script reads your lines. We count the words, not the letters.':
    'Alguien que lee su escritura lee sus líneas. Contamos las palabras, no las letras.',
  'Words you know': 'Palabras conocidas',
  'Use words you know well. Spelling does not count here.':
    'Use palabras que conoce bien. Aquí no cuenta la ortografía.',
  'Save your strength': 'Guarde fuerzas',
  'Stop long before your hand is tired. A short line that you like is enough.':
    'Pare mucho antes de que se canse la mano. Basta una línea corta que le guste.',
  'Rest the sore joint': 'Descanso para lo que duele',
  'Rest the sore joint. Move it gently and only as far as it does not hurt. Type or speak for now.':
    'Deje descansar la articulación. Muévala con suavidad y solo hasta donde no duela. Por ahora use el teclado o dicte.',
  'Be kind to your joints': 'Cuide las articulaciones',
  'Use thick, light things. Let big joints do the work. Rest before it hurts, not after.':
    'Use cosas gruesas y ligeras. Que trabajen las articulaciones grandes. Descanse antes de que duela, no después.',
  'Loose hold, straight wrist': 'Mano suelta, muñeca recta',
  'Hold the pen as loose as you can. Keep your wrist straight. Put the pen down as soon as it tingles.':
    'Sujete el bolígrafo lo más suelto que pueda. La muñeca, recta. Déjelo en cuanto note hormigueo.',
  'Pounding headache': 'Dolor de cabeza que late',
  'A pounding headache with sweat: sit up, make tight clothes loose, call the emergency number.':
    'Dolor de cabeza que late, con sudor: siéntese, afloje la ropa, llame al número de emergencias.',
  'Signs of a blocked shunt': 'Señales de una válvula tapada',
  'Your head hurts, you feel sick, or you sleep more than you used to: call for help at once.':
    'Le duele la cabeza, tiene náuseas o duerme más que antes: pida ayuda enseguida.',
  // Whom to ask.
  'Ask about the eyes': 'Pregunte por la vista',
  'Ask the eye clinic about glasses and light for writing.':
    'Pregunte en la consulta de la vista por gafas y luz para escribir.',
  'Ask about seating': 'Pregunte por la silla',
  'Ask for a look at your chair.': 'Pida que miren su silla.',
  'Ask about a splint': 'Pregunte por una férula',
  'Ask whether a splint could help you write.': 'Pregunte si una férula le ayudaría a escribir.',
  'Ask about words': 'Pregunte por las palabras',
  'Ask the speech therapist for help to find and spell words.':
    'Pida ayuda al logopeda para encontrar y escribir las palabras.',
  'Ask about the tight hand': 'Pregunte por la mano tensa',
  'Ask your doctor to look at the tight hand first.': 'Pida a su médico que mire primero la mano tensa.',
  'Ask about the shaking': 'Pregunte por el temblor',
  'Ask your doctor about the shaking. Ask what coffee and your tablets do to it.':
    'Pregunte a su médico por el temblor. Pregunte si el café y las pastillas lo cambian.',
  'See the doctor first': 'Primero, el médico',
  'Take the letter to your doctor. We go on when it is cleared.':
    'Lleve la carta a su médico. Seguimos cuando esté aclarado.',
  // Pens and aids.
  'Write one line with each of three pens. Keep the one that reads best. A good pen starts at once, does not skid and dries fast.':
    'Escriba una línea con cada uno de tres bolígrafos. Quédese con el que se lee mejor. Uno bueno escribe enseguida, no resbala y seca rápido.',
  'Put the thick soft sleeve on your pen. Use it all the time you write.':
    'Ponga la funda gruesa y blanda en el bolígrafo. Úsela siempre que escriba.',
  'Put the smooth thick sleeve on your pen. Look at your fingers after each page.':
    'Ponga la funda gruesa y lisa en el bolígrafo. Mire los dedos después de cada hoja.',
  'Use a gel pen or a felt pen. It writes without a push.':
    'Use un bolígrafo de gel o un rotulador. Escribe sin apretar.',
  'Use the thick pen with easy ink. Hold it as loose as you can.':
    'Use el bolígrafo grueso de tinta fácil. Sujételo lo más suelto que pueda.',
  'Use a gel pen on a soft pad. Go slowly. Rest your wrist.':
    'Use un bolígrafo de gel sobre una base blanda. Vaya despacio. Apoye la muñeca.',
  'Use a pencil or a ball pen. It slips less and stops where you stop.':
    'Use un lápiz o un bolígrafo de bola. Resbala menos y para donde usted para.',
  'Write with a soft pencil. If the tip breaks or you can feel the back of the page, press less.':
    'Escriba con un lápiz blando. Si se rompe la punta o se nota por detrás de la hoja, apriete menos.',
  'Use a pen whose ink dries at once. Then your hand does not smear it.':
    'Use un bolígrafo de tinta que seca enseguida. Así la mano no la corre.',
  'The therapist tries a heavy pen against a light one. It stays only if more words can be read.':
    'El terapeuta prueba un bolígrafo pesado y uno ligero. Se queda solo si se leen más palabras.',
  'Write one line with the grip and one without. When both read well, leave it off for a day.':
    'Escriba una línea con el adaptador y otra sin él. Cuando las dos se lean bien, déjelo un día.',
  'Lay the card with the slot on the page. Write only in the slot. Move it down.':
    'Ponga en la hoja la tarjeta con la ranura. Escriba solo en la ranura. Bájela.',
  'Use the sheet with the bold line. Let each letter stand on it.':
    'Use la hoja de la línea gruesa. Que cada letra se apoye en ella.',
  'Write one line in print, one joined and one your own way. We count how many words can be read in a minute. You choose.':
    'Escriba una línea con letras sueltas, otra unidas y otra a su manera. Contamos cuántas palabras se leen por minuto. Usted elige.',
  'Put a mat that does not slip under the paper.': 'Ponga bajo el papel una base que no resbale.',
  // Paper.
  'Use the sheets in this pack.': 'Use las hojas de este paquete.',
  'Use the text in this pack.': 'Use el texto de este paquete.',
  'Use the sheet with pictures and few words.': 'Use la hoja con dibujos y pocas palabras.',
  'Put one letter in each square.': 'Ponga una letra en cada cuadro.',
  'Let middle letters touch the dashed line.': 'Que las letras medianas toquen las rayas.',
  'Write on each line.': 'Escriba en cada línea.',
  'Lay the line sheet under the page.': 'Ponga la hoja de líneas debajo.',
  'Write with no lines.': 'Escriba sin líneas.',
};
