import type { ScreenTexts } from '../en/screens-en.ts';

/** Quién entra en el fichero de casos. */
export const peopleEs: ScreenTexts['people'] = {
  people: 'Personas',
  yours: 'Los suyos',
  eachSignsIn: 'Cada persona entra con sus iniciales y su propia frase de acceso, y cada anotación dice de quién es.',
  oneSignInForAll:
    'Este fichero tiene un solo acceso. Si lo usan varias personas, dé a cada una el suyo: el registro dirá quién hizo qué, y quien se va podrá quedar fuera.',
  notInDemo: 'La demostración tiene un solo acceso para todos.',
  assistantsManageNobody: 'Solo un terapeuta añade o quita personas.',
  initials: 'Iniciales',
  name: 'Nombre',
  role: 'Función',
  state: 'Estado',
  therapist: 'Terapeuta',
  assistant: 'Asistente o estudiante',
  signedInNow: 'con acceso abierto',
  removedOn: (day) => `sin acceso desde el ${day}`,
  notFinished: 'retirada sin terminar',
  removalCutOff: (initials) =>
    `La retirada de ${initials} se interrumpió antes de cambiar la clave. La ventana ya no deja entrar a ${initials}, pero una copia antigua del archivo de claves sí lo haría. Termínela a la derecha.`,
  addPerson: 'Añadir una persona',
  addThisPerson: 'Añadir esta persona',
  cancel: 'Cancelar',
  nameAndInitials: 'Faltan el nombre y las iniciales. No se añadió a nadie.',
  initialsHint: 'Firman cada anotación. Nadie más aquí tiene ni tuvo las mismas.',
  newPersonTypes: 'La nueva persona escribe aquí ahora su propia frase de acceso; nadie más necesita conocerla.',
  herPassphrase: 'Frase de acceso de la nueva persona',
  yourPassphrase: 'Su propia frase de acceso',
  yourPassphraseHint: 'Para que nadie que solo encuentre la ventana abierta pueda añadir personas.',
  sheetWillFollow:
    'Sigue una nueva hoja de recuperación, y la anterior ya no abre este fichero. Si este ordenador lo abría por sí mismo, eso termina.',
  wrapping: 'Creando el acceso …',
  canSignIn: (initials) => `${initials} ya puede entrar: Bloquear, y después iniciales y frase de acceso.`,
  newSheetFollows: 'La persona está añadida. Esta nueva hoja de recuperación sustituye a la anterior.',
  signIn: 'Este acceso',
  signsAs: (initials) => `Firma como ${initials}.`,
  whatAssistantsMay:
    'Anota; lo anotado espera la firma de un terapeuta. No puede aprobar un programa, cerrar una señal de alarma, firmar una evaluación, hacer una hoja de recuperación ni gestionar personas.',
  removedMeans: (day) =>
    `Sin acceso desde el ${day}; entonces se cambió la clave del archivo. Las anotaciones anteriores quedan como están. Las copias de antes se abren todavía con la frase de acceso de su día: borre las que no deban abrirse.`,
  ownInSettings: 'Su titulación, frase de acceso y aspecto están en Ajustes. Otro terapeuta puede cambiar su función.',
  removeOf: (initials) => `Quitar a ${initials} …`,
  finishRemoval: (initials) => `Terminar la retirada de ${initials} …`,
  removeQuestion: (initials) => `¿Terminar el acceso de ${initials}?`,
  whatRemovingDoes:
    'Todo el archivo se cifra con una clave nueva. La frase de acceso de esta persona ya no abre nada de él, ni tampoco una copia antigua del archivo de claves. Los demás entran como antes, y la hoja de recuperación sigue valiendo. Las anotaciones quedan; las palabras que esta persona dejó en formularios no se muestran a nadie. Las copias de antes se abren todavía con las frases de acceso de su día.',
  removeSignIn: 'Terminar el acceso',
  initialsToSignIn: 'Iniciales',
  whoeverComesNext: 'De quien trabaja aquí a continuación.',
  whosePassphrase: 'De quién es la frase de acceso que se cambia.',
  signedInAs: (initials) => `Acceso de ${initials}`,
  fromTheSignIn: (initials) => `Iniciales: ${initials}, las del acceso.`,
  onePersonOnly:
    'No disponible cuando entran varias personas: la cuenta del ordenador no sabe quién de ellas está al teclado.',
  ownPassphraseChanges:
    'Todo el archivo se cifra con una clave nueva y se bloquea. Su frase de acceso anterior y los archivos de claves antiguos ya no abren nada de este fichero; las frases de acceso de los demás y la hoja de recuperación siguen valiendo. Las copias de antes se abren todavía con las frases de acceso de su día.',
  passphraseIsChanged: 'Su frase de acceso está cambiada. Entre con la nueva.',
};
