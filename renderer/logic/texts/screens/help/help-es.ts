import type { ScreenTexts } from '../en/screens-en.ts';

/** In Spanish. Help (F1) of each screen: what it is for, in one sentence, and how it goes, in the order in which it is done. Short sentences, the words of the screen itself. */
export const helpEs: ScreenTexts['help'] = {
  start: {
    purpose: 'Crea su fichero, lo abre o muestra la demostración.',
    steps: [
      'Escriba sus iniciales y dos veces una frase de acceso, luego «Crear el fichero».',
      'Imprima o anote la hoja de recuperación: sin ella, una frase perdida es un fichero perdido.',
      'Para mirar primero, abra la demostración: sus clientes son inventados.',
    ],
  },
  caseload: {
    purpose: 'Muestra lo pendiente de hoy y a todos los clientes.',
    steps: [
      'Cliente nuevo: «Añadir un cliente». Basta un nombre.',
      'Elija una fila con las flechas; el lado derecho la sigue. Intro hace lo que dice la fila.',
      'Las listas de la izquierda muestran partes: muestras para leer, notas, lo que acaba o vence.',
    ],
  },
  client: {
    purpose: 'Guarda la nota de una visita, el plan de la próxima y los datos del expediente.',
    steps: [
      '«Empezar la primera visita» abajo, o «Empezar una visita hoy» a la izquierda, si la de hoy aún no está.',
      'Lo que contó el cliente, su criterio, la respuesta: cada campo se guarda al salir.',
      '«Expediente entero» tiene diagnóstico, precauciones, medicina y lo que el cliente quiere escribir.',
      'Luego baje por los pasos de la izquierda: Cribado, Muestra, Lectura, Programa, Meta, Hojas.',
    ],
  },
  intake: {
    purpose: 'Dice qué puede empezar y qué hacer antes de escribir.',
    steps: [
      'Primero las señales de alarma: un sí detiene el trabajo hasta que lo mire.',
      'Mano y cuerpo: mire el dibujo y pulse 3, 2, 1 o 0. Solo se pregunta lo que importa.',
      'Asiento y mesa: mida, y el dibujo muestra qué cambiar.',
      'Hallazgos dice lo que sigue. Luego: Muestra.',
    ],
  },
  sample: {
    purpose: 'Guarda una hoja de escritura, medida, con cómo se escribió.',
    steps: [
      '«Nueva muestra …»: elija la tarea, imprima o diga el texto, deje escribir al cliente.',
      'Traiga la hoja: escaneo, foto o pegar. Fairhand encuentra líneas, palabras y letras.',
      'Palabras: mire las de línea punteada; corrija lo mal leído. Luego: Lectura.',
    ],
  },
  readback: {
    purpose: 'Cuenta las palabras que puede leer alguien que no conoce el texto.',
    steps: [
      'Un lector se sienta ante esta ventana, escribe sus iniciales y lee línea por línea. Usted no mira.',
      'Dos lectores muestran cuánto difieren. «Anotar un recuento en papel» toma un recuento hecho fuera.',
      'La fila muestra las palabras leídas con su intervalo. Luego: Programa.',
    ],
  },
  program: {
    purpose: 'Propone el programa en casa con lo hallado; usted lo cambia y lo aprueba.',
    steps: [
      'Cada fila es una línea de la hoja. El lado derecho dice por qué, por qué regla y qué cuidar.',
      'Cambie la cantidad, quite líneas, añada otras de la biblioteca.',
      '«Aprobar» cuando sea suyo. Entonces se imprime, y la próxima visita compara con él.',
    ],
  },
  goals: {
    purpose: 'Acuerda algo escrito que un lector deberá poder leer.',
    steps: [
      'El próximo paso alcanzable se propone con las muestras. Cámbielo hasta que encaje.',
      'En cada visita elija el nivel alcanzado.',
    ],
  },
  pages: {
    purpose: 'Imprime lo que sale de la sala: para la familia, el pagador, quien deriva, y para practicar.',
    steps: [
      'Elija una hoja a la izquierda; lo que se ve es lo que se imprime.',
      'Lo que falta se dice encima de la hoja. Marque varias para imprimirlas juntas.',
      '«Guardar como emitida» conserva esta misma hoja en el expediente.',
    ],
  },
  progress: {
    purpose: 'Muestra si algo cambió y si es más que la variación de un día a otro.',
    steps: [
      'La frase de la derecha es la respuesta. «Los números detrás» muestra cómo se halló.',
      'Entonces y ahora pone dos hojas lado a lado. La tabla tiene cada número.',
    ],
  },
  rules: {
    purpose: 'Muestra cada regla y número que decide algo, con su fuente.',
    steps: [
      'Busque, o elija clase y fuente. El lado derecho dice cuándo actúa una regla.',
      'Apague una regla o ponga un número propio: cuenta desde el próximo borrador.',
    ],
  },
  records: {
    purpose: 'Hace y comprueba copias, y lleva clientes de un fichero a otro.',
    steps: [
      '«Copiar ahora» escribe una copia cifrada, la abre de nuevo y la compara.',
      'Indique un segundo lugar, como una memoria USB: las copias van también allí.',
    ],
  },
  figures: {
    purpose: 'Pregunta al fichero entero: metas cumplidas, cambio más allá del azar, práctica, visitas.',
    steps: [
      'Elija cómo agrupar: por diagnóstico o por lo que se escribe. Con menos de diez clientes no se da porcentaje.',
      'Lea lo que no se puede concluir: nada aquí compara personas ni prueba qué ayudó.',
      'Las mismas cifras salen como tabla sin nombres.',
    ],
  },
  handover: {
    purpose: 'Traspasa clientes a un colega en un archivo cifrado y recibe los suyos.',
    steps: [
      'Dé a su colega la clave de usted; guarde la suya con un nombre, una vez cada una.',
      'Elija clientes y una clave, y escriba el archivo en una memoria o en la carpeta compartida.',
      'Recibir muestra antes lo que cambiaría. Lo que cambiaron los dos sale lado a lado.',
    ],
  },
  settings: {
    purpose: 'Sus iniciales, el aspecto, las teclas, el bloqueo y la frase de acceso.',
    steps: [
      'Cada campo se guarda al salir.',
      '«Personas»: cada quien que usa este fichero tiene su acceso. Ctrl+L bloquea para pasar el portátil.',
    ],
  },
};
