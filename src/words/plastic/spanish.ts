import type { Translations } from '../language.ts';
import type { plasticEnglish } from './english.ts';
import { lookAtSpanish } from './look-at-spanish.ts';

export const plasticSpanish: Translations<typeof plasticEnglish> = {
  lookAt: lookAtSpanish,
  side: { left: 'IZQUIERDA', right: 'DERECHA' },
  invented: '(ejemplo inventado)',
  list: {
    title: (page, pages) => `LISTA DE CORTE, página ${page} de ${pages}`,
    head: {
      number: 'N.º',
      code: 'CÓDIGO',
      side: 'MANO',
      size: 'TAMAÑO, mm',
      quantity: 'CUÁNTAS',
      notes: 'TIRA o FÉRULA, y en qué fijarse',
    },
    blank: 'pieza en blanco, sin marcas',
    look: (letters) => `FÍJESE EN ${letters}`,
    legend: 'EN QUÉ FIJARSE',
  },
  sheet: {
    title: (number, count, remnant, parts) =>
      `Lámina ${number} de ${count}, ${remnant === '' ? 'lámina nueva' : `resto ${remnant}`}, ${parts === '1' ? '1 pieza' : `${parts} piezas`}`,
    size: (along, across, used) => `${along} mm en el sentido de laminado x ${across} mm, ${used} % usado`,
    rules: (gap, margin, grain) => `separación ${gap}, margen ${margin}, respecto al sentido de laminado: ${grain}`,
    grainRule: { along: 'a lo largo', across: 'a lo ancho', free: 'libre' },
    grain: 'SENTIDO DE LAMINADO',
    parts: 'PIEZAS, desde arriba a la izquierda, fila por fila',
    noRoom: (list) => `No hay sitio para el número en: ${list}`,
    outlines: 'CORTAR POR LOS CONTORNOS',
    nested: 'Estas piezas están encajadas, algunas giradas media vuelta (nunca volteadas), y ningún corte recto pasa entre ellas.',
    restsFirst: 'Primero los restos con tijeras, mm desde la esquina inferior izquierda:',
    thenOutlines: 'después cada pieza por su contorno',
    order: 'ORDEN DE CORTE con tijeras, mm desde la esquina inferior izquierda',
    orderOf: (cuts) =>
      `ORDEN DE CORTE con tijeras, ${cuts === '1' ? '1 corte recto' : `${cuts} cortes rectos`}, mm desde la esquina inferior izquierda`,
    along: (at, from, to) => `en el sentido de laminado, ${at} sobre el borde inferior, de ${from} a ${to}`,
    across: (at, from, to) => `de través, ${at} desde el borde izquierdo, de ${from} a ${to}`,
    remnants: 'RESTOS para guardar, a lo largo x a lo ancho del laminado',
    none: 'ninguno',
    several: (count, size) => `${count} de ${size}`,
  },
  sizes: {
    title: (page, pages) => `TAMAÑOS Y BOLSAS, página ${page} de ${pages}`,
    invented: '(inventado)',
    head: { id: 'TAMAÑO', size: 'LARGO x ANCHO, mm', quantity: 'CUÁNTAS', serves: 'SIRVE', codes: 'PARA' },
    serves: { all: 'a todas', withoutLittle: 'de índice a anular', withLittle: 'con el meñique' },
    singly: 'suelta',
    bag: (size, count) => `${size} mm, ${count} en total`,
    bagSingly: (size) => `suelta, ${size} mm`,
    trim: (mm) => `su sobrante es ${mm} mm más corto que en el dibujo`,
    cutOff: (mm) => `cortar ${mm} mm en el extremo final`,
    cutBack: (list) => `rebajar, mm: ${list}`,
  },
  chart: {
    title: 'Tamaños de existencias: recorte medio según el número de tamaños',
    heading: 'CUÁNDO MÁS TAMAÑOS YA NO AHORRAN',
    across: 'NÚMERO DE TAMAÑOS',
    up: 'RECORTE MEDIO, mm',
    ringed: (count) => `con un círculo: ${count === '1' ? 'el tamaño elegido' : `los ${count} tamaños elegidos`}`,
    served: (from, percent) => `${from}, ${percent} % atendido`,
  },
  from: {
    lengths: (count, file) => `${count} longitudes medidas de ${file}`,
    norms: (count, group, seed, again, block) =>
      `${count} manos sacadas de valores normales (${group}; semilla ${seed}, ${again} sacadas de nuevo), ${block}`,
    table: (count, file, block) => `${count} manos de ${file}, ${block === '' ? 'tira según el objetivo de cada mano' : block}`,
    group: { female: 'mujeres', male: 'hombres', mixed: 'mujeres y hombres' },
  },
};
