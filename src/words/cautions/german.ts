import type { Translations } from '../language.ts';
import type { cautionsEnglish } from './english.ts';

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
