import type { Texts } from './english.ts';

/** Problems and warnings by their code, in Spanish. */
export const spanishMessages: Texts['message'] = {
  problem: {
    FIELD_MISSING: ({ name }) => `Falta ${name}. Rellénelo.`,
    FIELD_UNREADABLE: ({ name, range }) => `${name} no se puede leer como número. Escriba ${range}, como 17,5.`,
    FIELD_OUT_OF_RANGE: ({ name, value, range }) => `${name} ${value} no se admite (de ${range}). Mida otra vez y mire la unidad.`,
    FIELD_VALUE: ({ name }) => `${name} contiene algo que no se admite. Use una línea de texto sencillo.`,
    CASE_CODE: () =>
      'El código del caso no sirve. Use de 1 a 24 mayúsculas, cifras y guiones, al menos una cifra, como DEMO-01; ni nombre ni fecha de nacimiento.',
    TOO_FEW_DIGITS: () => 'Hacen falta al menos tres dedos vecinos. Mida el ancho y el perímetro de cada uno.',
    TARGET_NOT_MEASURED: ({ digit }) => `Se va a tratar el ${digit}, pero no está medido. Mídalo, o elija otro.`,
    NOT_ESTIMABLE: ({ name }) => `${name}: no está medido y no se puede estimar en este dedo. Mídalo.`,
    NO_CHILD_NORMS: ({ name }) =>
      `${name}: no está medido. No hay normas para niños, así que nada se estima: mídalo, y lo demás que falte.`,
    SECTION_IMPOSSIBLE: ({ digit }) =>
      `El ancho y el perímetro del ${digit} se contradicen: ningún dedo tiene esa forma. Mida los dos otra vez.`,
    TAPER_IMPOSSIBLE: ({ digit }) =>
      `El perímetro y el perímetro en la raíz del ${digit} no forman ningún dedo. Mida los dos otra vez o deje vacío el de la raíz.`,
    LENGTHS_CONTRADICT: ({ digit }) => `La longitud palmar del ${digit} no puede llegar a su longitud dorsal. Mida los dos otra vez.`,
    PALM_IMPOSSIBLE: () => 'La anchura y el perímetro de la mano se contradicen. Mida los dos otra vez.',
    SETBACK_CONTRADICTS: ({ name, limit }) =>
      `${name} es demasiado para una mano de este tamaño: como máximo ${limit}. Mida otra vez las comisuras, con la regla a lo largo del dedo medio, y la anchura de la mano.`,
    OPTION: ({ name, range }) => `${name} no se puede usar así. Escriba ${range}.`,
    DIGIT_NOT_MEASURED: ({ digit }) => `Esta configuración toma el ${digit}, que no está medido. Mídalo, o elija una configuración sin él.`,
    HOLDS_NOTHING: ({ limit }) =>
      `Con esta diferencia MCF la tira pasa de largo junto al dedo sostenido y no sostendría nada. ${limit === '' ? 'Use una menor.' : `Con ${limit} lo sostiene.`}`,
    STRIP_TOO_BENT: ({ digit }) =>
      `El ${digit} se estrecha tanto que ninguna tira de este ancho puede seguirlo. Mida otra vez los dos perímetros, deje vacío el de la raíz o elija una tira más estrecha.`,
    STRIP_TOO_NARROW: ({ name, limit }) =>
      `En estas comisuras la tira quedaría demasiado estrecha para hacerla. Mida otra vez el desnivel de las comisuras o elija otra configuración.${limit === '' ? '' : ` Se puede hacer con: ${name}, ${limit}.`}`,
    PAPER_NOT_LAID: () =>
      'Con esta diferencia no se puede haber leído ninguna tira de papel de esta mano: no sujetaría nada. Deje la lectura vacía, o elija una diferencia menor y haga la prueba.',
    PAPER_READING: ({ limit }) =>
      `Esta lectura queda fuera de lo que pueden dar la piel y el aire. Vuelva a entrelazar la tira de papel y mida otra vez los dedos.${limit === '' ? '' : ` La más cercana posible es ${limit}.`}`,
    NO_PATH: ({ limit }) =>
      `La tira no se puede poner alrededor de estos dedos. ${limit === '' ? 'Compruebe ancho y perímetro de cada uno.' : `Con ${limit} sí.`}`,
    BLOCK_COUNT: () => 'Una tira toma tres o cuatro dedos. Añada un vecino.',
    BLOCK_NEIGHBOURS: () => 'Los dedos de una tira deben ser vecinos. Dé un lugar al de en medio.',
    BLOCK_BORDER: () => 'Los dos dedos del borde deben ir rodeados, o la banda se sale. Rodéelos, o añada un vecino.',
    BLOCK_HOLDS_NONE: () => 'Al menos un dedo debe ir elevado o bajado, o nada cambia.',
    BLOCK_MIXED: () =>
      'No se pueden mezclar dedos elevados y bajados: las dos capas se cruzarían en una misma comisura. Sujételos todos en un sentido.',
    NO_TARGET: () => 'Aún no se ha elegido el dedo tratado, así que no se sugiere configuración. Elíjalo, o elija una configuración.',
    NO_DEFICIT: ({ digit }) => `Al ${digit} no le falta ni extensión ni flexión de la IFP, así que no se sugiere configuración. Elija una.`,
    BOTH_DEFICITS: ({ digit }) =>
      `Al ${digit} le faltan extensión y flexión de la IFP. Una tira desvía un solo movimiento; aquí una férula sujeta la MCF.`,
    NO_BLOCK: ({ digit }) =>
      `Ninguna de las configuraciones que sirven al ${digit} se puede hacer para esta mano. «Todas las opciones» dice por qué.`,
    HARD_END_FEEL: () =>
      'La IFP tiene sensación final dura, y redirigir el movimiento activo no mueve una articulación así: no se sugiere nada.',
    UNPROTECTED_REPAIR: () =>
      'Hay una reparación o fractura sin proteger, y moverla fuera del protocolo de cirugía puede romperla: no se sugiere nada.',
    MOTION_UNREADABLE: ({ name }) => `${name}: escriba grados, como 25; para 10 de hiperextensión «hiper 10».`,
    MOTION_SIGN: ({ name, value }) =>
      `${name} ${value}: con signo se escriben las dos cosas. Si faltan 10 hasta la extensión completa, escriba 10; si hay 10 de hiperextensión, «hiper 10».`,
    MOTION_OUT_OF_RANGE: ({ name, value, range }) => `${name} ${value} no se admite (de ${range}).`,
    MOTION_IMPOSSIBLE: ({ name, value }) =>
      `${name} ${value} es menos de lo que falta hasta la extensión completa. Las dos cuentan desde ella.`,
    PLATE_ANGLE_FORCES: () =>
      'Con este ángulo la férula forzaría la MCF más allá de su movimiento pasivo medido. Escriba un ángulo dentro de ese movimiento, o mídalo otra vez.',
    PLATE_ANGLE: () => 'Falta el ángulo MCF de la férula o no sirve. Escriba de 0 a 90 grados de flexión.',
    JSON_SYNTAX: () => 'El archivo está roto: no es JSON. Abra el original.',
    JSON_NAME_TWICE: ({ name }) => `El archivo tiene «${name}» dos veces en un mismo lugar y solo contaría una. Quite la equivocada.`,
    FILE_NEWER: () => 'Este archivo lo escribió un Knucklewright más nuevo. Ábralo con ese; el archivo quedó como estaba.',
    CASE_FULL: () => 'El caso tiene más sesiones o correcciones que las 400 que caben en un archivo. Empiece un caso nuevo.',
    FILE_TOO_LARGE: () => 'El archivo es mayor que el 1 MB que se lee. ¿Es el correcto?',
    DATE: () => 'La fecha no se puede leer. Escríbala como 2026-03-31, o déjela vacía.',
  },
  warning: {
    VALUE_UNUSUAL: ({ name, value, range }) =>
      `${name} ${value} es poco habitual; lo plausible es ${range}. Mida otra vez; siga si es así.`,
    RING_CHARTS_DIFFER: ({ name, value }) =>
      `${name}: la talla de anillo se lee como ${value}; las tablas difieren. Mida con cinta, o dé una talla ISO 8653, como EU 54.`,
    DEPTH_RATIO_UNUSUAL: ({ digit }) => `El ancho y el perímetro del ${digit} apenas concuerdan. Mida los dos otra vez, al mismo nivel.`,
    LENGTH_RATIO_UNUSUAL: ({ digit }) => `La longitud palmar y la dorsal del ${digit} apenas concuerdan. Mida los dos otra vez.`,
    TAPER_UNUSUAL: ({ digit }) =>
      `El ${digit} se estrecha más de lo usual. Mida los dos perímetros otra vez: en el pliegue de la raíz y a medio camino del pliegue IFP.`,
    SETBACK_UNUSUAL: ({ name, value, limit }) =>
      `${name}: ${value} detrás de la comisura más adelantada es mucho para una mano de este tamaño; hasta ${limit} es habitual. Mida otra vez, con la regla a lo largo del dedo medio.`,
    STRIP_UNDER_LEAST_WIDTH: () =>
      'La tira es en un punto más estrecha que su ancho mínimo. Mida otra vez la posición de los espacios interdigitales; no la haga como está dibujada.',
    STRAIGHT_NOT_TAPERED: () =>
      'Los dedos se estrechan y una tira recta no lo sigue: su borde distal quedará separado. Use el contorno escalonado.',
    PIP_THINNER: ({ digit }) =>
      `La IFP del ${digit} es más delgada que su falange proximal. Mida las dos otra vez; el edema puede causarlo.`,
    CIRCUMFERENCE_ORDER: ({ digit }) =>
      `El ${digit} es más grueso de lo habitual junto a los otros. Compruebe que no haya dos cambiados; edema o lesión antigua pueden causarlo.`,
    WIDTH_ORDER: ({ digit }) =>
      `El ${digit} es más ancho de lo habitual junto a los otros. Compruebe que no haya dos cambiados; edema o lesión antigua pueden causarlo.`,
    PASSIVE_EXCEEDS_ACTIVE: ({ name }) => `${name} es mayor que el activo. Compruebe que no estén cambiados.`,
    NO_MOTION_LEFT: () =>
      'Los dos déficits juntos no dejan movimiento en la IFP. Compruebe que cada uno sea un déficit y no el ángulo alcanzado.',
    PALM_RATIO_UNUSUAL: () => 'La anchura y el perímetro de la mano apenas concuerdan. Mida los dos otra vez, sin el pulgar.',
    ESTIMATED: ({ name, value }) => `${name}: sin medir; se estima ${value}. Mídalo.`,
    DIFFERENTIAL_UNUSUAL: ({ value }) =>
      `La diferencia MCF de ${value} queda fuera de los 11 a 30 grados que usan los terapeutas encuestados. Use esos si no hay un motivo.`,
    FOLD_PRESSES: () =>
      'Doblada y puesta sobre la mano del modelo, la férula aprieta un dedo. Acolche ahí antes de moldear, o deje más espacio a la piel.',
    FOLD_STRETCH: () =>
      'En el doblez la lámina tendría que estirarse más de lo que da al alisarla. Deje el doblez que menos fuerza, una línea recta o uno con corte.',
    PIP_CLEARANCE: ({ value, limit }) =>
      `Doblada, la férula acaba a ${value} de una articulación IFP, menos de ${limit}. Recorte ahí el borde distal.`,
    THUMB_CLEARANCE: ({ value, limit }) => `El ala radial acaba a ${value} de la comisura del pulgar, menos de ${limit}. Recórtela ahí.`,
    HELD_SHORT: ({ digit, value, limit }) =>
      `La férula cubre solo ${value} del ${digit} tras el doblez, menos de ${limit}: apenas lo sujeta. Use un ángulo MCF menor o una férula dorsal si hay que sujetar esa MCF.`,
    PIP_CLEARANCE_LESS: ({ value, limit }) =>
      `La férula palmar acaba a ${value} de los pliegues IFP, no a ${limit}: si no, sujetaría muy poco de los dedos. Mire que cada IFP se doble libre sobre el borde, o use un ángulo MCF menor o una férula dorsal.`,
    BEND_SHARPER: ({ value, limit }) =>
      `La férula palmar se dobla con un radio interior de ${value}, no de ${limit}: si no, sujetaría muy poco de los dedos. Caliente bien el doblez, o use un ángulo MCF menor, una lámina más fina o una férula dorsal.`,
    DIGIT_LEFT_OUT: ({ digit }) =>
      `El ${digit} queda libre: con este ángulo MCF la férula cubriría muy poco. Use un ángulo MCF menor o una férula dorsal si hay que sujetar su MCF.`,
    CORNER_RADIUS: ({ value, limit }) =>
      `La esquina más cerrada tiene un radio de ${value}, menos de ${limit}: no hay sitio para más. Dóblela hacia fuera y compruebe que es lisa.`,
    PIP_FLEXION_NOT_FREE: ({ digit, value, limit }) =>
      `La flexión IFP del ${digit} se para hacia los ${value}, por debajo de ${limit}. Ayuda un ancho mínimo menor o menos distancia a la comisura, o una configuración sin capa en su lado palmar.`,
    PLATE_STOPS_PIP: ({ digit, value, limit }) =>
      `La férula para la flexión IFP del ${digit} hacia los ${value}, por debajo de ${limit}. Una dorsal la deja libre; compruebe el puño antes de que endurezca.`,
    STRAIGHT_PULLED: () =>
      'Una tira recta debe estirarse a lo largo de la mano para seguir las comisuras, y eso la estira y la comprime. Use el contorno escalonado.',
    TRIM_TOO_SHORT: ({ limit }) => `La longitud se conoce a ± ${limit} (95 %), más de lo que cubre el sobrante. Use al menos ese sobrante.`,
    BORDER_TARGET_IN_THREE: ({ digit }) =>
      `El ${digit} es un dedo del borde: entre tres dedos su rotación no se controla, sobre todo si es hipermóvil. Mejor cuatro dedos.`,
    DEFICIT_WITHIN_ERROR: ({ name, value }) =>
      `${name}: ${value} es menos de lo que difiere una medición de la siguiente. Mida otra vez; escriba 0 si el movimiento es completo.`,
    NO_PASSIVE_GAIN: ({ name }) =>
      `${name} es tan grande como el activo: la articulación está rígida, y redirigir el movimiento activo quizá gane poco. Explore la sensación final; trate la rigidez antes o a la vez.`,
    LOOP_OVER_PIP: () =>
      'Un lazo cerrado para siempre no pasaría por la IFP. Haga la unión de modo que se abra: sin pegar, cerrada con una cincha.',
  },
  caution: {
    UNPROTECTED_REPAIR: () =>
      'Reparación o fractura sin proteger: solo dentro del protocolo de cirugía. Pregunte antes de que algo la mueva.',
    HARD_END_FEEL: () =>
      'Sensación final dura: la propia articulación detiene el movimiento, y redirigir el movimiento activo no mueve una articulación así.',
    SENSATION: () =>
      'Sensibilidad reducida: no se notan el calor ni la presión. Deje enfriar más el plástico, pruébelo en su piel, mire la piel pronto y a menudo.',
    SWELLING: () => 'Edema cambiante: mida cuando esté como siempre, otra vez antes de hacerla y en cada sesión; ajuste con holgura.',
    HYPERMOBILE: () => 'Articulaciones hipermóviles: vigile la rotación, y que la MCF de un dedo elevado no pase de recta.',
  },
};
