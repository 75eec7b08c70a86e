import type { Translations } from '../language.ts';
import type { sheetEnglish } from './english.ts';

export const sheetSpanish: Translations<typeof sheetEnglish> = {
  page: (page, pages) => `página ${page} de ${pages}`,
  hand: { left: 'MANO IZQUIERDA', right: 'MANO DERECHA' },
  date: (date) => `fecha ${date}`,
  invented: 'EJEMPLO INVENTADO, no se midió a nadie',
  print: 'Imprimir al 100 %, tamaño real, sin ajustar a la página. Medir las dos barras antes de usar.',
  corrected: (across, along) =>
    `CORREGIDO para una impresora: las barras que medían ${across} mm a lo ancho y ${along} mm a lo largo se imprimen ahora a 100 mm. Solo para esa impresora y sus ajustes.`,
  across: 'A LO ANCHO: 100 mm de marca a marca',
  along: 'A LO LARGO: 100 mm de marca a marca',
  card: 'Ponga aquí una tarjeta bancaria: debe cubrir justo el contorno',
  pattern: 'patrón a 1:1',
  tile: (row, rows, column, columns) => `fila ${row} de ${rows}, columna ${column} de ${columns}`,
  join: 'Corte uno de dos vecinos por su marco, ponga las cruces de la misma letra una sobre otra a contraluz y pegue.',
  making: 'elaboración',
  stepByStep: 'paso a paso',
  plan: (factor) => `plano de la lámina, dibujado a ${factor} de su tamaño: para leer, no para cortar`,
  heading: {
    facts: 'Qué es',
    lines: 'Líneas',
    steps: 'Elaboración, en este orden',
    checks: 'Comprobar el ajuste',
    cautions: 'Precauciones',
    ruler: (title) => `${title}: lista de corte con regla`,
  },
  trueSize: 'Tamaño real.',
  enlarged: (factor) => `Dibujado a ${factor} veces su tamaño.`,
  size: (length, width, from) => `${length} mm de largo, ${width} mm de ancho.${from === '' ? '' : ` Marcas en ${from}:`}`,
  edges: (low, high) => `${low} a ${high}`,
  machine: {
    drawing: (width, height) =>
      `El dibujo mide ${width} x ${height} mm; su esquina inferior izquierda es 0,0. Compruebe ese tamaño en la máquina antes de cortar.`,
    onSheet: (left, low) => `En la lámina empieza a ${left} mm del borde izquierdo y a ${low} mm del borde inferior.`,
    size: (length, width) => `${length} de largo, ${width} de ancho`,
    facts: 'DATOS',
    steps: 'PASOS',
    check: 'COMPROBAR',
    cautions: 'PRECAUCIONES',
    kerf: (kerf, half) =>
      `ancho de corte ${kerf} mm ya incluido en los contornos (contornos ${half} mm mayores, agujeros otro tanto menores): apague la compensación de la máquina.`,
    noKerf: 'ancho de corte 0 mm: los contornos son los bordes verdaderos.',
    kerfInside: (kerf) => `ANCHO DE CORTE ${kerf} mm YA INCLUIDO: SIN COMPENSACIÓN EN LA MÁQUINA`,
    cutter: (id, title) => `cortadora ${id}: ${title}.`,
    profile: {
      knife: 'Cuchilla de arrastre u oscilante con lápiz: el lápiz dibuja todas las marcas, después corta la cuchilla',
      'laser-if-allowed':
        'Láser, solo para una lámina cuya ficha de seguridad lo permita: se graban todas las marcas, después se cortan los contornos',
      'pen-and-scissors': 'Un lápiz lo dibuja todo, los contornos al final; una persona corta con tijeras en la lámina caliente',
    },
    tools: (marks, cuts, info, partByPart) =>
      `orden de las herramientas: ${partByPart ? 'pieza por pieza, en cada una ' : ''}${marks === '' ? '' : `${marks}, después `}${cuts}, los agujeros antes que el contorno que los rodea${info === '' ? '' : `; ${info} es para las personas`}.`,
    leadIns: (mm) => `entradas: cuartos de arco de ${mm} mm en el sobrante.`,
    bridges: (count, mm) => `puentes: ${count} de ${mm} mm sujetan cada pieza; córtelos a mano.`,
    sharedEdges: (count) => `bordes comunes: ${count}, cada uno cortado una vez.`,
  },
};
