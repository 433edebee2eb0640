import type { InkRefusalCode } from '../../../../../ink/index.ts';
import type { MessageCode } from '../../../../../../electron/contract/messages.ts';
import type { Refusals } from '../../refusals.ts';

/** In Spanish. What cannot be done: what happened, what is safe, what to do next. */
const sentences: Readonly<Record<MessageCode, string>> = {
  'unknown-request': 'Esta ventana pidió algo que Fairhand no conoce. No se cambió nada. Reinicie Fairhand.',
  'malformed-request':
    'Algo de esta entrada no se puede guardar tal como está ({detail}). No se cambió nada. Corríjalo e inténtelo otra vez.',
  internal:
    'Algo falló dentro de Fairhand. Lo guardado antes está a salvo. Inténtelo otra vez; si vuelve a ocurrir, reinicie Fairhand.',
  locked: 'El fichero está bloqueado. No se perdió nada. Desbloquéelo con su frase de acceso para seguir.',
  'no-caseload': 'Aún no hay ningún fichero en esta carpeta. Cree uno, abra la demostración o restaure una copia.',
  'caseload-exists': 'En esta carpeta ya hay un fichero. Quedó como estaba. Desbloquéelo o elija otra carpeta.',
  'wrong-passphrase':
    'Esta frase de acceso no abre el fichero. El fichero está intacto. Revise las mayúsculas y el teclado e inténtelo otra vez.',
  'wrong-recovery-key':
    'Esta clave de recuperación no abre el fichero. El fichero está intacto. Solo vale la clave de la hoja más reciente; una ya usada o sustituida no abre nada. Revise las letras e inténtelo otra vez.',
  'wait-before-retry':
    'Varias frases o claves fueron incorrectas. El fichero está intacto. Espere {detail} segundos e inténtelo otra vez.',
  'passphrase-too-short':
    'Esta frase de acceso es demasiado corta para proteger historiales clínicos. No se cambió nada. Use al menos 12 caracteres; unas pocas palabras sin relación se recuerdan bien.',
  damaged:
    'El archivo del fichero está dañado. No se cambió ni se borrará. Restaure la copia más reciente o pida ayuda con el archivo.',
  'system-key-unusable':
    'El almacén de claves de este equipo no entregó la clave. El fichero está intacto. Escriba la frase de acceso; en Ajustes se puede preparar otra vez el almacén de claves.',
  'key-file-missing':
    'El archivo de claves junto al fichero falta o no se puede leer. El fichero está intacto, pero no se puede abrir sin él. Vuelva a poner el archivo de claves o restaure una copia.',
  'newer-version': 'Este fichero lo escribió una versión más nueva de Fairhand. No se cambió. Ábralo con esa versión.',
  'locked-by-another':
    'Otra ventana de Fairhand tiene abierto este fichero. No se cambió nada. Use esa ventana o ciérrela antes.',
  'folder-not-writable':
    'Fairhand no puede escribir en esta carpeta. No se cambió nada. Elija otra carpeta o pida permiso de escritura.',
  'disk-full':
    'El disco está lleno. Todo lo guardado antes está a salvo; la última entrada sigue en la pantalla. Libere espacio e inténtelo otra vez.',
  'not-found':
    'Esta entrada ya no está en el fichero. No se cambió nada. Vuelva al fichero y abra otra vez al cliente.',
  'already-approved':
    'Este programa se aprobó y ya no se puede cambiar. Quedó como estaba. Empiece un programa nuevo a partir de una copia.',
  'already-issued': 'Esta hoja se emitió y ya no se puede cambiar. Quedó como estaba. Haga una hoja nueva.',
  'red-flag-open':
    'Este cliente tiene abierta una señal de alarma. No se aprobó ningún programa. Vea la hoja de derivación; apruebe cuando la señal esté revisada.',
  'practice-not-safe':
    'Esta hoja muestra una práctica que ahora no es segura para este cliente ({detail}). La hoja no se guardó. Ábrala de nuevo; lo que no debe hacerse se deja fuera.',
  'red-flags-not-asked':
    'No se respondieron todas las preguntas sobre señales de alarma. No se aprobó ningún programa. Hágalas antes; lleva unos tres minutos.',
  'veto-not-overridden':
    'Una línea de este programa no es segura para este cliente según lo anotado ({detail}). El programa no se aprobó. Quite la línea, o déjela e indique el motivo.',
  'nothing-to-undo':
    'No se cambió nada de este cliente desde que se abrió Fairhand, así que no hay nada que deshacer. El registro muestra lo que se cambió antes.',
  'export-too-large':
    'Estas hojas juntas superan los {detail} MB, más de lo que debe llevar un archivo así. No se guardó nada. Guárdelo sin las imágenes escaneadas, o exporte al cliente como archivo de Fairhand.',
  'handover-forked':
    'Esta entrega y este fichero tienen entradas distintas con el mismo número: una de las dos carpetas se copió y ambas siguieron. No se incorporó nada ni se perdió nada. Pida a su colega que restaure su copia más reciente, que da a su portátil un nombre propio, y que haga la entrega otra vez.',
  'handover-not-for-us':
    'Esta entrega está cerrada para otra clave, no para la suya. No se incorporó nada. Envíe otra vez su clave a su colega y pida una entrega nueva.',
  'not-a-handover':
    'Este archivo no es una entrega de Fairhand, o termina antes de tiempo. No se incorporó nada. Espere a que se copie entero o pídalo otra vez.',
  'handover-newer':
    'Esta entrega la escribió una versión más nueva de Fairhand. No se incorporó nada. Instale aquí esa versión e incorpórela otra vez.',
  'handover-older':
    'Esta entrega la escribió una versión anterior de Fairhand de un modo que ya no se lee. No se incorporó nada. Pida a su colega que instale esta versión y que haga la entrega otra vez.',
  'key-not-one':
    'Esto no es una clave para entregas. No se guardó nada. Copie la línea entera que empieza por age1 de la pantalla de su colega.',
  'key-is-secret':
    'Esta es una clave secreta, no la que se da a otros. No se guardó. Quien la envió debería crear una nueva; pida la línea que empieza por age1.',
  'key-is-own':
    'Esta es la clave de este mismo fichero. No se guardó nada. Pida a su colega la suya; la de usted es la que se entrega.',
  'share-gone':
    'La carpeta compartida no está disponible ahora. No se perdió nada ni quedó ningún archivo a medias. Conéctese a ella e inténtelo otra vez, o guarde la entrega como archivo.',
  'code-taken': 'Otro cliente ya tiene este código. No se cambió nada. Elija otro código.',
  'co-sign-self':
    'Usted anotó esta entrada, así que debe contrafirmarla otra persona. No se cambió nada, y la entrada espera en Pendiente. Pida a quien le supervisa que entre y la firme.',
  'co-sign-assistant':
    'Un asistente o estudiante no puede contrafirmar. No se cambió nada, y la entrada espera en Pendiente. Pida al terapeuta que la firme.',
  'assistant-approves':
    'Un asistente o estudiante no puede aprobar un programa. El borrador se guarda como está. Pida al terapeuta que lo vea y lo apruebe.',
  'assistant-clears':
    'Un asistente o estudiante no puede dar por resuelta una señal de alarma. Sigue abierta, y no se cambió nada. Pida al terapeuta que la revise ahora.',
  'assistant-evaluates':
    'Un asistente o estudiante no puede firmar una evaluación. La hoja se guarda como borrador. Pida al terapeuta que la guarde o la imprima.',
  'assistant-manages':
    'Un asistente o estudiante no puede gestionar quién entra ni hacer una hoja de recuperación. No se cambió nada. Pida al terapeuta que lo haga.',
  'assistant-erases':
    'Un asistente o estudiante no puede borrar expedientes ni trasladar el fichero. No se cambió nada. Pida al terapeuta que lo haga.',
  'initials-missing':
    'Faltan las iniciales. No se cambió nada. Varias personas usan este fichero: escriba también sus iniciales.',
  'initials-taken':
    'Alguien aquí tiene o tuvo las iniciales {detail}. No se añadió a nadie. Elija otras: el registro debe distinguir a las dos personas.',
  'initials-unknown':
    'Nadie entra aquí con las iniciales {detail}. No se cambió nada, y la clave de recuperación todavía sirve. Revise las iniciales e inténtelo otra vez.',
  'not-oneself':
    'Nadie se quita a sí mismo el acceso o la función, para que siempre quede un terapeuta. No se cambió nada. Pida a otro terapeuta que lo haga.',
  'people-not-in-demo':
    'La demostración tiene un solo acceso para todos. No se cambió nada. Añada personas en su propio fichero.',
  'people-too-many': 'Hay {detail} personas en la lista, tantas como caben en un fichero. No se añadió a nadie.',
  'sign-in-decides':
    'Las iniciales y la función vienen del acceso. No se cambió nada. Otro terapeuta puede cambiar una función en Ajustes, Personas.',
  'date-in-future': 'Esta fecha está en el futuro. No se cambió nada. Revise el día, el mes y el año.',
  'ink-empty':
    'No llegó ninguna escritura del lápiz. No se guardó nada. Compruebe que el lápiz escribe en esta superficie y empiece otra vez.',
  'ink-unreadable': '{detail} No se añadió nada al cliente. Elija otro archivo.',
  'ink-known': 'Este archivo de tinta ya está en este cliente. No se añadió nada. Elija otro archivo.',
  'date-too-old': 'Esta fecha es demasiado antigua para ser correcta. No se cambió nada. Revise el año.',
  'demo-not-ours':
    'La carpeta «demo» contiene algo que no es la demostración de Fairhand. No se borró nada. Mire usted esa carpeta.',
  'passphrase-too-weak':
    'Esta frase de acceso se adivina demasiado pronto: palabras o nombres corrientes, palabras de la clínica, repeticiones, un año o letras seguidas. No se cambió nada. Use cuatro o cinco palabras sin relación.',
  'empty-file': 'Este archivo está vacío. No se añadió nada. Escanee o copie la hoja otra vez.',
  'unreadable-file':
    'Este archivo no se puede leer como imagen ni como PDF. No se añadió nada. Guarde la hoja como PNG, JPEG, TIFF o PDF e inténtelo otra vez.',
  'not-an-image': 'Este archivo no es una imagen ni un PDF. No se añadió nada. Elija un escaneo o una foto de la hoja.',
  truncated: 'Esta imagen termina antes de tiempo. No se añadió nada. Cópiela o escanéela otra vez.',
  'too-large':
    'Esta imagen es demasiado grande (más de 100 millones de píxeles, o más de 200 MB). No se añadió nada. Escanee a 300 dpi.',
  'trial-open':
    'Un ensayo de este cliente aún no ha terminado. Quedó como estaba. Decídalo o deténgalo antes y luego empiece otro.',
  'no-new-text':
    'No queda ninguna frase que nadie haya visto en el último año. No se cambió nada. Añada moldes o palabras en Reglas, o tome un texto incluido.',
  'page-not-found': 'Este PDF no tiene esa página. No se añadió nada. Elija otra página.',
  'decode-timeout':
    'Leer esta imagen tardó demasiado y se detuvo. No se añadió nada. Guárdela como PNG o JPEG e inténtelo otra vez.',
  'no-scale':
    'Esta hoja aún no tiene escala, así que nada se puede medir en milímetros. La imagen se conserva. Indique los dpi del escaneo o marque dos puntos a una distancia conocida.',
  'scale-out-of-range':
    'Esta escala no puede ser correcta ({detail}). La imagen se conserva. Revise los dpi o la distancia.',
  'setup-impossible': 'Estas alturas no encajan entre sí ({detail}). No se calculó nada. Mida otra vez, en milímetros.',
  cancelled: 'Detenido, como usted pidió. No se cambió nada.',
  'backup-failed':
    'La copia no se pudo terminar. El fichero está a salvo y no quedó ninguna copia a medias. Revise el disco e inténtelo otra vez.',
  'backup-unverified':
    'La copia se escribió, pero al leerla no era igual. Se quitó. El fichero está a salvo. Pruebe con otro disco.',
  'backup-pictures-missing':
    'Esta copia se hizo por sí sola y guarda sus imágenes en la carpeta «pictures» a su lado, que aquí no está entera. No se restauró nada. Indique la ruta del archivo donde está esa carpeta, o elija una copia hecha a mano.',
  'not-a-backup':
    'Este archivo no es una copia de Fairhand, o está dañado. El fichero no se cambió. Elija otro archivo.',
  'not-an-export':
    'Este archivo no es un cliente exportado de Fairhand, o está dañado. No se añadió nada. Elija otro archivo.',
  'save-failed': 'El archivo no se pudo escribir. Nada del fichero se cambió. Elija otro lugar.',
  'print-failed': 'La hoja no se pudo imprimir. Sigue aquí. Inténtelo otra vez o guárdela como PDF.',
  'not-due':
    'Un cliente elegido no está en la lista de expedientes vencidos. No se borró nada. Mire otra vez la lista; a un cliente suelto se le borra en su propio expediente.',
  'erase-not-confirmed':
    'El número escrito no es el de los clientes elegidos. No se borró nada. Cuéntelos y escríbalo otra vez.',
  'not-moved':
    'Este fichero no se trasladó a otro portátil. No se borró nada. Escriba primero el archivo para el otro portátil.',
  'demo-missing': 'El fichero de demostración no está en esta instalación. Su propio fichero no se ve afectado.',
  'rule-table-refused': 'El cambio se rechazó: {detail}. La tabla de reglas en uso queda como está.',
};

/** Why an ink file is not read. */
const ink: Readonly<Record<InkRefusalCode, string>> = {
  dtd: 'Este archivo de tinta declara un tipo de documento o entidades propias, que podrían ocultar otro contenido. No se guardó nada. Exporte la tinta otra vez sin ellas.',
  'not-well-formed':
    'Este archivo de tinta está dañado: no es XML completo. No se guardó nada. Cópielo o expórtelo otra vez.',
  'other-root':
    'Este archivo es XML, pero no InkML: su elemento exterior no es «ink». No se guardó nada. Elija un archivo InkML.',
  'no-position':
    'Los puntos de este archivo de tinta no tienen X o no tienen Y. No se guardó nada. Exporte la tinta otra vez con las posiciones.',
  'column-count':
    'Un punto de este archivo de tinta tiene más o menos valores de los que dice su formato. No se guardó nada. Exporte la tinta otra vez.',
  'not-a-number':
    'Un valor de este archivo de tinta no es un número finito. No se guardó nada. Exporte la tinta otra vez.',
  'value-too-large':
    'Un valor de este archivo de tinta es mayor de 10 millones, lo que no escribe ningún lápiz. No se guardó nada. Exporte la tinta otra vez.',
  'file-too-large':
    'Este archivo de tinta supera los 32 MB. No se guardó nada. Exporte tramos de escritura más cortos.',
  'too-many-samples':
    'Este archivo de tinta tiene más de 2 000 000 de puntos. No se guardó nada. Exporte tramos de escritura más cortos.',
  'too-many-traces':
    'Este archivo de tinta tiene más de 20 000 trazos. No se guardó nada. Exporte tramos de escritura más cortos.',
  'too-deep':
    'Los elementos de este archivo de tinta tienen más de 32 niveles. No se guardó nada. Exporte la tinta otra vez.',
};

export const refusalsEs: Refusals = { sentences, ink, seeTheEntry: 'vea la entrada' };
