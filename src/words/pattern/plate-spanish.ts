import type { Translations } from '../language.ts';
import type { plateEnglish } from './plate-english.ts';

export const plateSpanish: Translations<typeof plateEnglish> = {
  title: {
    'plate-dorsal': 'férula MCF dorsal',
    'plate-palmar': 'férula MCF palmar',
    'plate-both': 'Inmovilización MCF, férula dorsal y palmar',
    'mp-extension-block': 'Tope de extensión MCF, férula palmar de cuatro dedos (puño en gancho)',
    'mp-immobilisation-dorsal': 'Inmovilización MCF, férula dorsal, cuatro dedos',
    'mp-immobilisation-palmar': 'Inmovilización MCF, férula palmar, cuatro dedos',
    'single-digit-with-neighbours': 'Inmovilización MCF de un dedo con sus vecinos, férula dorsal',
  },
  lettering: {
    face: { dorsal: 'FÉRULA DORSAL', palmar: 'FÉRULA PALMAR' },
    skin: 'LADO DE LA PIEL ABAJO',
    bend: (degrees) => `DOBLEZ MCF ${degrees}`,
    bendShort: (degrees) => `MCF ${degrees}`,
    ulnar: 'CUBITAL',
    thumb: 'PULGAR',
    wrist: 'MUÑECA: ABRIR BORDE',
  },
  name: (title, holds) => `${title}, ${holds}`,
  holds: (degrees, digits) => `MCF ${degrees} grados, ${digits}`,
  drawing: (code, side, name) => `${code}, mano ${side}: ${name}`,
  part: (face, side) => `férula ${face}, mano ${side}`,
  left: (face, words) => `${face}: ${words}`,
  midlineOf: (digit) => `línea media ${digit}`,
  line: {
    'mp-bend': 'línea de doblez MCF',
    'bend-limit': 'aquí empieza y acaba el doblez',
    midline: 'línea media de un dedo',
    fold: 'línea lateral: aquí dobla el ala o la pared',
    flare: 'abrir el borde hacia fuera de la piel',
    strap: 'gancho para una cincha',
    trim: 'recortar hasta aquí cuando ajuste',
  },
  hookAt: { radial: (strap) => `gancho para la cincha ${strap}, radial`, ulnar: (strap) => `gancho para la cincha ${strap}, cubital` },
  sample: (words) => `muestra: ${words}`,
  fact: {
    holds: (holds) => `${holds}   (posible de 0 a 90: decide el/la terapeuta)`,
    sheet: (thickness, off) => `lámina de baja temperatura de ${thickness} de grosor, a ${off} de la piel`,
    palm: (broad, round, thick) => `palma de ${broad} de ancho, ${round} de perímetro, o sea ${thick} de grosor`,
    face: (face, wide, bend, form, corner) =>
      `férula ${face}: parte de la mano ${wide} de ancho, doblez de ${bend}, ${form}, esquina más cerrada ${corner}`,
    bend: { straight: 'una línea recta', split: 'partida entre anular y meñique', kinked: 'quebrada en cada articulación' },
    wrist: (free) => `muñeca libre: ${free} hasta el pliegue de la muñeca`,
    noRoom: (list) => `Sin sitio en la férula para: ${list}`,
    straps: 'CINCHAS para cortar (gancho y bucle)',
    strap: (id, width, length, where) => `${id}   ${width} de ancho, ${length} de largo, ${where}`,
  },
  lines: 'LÍNEAS',
  moulding: 'MOLDEADO',
  cautionsHeading: 'PRECAUCIONES',
  gauge: {
    first: 'GALGA DE ÁNGULO: recortar del papel,',
    second: 'poner el anillo sobre la MCF, de lado',
    title: (degrees) => `Galga de ángulo, ${degrees} grados: recortar, anillo sobre la MCF, de lado`,
    mark: (degrees) => `galga del ángulo MCF, ${degrees} grados`,
    axis: 'eje MCF y centro de los dos brazos',
    arm: (degrees) => `MCF ${degrees} grados`,
    metacarpal: 'METACARPIANO',
    finger: 'DEDO',
  },
  strap: {
    title: (id) => `Cincha ${id}, gancho y bucle`,
    goes: (where) => `Va ${where}.`,
    hand: 'alrededor de la mano, por la comisura del pulgar',
    fingers: (names) => `alrededor de las falanges proximales, ${names}`,
    range: (first, last) => `${first} a ${last}`,
  },
  check: {
    mp: (planned) => `MCF a ........ grados según la galga (previsto ${planned}).`,
    free: 'La muñeca se mueve libre en los dos sentidos, el pulgar cruza, los dedos libres cierran el puño.',
    clear:
      'Borde proximal libre del pliegue de la muñeca y de la cabeza del cúbito; comisura del pulgar libre; bordes redondos y abiertos.',
    straps: 'Las cinchas sujetan sin tirar; no se mueve, no pellizca, la piel no se pone blanca.',
  },
  step: {
    paper: 'Imprimir al 100 %, medir el cuadrado de 50 mm, recortar el papel y ponerlo en la mano con su ángulo antes de cortar lámina.',
    pad: 'Primero acolchar: poner acolchado en la cabeza del cúbito si el borde se le acerca, en las cabezas de los metacarpianos y en todo punto óseo o sensible, y moldear encima. El acolchado bajo una férula acabada la aprieta.',
    heat: 'Marcar en la lámina lo que marca el patrón, cortar, calentar como pide la lámina (agua de 65 a 71 °C, casi siempre menos de un minuto) y secar.',
    hold: 'Dos pares de manos: uno sujeta las MCF en su ángulo con la galga al lado, muñeca recta; el otro moldea. La gravedad ayuda: férula dorsal con la palma abajo, palmar con la palma arriba.',
    bend: 'Doblar primero por la línea de doblez MCF, luego bajar la parte de la mano, luego envolver alas y paredes. Alisar, no apretar: las huellas de dedos son puntos de presión.',
    set: 'Sujetar la galga hasta que endurezca. Después abrir el borde de la muñeca, la comisura del pulgar y todo borde junto a una articulación libre.',
    check:
      'Comprobar: MCF en su ángulo, muñeca y pulgar libres, IFP con todo su movimiento en los dos sentidos, dedos libres hasta cerrar el puño. Recortar lo que los frena, redondear lo recortado.',
    straps: 'Poner los ganchos y cortar las cinchas según la lista. Las cinchas sujetan, no tiran.',
  },
  caution: {
    heat: 'Una lámina mayor guarda más calor y más agua que una tira: secar más tiempo, probar en la propia piel, proteger el antebrazo.',
    pressure:
      'Mirar la piel sobre las cabezas de los metacarpianos, la cabeza del cúbito, el borde radial del índice y la comisura del pulgar: ahí aprietan primero las férulas.',
    stiff:
      'Las MCF sujetas en extensión se ponen rígidas: no más tiempo del que dice el plan, y quitar la férula para el ejercicio cuando lo diga.',
    angle: 'El ángulo MCF es un punto de partida que juzga el/la terapeuta, práctica común sin fuente publicada, nunca una prescripción.',
  },
};
