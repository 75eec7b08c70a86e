import { handSpanish } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { patientEnglish } from './patient-english.ts';

export const patientSpanish: Translations<typeof patientEnglish> = {
  title: { strip: (finger) => `Su ortesis para el dedo ${finger}`, plate: (finger) => `Su férula para el dedo ${finger}` },
  titleNoFinger: 'Su ortesis para la mano',
  finger: handSpanish.short,
  and: 'y',
  hand: { left: 'Mano izquierda', right: 'Mano derecha' },
  invented: 'Ejemplo inventado. No se midió a nadie.',
  does: {
    heldLower: (finger) => `Mantiene el dedo ${finger} un poco más abajo que los de al lado.`,
    heldHigher: (finger) => `Mantiene el dedo ${finger} un poco más arriba que los de al lado.`,
    othersLower: (finger) => `Mantiene otros dedos un poco más abajo que el ${finger}.`,
    othersHigher: (finger) => `Mantiene otros dedos un poco más arriba que el ${finger}.`,
    extension: 'Así la articulación del medio se estira mejor.',
    flexion: 'Así la articulación del medio se dobla mejor.',
    plate: 'Sujeta los nudillos. Así se mueven las articulaciones del medio.',
    use: 'Use la mano con ella.',
  },
  wear: { hours: 'Llévela este tiempo cada día:', unit: 'horas', nightOn: 'De noche: puesta', nightOff: 'De noche: quitada' },
  on: {
    heading: 'Poner',
    strip: 'Métala por los dedos. Las letras van hacia fuera.',
    plate: 'Póngala en la mano. Cierre las cinchas sin apretar.',
  },
  off: { heading: 'Quitar', strip: 'Sáquela despacio, dedo por dedo.', plate: 'Abra las cinchas. Levántela.' },
  exercise: {
    heading: 'Ejercicio con ella puesta',
    extension: ['Empiece con la mano suelta.', 'Estire la articulación del medio. Aguante.', 'Suelte otra vez.'],
    flexion: ['Empiece con los dedos rectos.', 'Doble la articulación del medio. Aguante.', 'Estire otra vez.'],
    times: 'veces',
    aDay: 'veces al día',
    seconds: 'segundos de aguante',
    hurts: 'Puede tirar. No debe doler.',
  },
  skin: {
    heading: 'Mire su piel',
    lines: [
      'La primera vez, llévela 20 minutos.',
      'Quítela y mire su piel.',
      'Lo rojo debe irse en 20 minutos.',
      'Si no se va, no la use y llámenos.',
    ],
  },
  heat: {
    heading: 'Lejos del calor',
    lines: ['El calor la ablanda y la deforma.', 'Ni radiadores ni coches al sol.', 'Lávela con jabón y agua fresca.'],
  },
  stop: {
    heading: 'Quítela y llámenos si',
    lines: [
      'duele,',
      'un dedo hormiguea o se duerme,',
      'un dedo se pone blanco, azul o frío,',
      'la mano se hincha,',
      'la piel se abre o tiene ampollas,',
      'se rompe o no sale.',
    ],
    telephone: 'Teléfono',
  },
  drive: 'No conduzca ni use máquinas con ella, salvo que se lo digamos.',
  diary: {
    heading: {
      strip: 'Su diario. Tráigalo con la ortesis a cada sesión.',
      plate: 'Su diario. Tráigalo con la férula a cada sesión.',
    },
    columns: ['Día', 'Horas', 'Ejercicio', 'Piel bien', 'Dolor 0-10'],
  },
};
