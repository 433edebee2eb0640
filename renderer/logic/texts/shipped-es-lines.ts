/**
 * Spanish for the lines of the second clinical notes: occasions, the one pen, posture and seat line, cautions. Written
 * for this program; to be checked by a Spanish-speaking clinician before first use.
 */
export const shippedEsLines: Readonly<Record<string, string>> = {
  'Sit back in the chair with both feet flat. Bring the table close. Let your arm rest on it.':
    'Siéntese bien atrás, con los dos pies planos. Acerque la mesa. Deje el brazo en ella.',
  'Lower table': 'Mesa más baja',
  'Your shoulders come up when you write. Bring the table down until they hang loose.':
    'Sus hombros suben al escribir. Baje la mesa hasta que cuelguen sueltos.',
  'Put your elbow, forearm and the side of your hand on the table. Lean your chest on the edge.':
    'Ponga el codo, el antebrazo y el lado de la mano en la mesa. Apoye el pecho en el borde.',
  'Put the paper straight in front of you. Draw the bright line down the left side of the page. Find the line before each row.':
    'Ponga el papel recto delante de usted. Trace la línea viva en el lado izquierdo de la hoja. Busque la línea antes de cada renglón.',
  'Put the paper straight in front of you. Draw the bright line down the right side of the page. Find the line before each row.':
    'Ponga el papel recto delante de usted. Trace la línea viva en el lado derecho de la hoja. Busque la línea antes de cada renglón.',
  'Put your finger on the left edge of the paper. Look to the finger before each line.':
    'Ponga el dedo en el borde izquierdo del papel. Mire el dedo antes de cada renglón.',
  'Put your finger on the right edge of the paper. Look to the finger before each line.':
    'Ponga el dedo en el borde derecho del papel. Mire el dedo antes de cada renglón.',
  'After each turn put the pen down. Sit back and let your eyes rest on something far for two minutes.':
    'Después de cada turno deje el bolígrafo. Échese atrás y mire algo lejano dos minutos.',
  'Put the card in front of you. Do only what it says. Write for two minutes, then rest.':
    'Ponga la tarjeta delante. Haga solo lo que dice. Escriba dos minutos y descanse.',
  'Your helper reads it with you.': 'Su ayudante la lee con usted.',
  'We will talk about which hand should write.': 'Hablaremos de qué mano debe escribir.',
  'Until then keep on using both hands each day.': 'Hasta entonces use las dos manos cada día.',
  'How to sit and lay your arm': 'Cómo sentarse y poner el brazo',
  'Sit back with both feet flat. Let your arm rest on the table.':
    'Siéntese atrás, con los pies planos. Deje el brazo en la mesa.',
  'Move the chair in. Let your forearm lie on the table.': 'Acerque la silla. Deje el antebrazo en la mesa.',
  'Sit well back. Keep your chest near the table.': 'Siéntese bien atrás. El pecho cerca de la mesa.',
  'Put the rolled towel behind your lower back.': 'Ponga la toalla enrollada detrás de la cintura.',
  'Do not lean on the elbow.': 'No se apoye en el codo.',
  'Seat and table': 'Silla y mesa',
  'Sit so that your arm rests on the table and your feet stand flat.':
    'Siéntese con el brazo en la mesa y los pies planos.',
  'Your legs need room and the table is high. Use a table with a thinner top and no drawer. Do not sit higher.':
    'Sus piernas necesitan sitio y la mesa es alta. Use una mesa más fina y sin cajón. No se siente más alto.',
  'Your legs need room under the table. Raise the table a little, or use one with a thinner top. Do not sit higher.':
    'Sus piernas necesitan sitio bajo la mesa. Suba un poco la mesa o use una más fina. No se siente más alto.',
  'The table is high for you. Sit on the firm cushion and put both feet on the footrest. Push the footrest away before you stand up.':
    'La mesa es alta para usted. Siéntese en el cojín firme y ponga los pies en el reposapiés. Aparte el reposapiés antes de ponerse de pie.',
  'The table is high for you. Bring it down until your shoulders hang loose, or use a lower one.':
    'La mesa es alta para usted. Bájela hasta que los hombros cuelguen sueltos, o use una más baja.',
  'The table is low for you. Put the blocks under its legs so that your arm can rest on the top.':
    'La mesa es baja para usted. Ponga los bloques bajo las patas para que el brazo descanse en ella.',
  'Put the footrest under both feet so that your heels rest on it. Push the footrest away before you stand up.':
    'Ponga el reposapiés bajo los dos pies, con los talones apoyados. Aparte el reposapiés antes de ponerse de pie.',
  'Ask what the hand may do': 'Pregunte qué puede hacer la mano',
  'Ask the surgeon or doctor what this hand may do, and from which day. Until then it rests. Do not write with it.':
    'Pregunte al cirujano o al médico qué puede hacer esta mano y desde qué día. Hasta entonces descansa. No escriba con ella.',
  'Hold by the wrist': 'Sujetar con la muñeca',
  'Lift the wrist: the fingers close on the pen. Let the wrist down: they open. Do not push the fingers flat.':
    'Suba la muñeca: los dedos cierran sobre el bolígrafo. Baje la muñeca: se abren. No aplane los dedos.',
  'Stop before the cramp': 'Pare antes del calambre',
  'Put the pen down before the cramp comes, not when it is there. Let the hand go loose. Then write on.':
    'Deje el bolígrafo antes de que llegue el calambre, no cuando ya está. Suelte la mano. Luego siga.',
  'Light line from the arm': 'Línea suave desde el brazo',
  'Let the pen just touch the paper. Move the whole arm, not the fingers.':
    'Que el bolígrafo solo toque el papel. Mueva todo el brazo, no los dedos.',
  'The steps with the pen': 'Los pasos con el bolígrafo',
  'Look at the steps: take the pen, hold it, set it on the line, write. Your helper shows each step first.':
    'Mire los pasos: tome el bolígrafo, sujételo, póngalo en la línea, escriba. Su ayudante muestra antes cada paso.',
  'How your helper helps': 'Cómo ayuda su ayudante',
  'Your helper gives one cue before the line and none while you write. First for each line, then for every second one, then for the first, then for none.':
    'Su ayudante da una señal antes del renglón y ninguna mientras escribe. Primero en cada renglón, luego en uno de dos, luego en el primero, luego en ninguno.',
  'Warm hands': 'Manos calientes',
  'Warm your hands before you write and keep them warm. Stop when a finger goes white.':
    'Caliente las manos antes de escribir y téngalas calientes. Pare si un dedo se pone blanco.',
  'Draw big rounds. Move your whole arm. Then make them smaller.':
    'Dibuje círculos grandes. Mueva todo el brazo. Luego hágalos más pequeños.',
  'Draw a slow line from one dot to the next. Stop on each dot.':
    'Trace una línea lenta de un punto al siguiente. Pare en cada punto.',
  'Write your name, your street and your numbers on the squares. Leave room. Go slowly.':
    'Escriba su nombre, su calle y sus números en los cuadros. Deje sitio. Vaya despacio.',
  'Write your name, your street and your numbers on plain paper.':
    'Escriba su nombre, su calle y sus números en papel liso.',
  'Write your name, your street and your numbers on the lines.':
    'Escriba su nombre, su calle y sus números en los renglones.',
  'Your words: {words}.': 'Sus palabras: {words}.',
  'Write larger than you used to. Go slowly.': 'Escriba más grande que antes. Vaya despacio.',
  'Fill in the large boxes. One letter in each box.': 'Rellene las casillas grandes. Una letra en cada casilla.',
  'Fill in the small boxes, then a real form. One letter in each box.':
    'Rellene las casillas pequeñas y luego un impreso de verdad. Una letra en cada casilla.',
  'Fill in the boxes of 6 mm. One letter in each box.': 'Rellene las casillas de 6 mm. Una letra en cada casilla.',
  'Write your signature in the large box. It does not have to be easy to read. It has to be yours.':
    'Firme en la casilla grande. No hace falta que se lea. Tiene que ser la suya.',
  'Write your signature where you need it, twice the same way. It has to be yours.':
    'Firme donde lo necesita, dos veces igual. Tiene que ser la suya.',
  'Write your signature in the box of the real size. It does not have to be easy to read. It has to be yours.':
    'Firme en la casilla del tamaño real. No hace falta que se lea. Tiene que ser la suya.',
  'Stand at the counter. Write two lines.': 'De pie junto al mostrador. Escriba dos renglones.',
  'Write with the other hand. Start large.': 'Escriba con la otra mano. Empiece grande.',
  'Keep on using the first hand in daily life.': 'Siga usando la primera mano cada día.',
  'Fill in a check': 'Rellene un cheque',
  'Fill in the large check: the date, the name, the sum in numbers and in words. It says PRACTICE.':
    'Rellene el cheque grande: la fecha, el nombre, la suma en números y en letras. Dice PRÁCTICA.',
  'Fill in three checks of the real size. Each one has to be exact. They say PRACTICE.':
    'Rellene tres cheques del tamaño real. Cada uno tiene que ser exacto. Dicen PRÁCTICA.',
  'Fill in the check of the real size: the date, the name, the sum in numbers and in words. It says PRACTICE.':
    'Rellene el cheque del tamaño real: la fecha, el nombre, la suma en números y en letras. Dice PRÁCTICA.',
  'Your list': 'Su lista',
  'Write three things of your list, one under the other.': 'Escriba tres cosas de su lista, una bajo otra.',
  'Write eight things of your list on a small card.': 'Escriba ocho cosas de su lista en una tarjeta pequeña.',
  'Write five things of your list, one under the other.': 'Escriba cinco cosas de su lista, una bajo otra.',
  'Telephone messages': 'Recados de teléfono',
  'Copy a message: the name, the number, the time.': 'Copie un recado: el nombre, el número, la hora.',
  'Take a message on the telephone: the name, the number, the time.':
    'Tome un recado por teléfono: el nombre, el número, la hora.',
  'Someone reads a message to you. Write the name, the number and the time.':
    'Alguien le lee un recado. Escriba el nombre, el número y la hora.',
  'Your cards': 'Sus tarjetas',
  'Write one line for a card.': 'Escriba un renglón para una tarjeta.',
  'Write a card of four lines.': 'Escriba una tarjeta de cuatro renglones.',
  'Write two lines for a card.': 'Escriba dos renglones para una tarjeta.',
  'Your diary': 'Su diario',
  'Write one line about your day.': 'Escriba un renglón sobre su día.',
  'Write four lines about your day.': 'Escriba cuatro renglones sobre su día.',
  'Write two lines about your day.': 'Escriba dos renglones sobre su día.',
  'Notes for work': 'Notas del trabajo',
  'Write one line as you need it at work.': 'Escriba un renglón como en su trabajo.',
  'Write four lines as you need them at work.': 'Escriba cuatro renglones como en su trabajo.',
  'Write two lines as you need them at work.': 'Escriba dos renglones como en su trabajo.',
  'Your recipes': 'Sus recetas',
  'Write one line of a recipe.': 'Escriba un renglón de una receta.',
  'Write four lines of a recipe.': 'Escriba cuatro renglones de una receta.',
  'Write two lines of a recipe.': 'Escriba dos renglones de una receta.',
  'Dates, times and numbers': 'Fechas, horas y números',
  'Write dates and times. Give each figure its own box.': 'Escriba fechas y horas. Cada cifra en su casilla.',
  'Write dates and times from your week on plain paper. Make the 1, 4, 7 and 9 clear.':
    'Escriba fechas y horas de su semana en papel liso. Que el 1, el 4, el 7 y el 9 se vean claros.',
  'Write dates and times on the lines. Make the 1, 4, 7 and 9 clear.':
    'Escriba fechas y horas en los renglones. Que el 1, el 4, el 7 y el 9 se vean claros.',
  'Writing on a board': 'Escribir en una pizarra',
  'Write large words on a sheet that lies on the table.': 'Escriba palabras grandes en una hoja sobre la mesa.',
  'Stand at the board. Write five words.': 'De pie ante la pizarra. Escriba cinco palabras.',
  'Write large words on a sheet on the wall, at the height of your chest.':
    'Escriba palabras grandes en una hoja en la pared, a la altura del pecho.',
  'Your own text': 'Su propio texto',
  'Write one line of what you need.': 'Escriba un renglón de lo que necesita.',
  'Write four lines of what you need.': 'Escriba cuatro renglones de lo que necesita.',
  'Write two lines of what you need.': 'Escriba dos renglones de lo que necesita.',
  'Choose a pen or pencil with ribs or three sides.': 'Elija un bolígrafo o lápiz con estrías o de tres lados.',
  'Bold lines and a lamp': 'Líneas gruesas y una lámpara',
  'Use bold lines and paper that does not shine. Put the lamp on the side of your other hand.':
    'Use líneas gruesas y papel sin brillo. Ponga la lámpara del lado de la otra mano.',
  'Your pen': 'Su bolígrafo',
  'Use the pen that was chosen with you.': 'Use el bolígrafo que se eligió con usted.',
  'Use a thin, light pen with gel ink. It goes in the cuff.':
    'Use un bolígrafo de gel fino y ligero. Va en la muñequera.',
  'Use a thick, light pen with easy ink that needs no push.':
    'Use un bolígrafo grueso y ligero, de tinta fácil, sin apretar.',
  'Use a thick, smooth pen. Look at your fingers after each page.':
    'Use un bolígrafo grueso y liso. Mire los dedos después de cada hoja.',
  'Use a thick felt pen.': 'Use un rotulador grueso.',
  'Use a thick, soft, light pen with gel ink. It needs no push.':
    'Use un bolígrafo de gel grueso, blando y ligero. No hay que apretar.',
  'Use a gel pen on a soft pad. It marks without a push.':
    'Use un bolígrafo de gel sobre una base blanda. Marca sin apretar.',
  'Use a thick pen with gel ink. It needs no push.': 'Use un bolígrafo de gel grueso. No hay que apretar.',
  'Use a pen or pencil with ribs or three sides.': 'Use un bolígrafo o lápiz con estrías o de tres lados.',
  'Use a dark felt pen.': 'Use un rotulador oscuro.',
  'Use a pen whose ink dries at once.': 'Use un bolígrafo cuya tinta seque al momento.',
  'The ink has to be dark.': 'La tinta tiene que ser oscura.',
  'The ink has to dry at once.': 'La tinta tiene que secar al momento.',
  'Writing cuff': 'Muñequera para escribir',
  'We try a cuff that holds the pen for you. Wear it only while you write.':
    'Probamos una muñequera que sujeta el bolígrafo por usted. Úsela solo para escribir.',
  'Another way to hold the pen': 'Otra forma de sujetar el bolígrafo',
  'We try the pen between your index and middle finger. It stays only if you write with more ease.':
    'Probamos el bolígrafo entre el índice y el medio. Se queda solo si escribe con más facilidad.',
  'Stop when a finger goes white. Warm it slowly. Show us any sore.':
    'Pare si un dedo se pone blanco. Caliéntelo despacio. Enséñenos cualquier herida.',
  'Heat makes it harder. Stay cool. Stop when you feel hot and rest in a cool place.':
    'El calor lo hace más difícil. Esté fresco. Pare si tiene calor y descanse en un sitio fresco.',
  'Look at the skin under the cuff before and after. Stop if a mark stays.':
    'Mire la piel bajo la muñequera antes y después. Pare si queda una marca.',
  'Dizzy as before: stop and call us. Sudden or new: call the emergency number.':
    'Mareo como antes: pare y llámenos. De pronto o nuevo: llame a emergencias.',
  'Keep the weak shoulder safe. Nobody pulls on the arm. It lies on a cushion when you sit.':
    'Cuide el hombro débil. Nadie tira del brazo. Descansa en un cojín cuando está sentado.',
  'Look at the skin of the hand before and after you write.': 'Mire la piel de la mano antes y después de escribir.',
  'Heat makes it harder: write in a cool room, at a fresh hour.':
    'El calor lo hace más difícil: escriba en un cuarto fresco, a una hora fresca.',
};
