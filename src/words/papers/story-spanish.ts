import { handSpanish } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { storyEnglish } from './story-english.ts';

export const storySpanish: Translations<typeof storyEnglish> = {
  heading: 'Cómo hacerla, paso a paso',
  how: 'Visto desde el lugar de quien la hace. Gris: hecho. Azul: ahora. Naranja: el dedo tratado.',
  finger: handSpanish.short,
  short: handSpanish.short,
  and: handSpanish.and,
  back: 'dorso',
  palm: 'palma',
  thumbSide: 'lado del pulgar',
  mp: { lowered: 'más abajo', raised: 'más arriba' },
  view: {
    fingertips: 'Desde las puntas de los dedos, dorso arriba',
    side: 'De lado',
    above: 'Desde arriba, dorso arriba',
    palmUp: 'Mano girada, palma arriba: el orden de los dedos también gira',
    large: 'Desde las puntas de los dedos, grande',
    flat: 'Desde arriba, dorso arriba; la tira al lado',
    flatPalmUp: 'Mano girada, palma arriba; la tira al lado',
  },
  step: {
    paper: {
      title: 'Probarla en papel',
      text: (held) => `Recorte la tira de papel, pásela igual con el ${held} en su sitio y lea en la escala dónde se juntan los extremos.`,
    },
    position: {
      title: 'Sujetar así la mano',
      text: (held, degrees, how) =>
        `${held} ${degrees} grados ${how} que los vecinos en la MCF; la tarjeta de ángulo va sobre los dorsos. Muñeca recta. Otra persona o la otra mano sujeta las puntas.`,
    },
    warm: {
      title: 'Calentar, secar, probar, empezar',
      text: (held) =>
        `65 a 71 °C, menos de un minuto. Seque, espere, pruebe en su propia piel. "EXTERIOR" mira hacia usted; la marca de unión va en el centro del ${held}, donde su otra mano la sujeta.`,
    },
    first: {
      dorsal: {
        title: (finger) => `Sobre el ${finger} y alrededor`,
        text: (finger) => `Sobre el dorso del ${finger}, por su lado externo y luego por debajo. El borde queda a 2 mm de la comisura.`,
      },
      palmar: {
        title: (finger) => `Bajo el ${finger} y alrededor`,
        text: (finger) => `Bajo el ${finger}, por su lado externo y luego sobre el dorso. El borde queda a 2 mm de la comisura.`,
      },
    },
    through: {
      first: {
        over: {
          title: (held) => `Subir, sobre el ${held}`,
          text: (held) => `Suba por la comisura y pase sobre el dorso del ${held}, plana y sin estirar.`,
        },
        under: {
          title: (held) => `Bajar, bajo el ${held}`,
          text: (held) => `Baje por la comisura y pase bajo el ${held}, plana y sin estirar.`,
        },
      },
      second: {
        over: {
          title: (held) => `Seguir sobre el ${held}, bajar`,
          text: (held) => `Siga sobre el dorso del ${held} y baje por la comisura siguiente.`,
        },
        under: {
          title: (held) => `Seguir bajo el ${held}, subir`,
          text: (held) => `Siga bajo el ${held} y suba por la comisura siguiente.`,
        },
      },
      over: {
        title: (held) => `Subir, sobre el ${held}, bajar`,
        text: (held) => `Suba por la comisura, pase sobre el dorso del ${held} y baje por la siguiente.`,
      },
      under: {
        title: (held) => `Bajar, bajo el ${held}, subir`,
        text: (held) => `Baje por la comisura, pase bajo el ${held} y suba por la siguiente.`,
      },
    },
    beside: {
      title: (finger) => `A lo largo del ${finger}`,
      dorsal: (finger) => `Siga sobre el dorso del ${finger}, plana y sin estirar.`,
      palmar: (finger) => `Siga bajo el ${finger}, plana y sin estirar.`,
    },
    second: {
      palmar: {
        title: (finger) => `Bajo el ${finger}`,
        text: (finger) => `Bajo el ${finger} y luego por su lado externo. El borde recortado no toca el pliegue de la IFP.`,
      },
      dorsal: {
        title: (finger) => `Sobre el ${finger}`,
        text: (finger) => `Sobre el dorso del ${finger} y luego por su lado externo. El borde no toca la IFP.`,
      },
    },
    back: {
      tacked: {
        title: 'Volver; apretar las capas',
        text: (finger, held) =>
          `Vuelva junto al ${finger} hasta la marca. Mientras está seca y blanda, apriete unos 5 segundos las dos capas sobre el ${held}: el pulgar encima, los dedos contra él.`,
      },
      spanning: {
        title: 'Volver a la unión',
        text: (finger, held) => `Vuelva junto al ${finger} hasta la marca. La capa externa queda tensa sobre el ${held}.`,
      },
    },
    check: {
      title: 'Enfriar, comprobar',
      text: 'Extienda cada IFP y luego flexiónela. Las uñas quedan juntas, ninguna cruza. Una uña apretada vuelve a estar rosa en 2 segundos. La sensibilidad no cambia.',
    },
    close: {
      title: 'Quitar, cerrar, recortar',
      text: {
        lap: 'Quítela dedo por dedo. Pegue el solape en sus marcas, recorte el extremo y redondee los bordes. Las letras van hacia fuera.',
        opening:
          'Quítela dedo por dedo. El solape queda abierto y lleva una cincha. Recorte el extremo y redondee los bordes. Las letras van hacia fuera.',
        pinch:
          'Quítela dedo por dedo. Pellizque las pestañas en sus marcas, recorte el extremo y redondee los bordes. Las letras van hacia fuera.',
      },
    },
  },
  plate: {
    place: {
      title: 'Probar el papel en la mano',
      view: 'Desde el lado de la férula',
      text: 'Recorte el papel y póngalo en la mano con su ángulo. El pliegue de la muñeca, la comisura del pulgar y los dedos libres quedan libres. Corrija el papel, no la lámina.',
    },
    outline: {
      title: 'Dibujar el contorno, cortar',
      view: 'Desde arriba: gris el papel, azul la lámina',
      text: 'Letras arriba. Dibuje el contorno del papel, pase todas las marcas y corte. Ponga ahora el acolchado en los puntos óseos de la mano, no después.',
    },
    hold: {
      title: (degrees) => `Sujetar las MCF a ${degrees} grados`,
      view: 'De lado, la galga junto a la mano',
      text: 'Otra persona sujeta las puntas de los dedos. Anillo de la galga sobre la MCF, sus brazos a lo largo de mano y dedo. Muñeca recta.',
    },
    bend: {
      title: 'Calentar, secar, doblar en un borde',
      view: 'Desde arriba: gris la mesa',
      text: '65 a 71 °C, como pide la lámina. Seque, espere, pruebe en su propia piel. Doble por la línea de doblez MCF sobre el borde de la mesa.',
      flat: '65 a 71 °C, como pide la lámina. Seque, espere, pruebe en su propia piel. A 0 grados no hay doblez: va plana sobre la mano.',
    },
    fit: {
      title: 'Ponerla y alisarla',
      view: 'Desde el lado de la férula',
      text: 'Primero la parte de la mano, luego alas y paredes. Alise, no apriete. La galga al lado hasta que endurezca. Doble hacia fuera los bordes de muñeca y pulgar.',
    },
    strap: {
      title: 'Cinchas y comprobar',
      view: 'Desde el otro lado',
      text: 'Las cinchas A y B sujetan, no tiran. Las IFP se mueven del todo, muñeca y pulgar libres. Una uña apretada vuelve a estar rosa en 2 segundos. La sensibilidad no cambia.',
    },
  },
  wrong: { crossing: 'Mal: una uña cruza', crease: 'Mal: sobre el pliegue', twisted: 'Mal: girada' },
  scale: 'escala',
  thumb: 'el pulgar aprieta',
  helper: 'otra persona',
};
