import type { Told } from '../../en/screens-en.ts';

const printed =
  'las letras tienen todas la misma altura y descansan en una línea recta. Las palabras impresas no dicen nada de una mano. Déjelas fuera, o tape lo impreso y escanee otra vez.';

/** In Spanish. What to know about a written page or a drawn sheet before its numbers are read. */
export const warningsEs: Told['warnings'] = {
  plain: {
    blank: 'En esta hoja no se encontró escritura. Compruebe que se escaneó la cara correcta.',
    'not-writing':
      'La imagen está llena de marcas pequeñas y no se pudo distinguir la escritura. Escanee la hoja otra vez, sin dibujos ni fotos de fondo.',
    'text-too-small':
      'La escritura tiene solo unos píxeles de altura, demasiado poco para medir. Escanee otra vez a 300 dpi o más.',
    'no-scale':
      'No se conoce la escala de esta hoja, así que no se midió nada. Indique los dpi, la barra impresa o dos puntos a una distancia conocida.',
    'all-black': 'La imagen está oscura por todas partes. Escanee o fotografíe la hoja otra vez.',
    'too-small': 'La imagen tiene muy pocos píxeles para contener una hoja. Revise el archivo.',
    'edge-cut':
      'Un borde de la hoja queda fuera de la foto, así que no se puede confiar en su ángulo ni en su escala. Haga la foto otra vez con los cuatro bordes y algo de mesa.',
    'paper-unknown':
      'La hoja no encaja en ningún tamaño de papel conocido; se usó la escala indicada. Compruebe una distancia conocida de la hoja.',
    'scale-contradicts-paper':
      'La escala indicada difiere más del 1 % del tamaño de la hoja en la foto; se usó la hoja. Revise la escala.',
    'scale-contradicts-marks':
      'La escala indicada difiere más del 1 % de las marcas de esquina de la hoja. Compruebe que se imprimió a tamaño real y se escaneó con los dpi indicados.',
    'axes-differ':
      'Los cuadros o las marcas de esquina del papel salen más anchos que altos, o al revés, en más del 1 %. Revise cómo se escaneó o fotografió la hoja.',
    'writing-cut':
      'La escritura se sale por un lado de la imagen y allí las palabras no están enteras. Escanee la hoja con sus márgenes.',
    'few-words': 'En esta hoja hay menos de cinco palabras: muy pocas para juzgar tamaño o espacios.',
    'text-under-12-px':
      'Las letras pequeñas miden menos de 12 píxeles de altura, así que las longitudes son aproximadas. Escanee otra vez a 300 dpi o más.',
    blur: 'La imagen no es nítida, así que las longitudes son aproximadas. Escanéela otra vez o mantenga quieta la cámara.',
    sideways: 'La escritura va de arriba abajo o de abajo arriba: la imagen está de lado. Gírela y mida otra vez.',
    'upside-down': 'La hoja parece estar boca abajo. Gírela y mida otra vez.',
    mirrored: 'La hoja parece estar reflejada. Voltéela y mida otra vez.',
    'text-unfit':
      'El texto indicado no encaja con las palabras de esta hoja y no se usó. Compruebe que es el texto que se escribió.',
    'few-letters':
      'Se pudieron leer menos de quince letras pequeñas: muy pocas para su altura y regularidad. Tome una muestra más larga.',
    'other-script':
      'El texto está en otra escritura que la latina. Se pueden medir líneas, tamaño y espacios; no se sabe qué letras son pequeñas, altas o cerradas.',
    'unusual-script':
      'Pocas letras sobresalen de las pequeñas y muchas bajan de la línea, como en ningún texto latino. Si la hoja está boca abajo, gírela. Si es otra escritura, use solo líneas y espacios.',
    'no-spiral':
      'En esta imagen no se encontró ninguna espiral. Escanee la hoja entera y recta, sin nada más dibujado en ella.',
    'few-turns': 'La espiral tiene muy pocas vueltas para juzgar su oscilación: hacen falta dos o más.',
    'spiral-broken': 'Faltan partes de la línea o están cruzadas, así que los números son aproximados.',
  },
  printedAll: `Todas las líneas parecen impresas, no escritas: ${printed}`,
  printedOne: (line) => `La línea ${line} parece impresa, no escrita: ${printed}`,
  printedSome: (lines) => `Las líneas ${lines} parecen impresas, no escritas: ${printed}`,
  hands: (line) =>
    `El tamaño, la inclinación o el trazo cambian del todo en la línea ${line}: quizá dos personas, dos útiles de escritura o dos maneras de escribir. Las medidas de la hoja entera los mezclan. Mida uno cada vez.`,
  faint: (percent) =>
    `La escritura es tenue (contraste ${percent} %). La imagen se oscureció antes de leerla, pero pueden perderse trazos finos y las letras salen más pequeñas. Escanéela más oscura, o pida que se escriba con un lápiz más blando o con bolígrafo.`,
  leftOut: (words) => `No se encontraron en la hoja, quizá se omitieron: ${words}.`,
  foreign: (n) =>
    `${n === 1 ? 'Una palabra de la hoja no está' : `${n} palabras de la hoja no están`} en el texto: quizá tachadas o añadidas.`,
  lookAtWords: 'Mire las palabras y corrija lo que esté mal.',
  doubtful: (gaps) =>
    `Los espacios entre letras y entre palabras se parecen mucho aquí: ${gaps === 1 ? 'alrededor de 1 espacio puede' : `alrededor de ${gaps} espacios pueden`} haberse tomado por los de la otra clase. Mire las palabras marcadas, únalas o divídalas, o indique el texto.`,
  rulingUnusual: (mm) =>
    `Con esta escala los renglones impresos distan ${mm} mm, lo que no es ningún papel habitual. Revise la escala.`,
  rulingDiffers: (mm, known) =>
    `Con esta escala los renglones impresos distan ${mm} mm, pero este papel tiene ${known} mm. Revise la escala.`,
  sizeUnlikely: (mm) =>
    `Con esta escala las letras pequeñas miden ${mm} mm de altura, lo que no es una letra manuscrita habitual. Revise la escala antes de usar cualquier número de esta hoja.`,
  spiralAlone:
    'No se vieron las cuatro marcas de esquina de la hoja impresa, así que la imagen se tomó por una sola espiral en papel liso. Escanee la hoja entera para tener las dos.',
  spiralNoScale:
    'No se encontraron ni las marcas de esquina de la hoja impresa ni una escala, así que no se midió nada. Escanee la hoja entera, con las cuatro esquinas.',
  spiralPale:
    'El lápiz es apenas más oscuro que la línea impresa, así que la línea quizá solo se lea en partes. Use un útil de trazo oscuro.',
};
