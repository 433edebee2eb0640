import type { Told } from '../../en/screens-en.ts';

/** In Spanish. What the system's own dialogs and menu say. */
export const systemEs: Told['system'] = {
  notSavedYet: 'Algo que usted escribió aún no está guardado.',
  stayAndLook: 'Quédese y mire el mensaje en la parte superior de la ventana. Lo guardado antes está a salvo.',
  stay: 'Quedarse',
  closeWithoutIt: 'Cerrar sin guardarlo',
  cannotStart: 'Fairhand no puede arrancar',
  cannotWriteInto: (folder) =>
    `No puede escribir en la carpeta del fichero ${folder}. No se cambió nada. Elija otra carpeta con --data o pida permiso de escritura.`,
  view: 'Ver',
  window: 'Ventana',
  about: {
    window: 'Ventana',
    browser: 'un navegador instalado, sin red',
    system: 'Sistema',
    ruleTable: 'Tabla de reglas',
    measures: 'Medidas de las hojas',
    change: 'Modelo de cambio',
    tables: 'Tablas del fichero',
  },
};
