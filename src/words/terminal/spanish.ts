import type { Translations } from '../language.ts';
import type { terminalEnglish } from './english.ts';

export const terminalSpanish: Translations<typeof terminalEnglish> = {
  next: 'después',
  file: {
    words: 'las palabras que lo acompañan',
    drawing: (width, height) => `dibujo de ${width} x ${height} mm`,
    chart: (width, height) => `gráfica de ${width} x ${height} mm`,
    pages: (pages, paper) => `${pages === '1' ? '1 página' : `${pages} páginas`}, ${paper}`,
    portrait: 'vertical',
    landscape: 'apaisado',
    tiled: 'patrón en varias hojas',
    strip: (length, width) => `tira de ${length} x ${width} mm`,
    paperStrip: 'tira de papel',
    trueSize: 'a 1:1',
  },
  why: {
    itself: (finger, lacks, wanted, place) =>
      `${finger}: a la IFP le falta ${lacks}; su MCF se mantiene en ${wanted} relativa, así que el mismo ${finger} va ${place}`,
    byOthers: (finger, lacks, wanted, count, fingers, two, place) =>
      `${finger}: a la IFP le falta ${lacks}; su MCF se mantiene en ${wanted} relativa, así que en ${count} ${two ? 'los dos dedos centrales van' : `el ${fingers} va`} ${place} y el ${finger} queda al revés por comparación`,
    named: 'pedida con --block',
    read: (file) => `leída de ${file}`,
    redrawn: (file) => `dibujado de nuevo desde ${file}`,
  },
  label: {
    strip: 'tira',
    relief: 'rebaje',
    freePip: 'IFP libre',
    loop: 'lazo',
    estimated: 'ESTIMADO',
    angle: 'ángulo',
    palm: 'palma',
    wrist: 'muñeca',
    strap: (id) => `cincha ${id}`,
  },
  strip: (length, low, high, read, width, closure) =>
    `${length} mm de largo (banda del 95 % ${low} a ${high} mm${read ? ', de la lectura en papel' : ''}), ${width} mm de ancho, ${closure}`,
  relief: (depth, finger) => `borde distal rebajado ${depth} mm, palmar al ${finger}`,
  freePip: (list) => `${list} grados de flexión previstos`,
  loop: (digits, round, ring) => `${digits}: ${round} mm de perímetro interior, talla de anillo ${ring}`,
  plate: {
    angle: (degrees, low, high) =>
      `MCF ${degrees} grados (posible de ${low} a ${high}; un punto de partida, práctica habitual, sin fuente: decide el/la terapeuta)`,
    palm: (broad, round, thick) => `${broad} de ancho, ${round} de perímetro, ${thick} mm de grosor`,
    face: (width, length, form, bend, corner) =>
      `plana ${width} x ${length} mm, doblez: ${form}, de ${bend} mm, esquina más cerrada ${corner} mm`,
    fold: (least, worst, finger, miss, swing, stretch, shear) =>
      `doblada por sus marcas sobre la mano modelo: de ${least} a ${worst} mm de la piel, lo más en el ${finger}; MCF a ${miss} mm del doblez como mucho, dedos apartados ${swing} grados, lámina estirada ${stretch} %, cizallada ${shear} grados`,
    bend: (asked, costs) => `doblez, ${asked}: ${costs}`,
    form: { auto: 'lo decide el programa', straight: 'recto', split: 'partido', kinked: 'quebrado' },
    cost: {
      stretch: (percent) => `estira ${percent} %`,
      shear: (degrees) => `cizalla ${degrees} grados`,
      miss: (mm) => `falla ${mm} mm`,
      swing: (degrees) => `aparta ${degrees} grados`,
      none: 'no cuesta nada',
      notToBeHad: 'no es posible',
    },
    free: (pip, thumb) =>
      `libre: ${pip} mm hasta las IFP, ${thumb === '' ? 'sin ala en el pulgar' : `${thumb} mm hasta la comisura del pulgar`}`,
    shortened: (digit, mm) => `${digit}: ${mm} mm más corta de lo que permite su IFP, para que el paso al vecino sea redondo`,
    wrist: (mm) => `${mm} mm libres hasta el pliegue de la muñeca`,
    strap: (width, length, where) => `${width} de ancho, ${length} de largo, ${where}`,
  },
  shelf: {
    none: (length, width) => `ninguna tira de las existencias sirve para ${length} x ${width} mm: córtela nueva`,
    take: (id, length, width, cutOff) => `de las existencias: ${id}, ${length} x ${width} mm: corte ${cutOff} mm en el extremo final`,
  },
  sheets: {
    pieces: (pieces, verdict) => `${pieces} ${pieces === '1' ? 'pieza' : 'piezas'}: ${verdict}`,
    enough: 'ninguna lámina nueva: bastan los restos',
    count: (sheets) => (sheets === '1' ? '1 lámina nueva' : `${sheets} láminas nuevas`),
    proved: (count, gap, margin) => `${count}, y menos es imposible con ${gap} mm de separación y ${margin} mm de margen`,
    bound: (count, atLeast, gap, margin) => `${count}, al menos ${atLeast} con ${gap} mm de separación y ${margin} mm de margen`,
    inAll: (cuts) => `${cuts === '1' ? '1 corte recto' : `${cuts} cortes rectos`} con tijeras en total`,
    narrower: (gap, sheets, shears) =>
      `con ${gap} mm de separación ${sheets === '1' ? 'bastaría 1 lámina nueva' : `bastarían ${sheets} láminas nuevas`}${shears ? ' (así corta --shears)' : ''}`,
    sheet: (number, remnant, parts, used, cuts) =>
      `lámina ${number}   ${remnant === '' ? 'nueva' : `resto ${remnant}`}, ${parts === '1' ? '1 pieza' : `${parts} piezas`}, ${used} % usado, ${cuts}`,
    cuts: (cuts) => `${cuts === '1' ? '1 corte' : `${cuts} cortes`} con tijeras`,
    nested: (cuts) =>
      `férulas encajadas: corte por los contornos, ${cuts === '1' ? '1 corte' : `${cuts} cortes`} con tijeras para los restos`,
    noRemnants: 'ningún resto que merezca guardarse',
    remnants: (list, more) => `restos   ${list}${more === '' ? '' : `, y ${more} más`}`,
  },
  sizes: {
    from: (from, invented) => `De ${from}${invented ? ' (inventado)' : ''}`,
    column: { sizes: 'tamaños', served: 'atendido %', cutOff: 'recorte mm', cutOffShare: 'recorte %', lengths: 'largos mm' },
    chosen: (count) => `${count === '1' ? '1 tamaño' : `${count} tamaños`}, y cuántas tiras cortar:`,
    serves: (served, all, which) => `(sirve a ${served} de ${all}, ${which})`,
    singly: (count) => `${count} más largas se cortan sueltas`,
    pinned: (width) => `las tiras miden ${width} mm de ancho si nadie dice otra cosa; draw y batch las hacen igual con --width ${width}`,
    useTrim: (mm) => `un tamaño puede ser ${mm} mm más corto que la tira dibujada: a tanto de su sobrante se renuncia`,
    best: (byLength, bySheets, sheets) =>
      `los mejores en longitud necesitan ${byLength} láminas, los mejores en láminas ${bySheets}; se toman los mejores en ${sheets ? 'láminas' : 'longitud'}`,
    leftOut: (out, all, percent, codes) => `${out} de ${all} manos (${percent} %) no tienen tira y quedan fuera (${codes})`,
    others: 'los tamaños valen solo para las demás',
    bias: (groups) =>
      `son manos en las que una tira así no sujetaría nada (${groups}): los tamaños se inclinan hacia las demás; con un --differential menor quedan fuera menos`,
    group: (sex, out, hands) => `${sex} ${out} de ${hands}`,
  },
  batch: {
    made: (hands, before, wrong) =>
      `${hands === '1' ? '1 mano' : `${hands} manos`} en la lista de corte${before === '' ? '' : `, ${before} de ellas de una ejecución anterior`}; ${wrong === '1' ? '1 fila' : `${wrong} filas`} con errores`,
    files: (files, folder) => `${files === '1' ? '1 archivo de patrón' : `${files} archivos de patrones`} en ${folder}`,
  },
};
