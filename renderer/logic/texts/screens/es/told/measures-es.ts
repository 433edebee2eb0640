import type { Told } from '../../en/screens-en.ts';

/** In Spanish. Measures of a page: names, values with their units, ranges, and how they were read. */
export const measuresEs: Told['measures'] = {
  names: {
    'x-height': 'Altura de las letras pequeñas',
    'x-height-cv': 'Desigualdad de la altura de letra',
    'ascender-ratio': 'Alcance de las letras altas',
    'descender-ratio': 'Alcance de las letras que bajan',
    'line-decrement': 'Cambio de tamaño en la línea, por palabra',
    'line-decrement-letter': 'Cambio de tamaño en la línea, por letra',
    'first-last-five': 'Pérdida de tamaño de las cinco primeras letras a las cinco últimas',
    'page-decrement': 'Cambio de tamaño hacia abajo en la hoja, por línea',
    'baseline-angle': 'Ángulo de las líneas',
    'baseline-rms': 'Ondulación de las líneas',
    'ruling-distance': 'Distancia al renglón impreso',
    'word-gap': 'Espacio entre palabras',
    'word-gap-cv': 'Desigualdad del espacio entre palabras',
    'letter-gap': 'Espacio entre letras que no se tocan',
    'gap-ratio': 'Espacio entre palabras frente a espacio entre letras',
    'gap-separation': 'Probabilidad de que un espacio entre palabras sea mayor que uno entre letras',
    'closed-loops': 'Óvalos cerrados',
    closure: 'Letras cerradas que deben cerrarse',
    slant: 'Inclinación',
    'slant-sd': 'Desigualdad de la inclinación',
    'stroke-width': 'Grosor del trazo',
    darkness: 'Oscuridad de la tinta',
    'margin-drift': 'Desvío del margen izquierdo, por línea',
  },
  hows: {
    'x-height':
      'mediana de la altura de las letras pequeñas sobre la línea base, con el trazo, cada palabra según sus letras, intervalo entre palabras',
    'x-height-cv':
      'desviación estándar entre media de todas las letras pequeñas, también las muy bajas y las muy altas, según la dispersión de ln(altura), intervalo entre palabras',
    'ascender-ratio':
      'mediana de la altura de las letras altas entre el tamaño de la línea allí, intervalo entre palabras',
    'descender-ratio':
      'mediana de la profundidad de las letras que bajan entre el tamaño de la línea allí, intervalo entre palabras',
    'line-decrement':
      'pendiente de Theil-Sen de ln(altura) sobre las palabras de una línea, reunida sobre las líneas, intervalo t entre líneas',
    'line-decrement-letter':
      'pendiente de Theil-Sen de ln(altura) sobre las letras de una línea, reunida sobre las líneas, intervalo t entre líneas',
    'first-last-five':
      'altura media de las cinco primeras letras pequeñas de una línea frente a las cinco últimas, mediana de las líneas de diez o más, intervalo entre líneas',
    'page-decrement': 'pendiente de Theil-Sen sobre las líneas, intervalo t de mínimos cuadrados',
    'baseline-angle':
      'mediana entre líneas del ángulo de mínimos cuadrados de los pies que descansan en la línea, intervalo entre líneas',
    'baseline-rms': 'mediana entre líneas, intervalo entre líneas',
    'ruling-distance': 'mediana entre líneas de la distancia media, intervalo entre líneas; solo papel rayado',
    'word-gap':
      'mediana del espacio libre a lo largo de la línea base entre la mediana de la altura de letra de la hoja, intervalo entre líneas',
    'word-gap-cv': 'desviación estándar entre media de los espacios entre palabras, intervalo entre líneas',
    'letter-gap':
      'mediana del espacio libre entre letras no unidas entre la mediana de la altura de letra de la hoja, intervalo entre palabras',
    'gap-ratio': 'cociente de medianas, intervalo entre líneas; desconocido donde las letras se tocan o se superponen',
    'gap-separation':
      'parte de los pares de espacio entre palabras y espacio entre letras en que el de las palabras es mayor, intervalo entre líneas',
    'closed-loops': 'zonas blancas encerradas por la tinta de las palabras',
    closure: 'letras con un óvalo cerrado entre las letras del texto que deben cerrarse; necesita el texto',
    slant: 'mediana de la inclinación de los trazos verticales rectos, intervalo entre palabras',
    'slant-sd': 'desviación estándar robusta (1,4826 MAD) de las inclinaciones de los trazos, intervalo entre palabras',
    'stroke-width': 'cuartil inferior de los grosores de los trazos verticales rectos, intervalo entre palabras',
    darkness: 'contraste medio de la mitad más oscura de la tinta entre el brillo del papel',
    'margin-drift': 'pendiente de Theil-Sen sobre las líneas, intervalo t de mínimos cuadrados',
  },
  otherNames: {
    'x-height-before': 'Altura de las letras pequeñas antes',
    'x-height-goal': 'Altura de las letras pequeñas buscada',
    'word-gap-mm': 'Espacios entre palabras',
    'letter-gap-mm': 'Espacios entre letras',
    'baseline-end-offset-mm': 'Subida de cada línea en su longitud',
  },
  ruled: {
    'x-height': ['Altura de las letras pequeñas (a c e m n o …), mm', 'al menos 10 letras, en el orden escrito'],
    'word-gap-mm': ['Espacios entre palabras, mm', 'al menos 5 espacios'],
    'letter-gap-mm': ['Espacios entre letras, mm', 'al menos 10 espacios; si se superponen, negativo'],
    'baseline-end-offset-mm': ['Subida de cada línea en su longitud, mm', 'una por línea; si baja, negativo'],
  },
  unknown: 'desconocido',
  letterHeights: (value) => `${value} × altura de letra`,
  ways: { smaller: 'menor', larger: 'mayor', left: 'a la izquierda', right: 'a la derecha' },
  per: { word: 'cada palabra', letter: 'cada letra', line: 'cada línea' },
  noChange: (each) => `sin cambio ${each}`,
  changeOf: (amount, way) => `${amount} ${way}`,
  change: (change, each) => `${change} ${each}`,
  onThisPage: (change) => `${change}, en esta hoja`,
  range: (low, high) => `${low} a ${high}`,
  ranges:
    'Esta hoja: con qué exactitud se leyó esta hoja (95 %). Esta mano: donde estarían 95 de cada 100 hojas de una mano sin cambios. Una diferencia menor no es un cambio.',
  readings: (n) => (n === 1 ? 'De 1 lectura.' : `De ${n} lecturas.`),
  pageRange: (range) => `Esta hoja (95 %): ${range}.`,
  handRange: (range) => `Esta mano, de hoja a hoja: ${range}.`,
  handFromPages: (pages) =>
    `Esta mano: según ${pages} hojas repetidas en un mismo día y lo que varían las personas que escriben con normalidad.`,
  handFromWriters:
    'Esta mano: según lo que varían de hoja a hoja las personas que escriben con normalidad (dos personas); repita una hoja en un mismo día para saber cuánto varía este cliente.',
  method: (version, how) => `Método: ${version}: ${how}.`,
  notes: {
    'x-height': 'más grande ayuda donde la letra se había vuelto pequeña',
    'ascender-ratio': 'cerca de 2 se lee bien',
    'descender-ratio': 'cerca de 1 se lee bien',
    'line-decrement': 'estable es mejor que encoger',
    'line-decrement-letter': 'estable es mejor que encoger',
    'first-last-five': 'en una fila de una sola letra, escrita sin parar',
    'page-decrement': 'estable es mejor que encoger',
    'word-gap': 'alrededor del ancho de una letra se lee bien',
    'gap-ratio': 'desde 3, las palabras quedan separadas',
    slant: 'cuenta que sea regular, no el ángulo',
    'stroke-width': 'depende del útil de escritura',
    darkness: 'depende del útil de escritura',
    'baseline-angle': 'más cerca de 0 está nivelado',
  },
  drawnPage: (name) => `${name}, hoja dibujada`,
  layers: {
    lines: 'Líneas base',
    words: 'Palabras',
    bands: 'Altura de letra',
    decrement: 'Tamaño en la línea',
    gaps: 'Espacios',
    letters: 'Letras',
    closure: 'Cierre',
    slant: 'Inclinación',
  },
  troubles: {
    small: 'Letras pequeñas',
    gaps: 'Espacios estrechos entre palabras',
    open: 'Letras sin cerrar',
    gap: (mm) => `espacio ${mm} mm`,
    closed: (closed, of) => `${closed} de ${of} cerradas`,
  },
  caption: {
    height: (mm) => `altura de letra ${mm} mm`,
    gap: (mm) => `espacio antes ${mm} mm`,
    slant: (degrees) => `inclinación ${degrees}°`,
    stroke: (mm) => `trazo ${mm} mm`,
    word: (line, word, text, parts) =>
      `Línea ${line}, palabra ${word}${text ? ` «${text}»` : ''}: ${parts === '' ? 'no se pudo leer nada' : parts}.`,
  },
};
