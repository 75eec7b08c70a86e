import type { Language, Translations } from './language.ts';

/**
 * The cautions that belong where the work happens. Facts from published burn and splint-care guidance; for licensed therapists, whose
 * judgement and local rules come first.
 */
export const cautionsEnglish = {
  heat: 'Water at 60 C burns deeply in seconds: blot, wait, test on your own skin first; take more care with reduced sensation, thin skin, fresh scar and children.',
  skin: 'First wear about 20 minutes, then look at the skin: redness still there after 15 to 20 minutes means adjust.',
  contraindications:
    "Not for a hard end-feel, an unstable fracture, or an unprotected tendon or ligament repair without the surgeon's protocol. Swelling changes the fit: measure again.",
  evidence: 'Evidence for exercise use is thin: this is a starting point, the clinician decides.',
  laser: 'Never laser a sheet that contains PVC or whose safety sheet does not allow it. Knife or scissors are the default.',
  model:
    'The pattern comes from measurements and a model: cut, drape, let cool, check full PIP motion in both directions, remake if it does not do its work.',
  licensed: 'For licensed therapists; local rules and the treating clinician come first.',
};

/** The check before making a strip. J Hand Ther, March 2023. */
export const pencilTestEnglish =
  'Pencil test: weave a pencil over and under the fingers as the strip would run, and see whether active PIP motion improves. If it does not, think again before making one (J Hand Ther, March 2023).';

export const cautionsGerman: Translations<typeof cautionsEnglish> = {
  heat: 'Wasser von 60 °C verbrennt in Sekunden tief: abtupfen, warten, zuerst auf der eigenen Haut prüfen; mehr Vorsicht bei vermindertem Gefühl, dünner Haut, frischer Narbe und bei Kindern.',
  skin: 'Beim ersten Mal etwa 20 Minuten tragen, dann die Haut ansehen: Rötung, die nach 15 bis 20 Minuten noch da ist, heißt anpassen.',
  contraindications:
    'Nicht bei hartem Endgefühl, instabilem Bruch oder ungeschützter Sehnen- oder Bandnaht ohne das Nachbehandlungsschema. Schwellung verändert den Sitz: neu messen.',
  evidence: 'Die Belege für den Einsatz als Übungsschiene sind dünn: Dies ist ein Ausgangspunkt, die Behandelnden entscheiden.',
  laser:
    'Nie Material lasern, das PVC enthält oder dessen Sicherheitsdatenblatt es nicht erlaubt. Messer oder Schere sind der übliche Weg.',
  model:
    'Das Schnittmuster kommt aus Messungen und einem Modell: schneiden, anformen, abkühlen lassen, volle PIP-Bewegung in beide Richtungen prüfen, neu machen, wenn es seine Arbeit nicht tut.',
  licensed: 'Für zugelassene Therapeutinnen und Therapeuten; örtliche Regeln und die Behandelnden gehen vor.',
};

export const pencilTestGerman =
  'Stiftprobe: einen Stift über und unter den Fingern durchflechten, wie der Streifen laufen würde, und sehen, ob die aktive PIP-Bewegung besser wird. Wenn nicht, vor dem Anfertigen noch einmal nachdenken (J Hand Ther, März 2023).';

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

export type CautionWords = Translations<typeof cautionsEnglish>;

const WORDS: Readonly<Record<Language, CautionWords>> = { en: cautionsEnglish, de: cautionsGerman, es: cautionsSpanish };

export function cautionWords(language: Language): CautionWords {
  return WORDS[language];
}

/** The check before making a strip, by language. */
export const PENCIL_TESTS: Readonly<Record<Language, string>> = { en: pencilTestEnglish, de: pencilTestGerman, es: pencilTestSpanish };
