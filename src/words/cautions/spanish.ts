import type { Translations } from '../language.ts';
import type { cautionsEnglish } from './english.ts';

export const cautionsSpanish: Translations<typeof cautionsEnglish> = {
  heat: 'El agua a 60 °C quema en profundidad en segundos: secar, esperar, probar primero en la propia piel; más cuidado con sensibilidad reducida, piel fina, cicatriz reciente y niños.',
  skin: 'La primera vez, llevarla unos 20 minutos y mirar la piel: si el enrojecimiento sigue a los 15 o 20 minutos, ajustar.',
  contraindications:
    'No con sensación final dura, fractura inestable, ni reparación de tendón o ligamento sin proteger fuera del protocolo de cirugía. El edema cambia el ajuste: volver a medir.',
  evidence: 'La evidencia como ejercicio es escasa: esto es un punto de partida, decide el/la terapeuta.',
  laser: 'Nunca cortar con láser una lámina que contenga PVC o cuya ficha de seguridad no lo permita. Lo normal es cuchilla o tijera.',
  model:
    'El patrón viene de medidas y de un modelo: cortar, moldear, dejar enfriar, comprobar el movimiento completo de la IFP en los dos sentidos y rehacer si no cumple.',
  licensed: 'Para terapeutas con licencia; las normas locales y el/la terapeuta responsable van primero.',
};

export const pencilTestSpanish =
  'Prueba del lápiz: pasar un lápiz por encima y por debajo de los dedos como iría la tira, y ver si mejora el movimiento activo de la IFP. Si no, pensarlo otra vez antes de hacerla (J Hand Ther, marzo de 2023).';
