import type { Told } from '../../../en/screens-en.ts';

const visitas = (n: number) => (n === 1 ? '1 visita' : `${n} visitas`);
const dias = (n: number) => (n === 1 ? '1 día' : `${n} días`);

export const paperToldEs: Told['paper'] = {
  kinds: {
    'family-summary': ['Resumen para la familia', 'una hoja, palabras sencillas'],
    'home-program': ['Programa en casa', 'con registro y tarjeta'],
    'practice-pages': ['Hojas de práctica', 'a escala real'],
    'spiral-sheet': ['Hoja de espiral', 'para dibujar, a escala real'],
    caregiver: ['Hoja para quien ayuda', 'una ayuda, después menos'],
    'initial-evaluation': ['Evaluación inicial', 'primera visita, con el cribado'],
    'visit-note': ['Nota de visita', 'texto para copiar'],
    'progress-report': ['Informe de evolución', 'para el financiador'],
    letter: ['Carta', 'a quien derivó'],
    referral: ['Derivación', 'tras una señal de alarma'],
    discharge: ['Informe de alta', 'con un plan para mantener'],
  },
  sheets: (count) => `${count} ${count === 1 ? 'hoja' : 'hojas'}`,
  rulings: {
    squares: (mm) => `Cuadrados de ${mm} mm`,
    dashed: (mm) => `Línea media discontinua de ${mm} mm`,
    ruled: (mm, name) => `Rayado de ${mm} mm (${name})`,
    guide: (mm) => `Guía para poner bajo papel liso de ${mm} mm`,
    boxes: (mm) => `Casillas de formulario de ${mm} mm`,
  },
  ruledNames: { 'ruled-8.7': 'ancho', 'ruled-8': 'tenue', 'ruled-7.1': 'medio', 'ruled-6.35': 'estrecho' },
  otherRulings: {
    plain: 'Liso',
    signature: 'Recuadros de firma',
    'signature-large': 'Recuadros de firma grandes',
    'check-large': 'Cheques de práctica grandes',
    'check-true': 'Cheques de práctica, tamaño real',
    'dots-30': 'Puntos para unir, a 30 mm',
    'lean-10': 'Líneas inclinadas para poner bajo la hoja',
  },
  pictures: 'imágenes',
  actualSize: 'Imprima a tamaño real (100 %). «Ajustar a la página» hace las líneas más pequeñas de lo debido.',
  sinceReport: (visits, days, due, dueVisits, dueDays, reported) => {
    const limits = [dueVisits === null ? '' : visitas(dueVisits), dueDays === null ? '' : dias(dueDays)];
    const rule =
      due === 'none'
        ? ''
        : due === 'now'
          ? '; toca un informe ahora'
          : `; toca un informe tras ${limits.filter(Boolean).join(' o ')}`;
    const gone = days === 0 ? '' : ` y ${dias(days)}`;
    return `${visitas(visits)}${gone} desde el ${reported ? 'último informe' : 'inicio de la atención'}${rule}.`;
  },
  authorized: (used, of) =>
    used > of
      ? `${visitas(used)} usadas, ${used - of} más de las ${of} autorizadas.`
      : `${used} de ${of} visitas autorizadas usadas, quedan ${of - used}.`,
  certified: (day, left) =>
    left < 0
      ? `La certificación terminó el ${day}, hace ${dias(Math.abs(left))}.`
      : `Certificado hasta el ${day}: ${left === 1 ? 'queda' : 'quedan'} ${dias(Math.abs(left))}.`,
  missed: (visits) => (visits === 1 ? '1 visita perdida.' : `${visits} visitas perdidas.`),
};
