import type { Texts } from './english.ts';

/** Problems and warnings by their code, in German. */
export const germanMessages: Texts['message'] = {
  problem: {
    FIELD_MISSING: ({ name }) => `${name} fehlt. Bitte eintragen.`,
    FIELD_UNREADABLE: ({ name, range }) => `${name} ist nicht als Zahl zu lesen. Schreiben Sie ${range}, etwa 17,5.`,
    FIELD_OUT_OF_RANGE: ({ name, value, range }) =>
      `${name} ist ${value}; erlaubt ist ${range}. Noch einmal messen und auf die Einheit sehen.`,
    FIELD_VALUE: ({ name }) => `${name} enthält etwas, das nicht erlaubt ist. Eine Zeile einfachen Text schreiben.`,
    CASE_CODE: () =>
      'Das Fallkürzel geht nicht. 1 bis 24 Großbuchstaben, Ziffern und Bindestriche, mindestens eine Ziffer, wie DEMO-01; kein Name und kein Geburtsdatum.',
    TOO_FEW_DIGITS: () => 'Mindestens drei benachbarte Finger sind nötig. Von jedem Breite und Umfang messen.',
    TARGET_NOT_MEASURED: ({ digit }) =>
      `Der ${digit} soll behandelt werden, wurde aber nicht gemessen. Messen Sie ihn, oder wählen Sie einen anderen.`,
    NOT_ESTIMABLE: ({ name }) => `${name} wurde nicht gemessen und lässt sich für diesen Finger nicht schätzen. Messen Sie nach.`,
    NO_CHILD_NORMS: ({ name }) =>
      `${name} wurde nicht gemessen. Für Kinder gibt es keine Normwerte, darum wird nichts geschätzt: Messen Sie es und was sonst noch fehlt.`,
    SECTION_IMPOSSIBLE: ({ digit }) =>
      `Breite und Umfang widersprechen sich (${digit}): Kein Finger hat diese Form. Beides noch einmal messen.`,
    TAPER_IMPOSSIBLE: ({ digit }) =>
      `Umfang und Wurzelumfang ergeben keinen Finger (${digit}). Beides noch einmal messen oder den Wurzelumfang weglassen.`,
    LENGTHS_CONTRADICT: ({ digit }) =>
      `Die palmare Länge kann nicht an die dorsale Länge heranreichen (${digit}). Beides noch einmal messen.`,
    PALM_IMPOSSIBLE: () => 'Breite und Umfang der Hand widersprechen sich. Beides noch einmal messen.',
    SETBACK_CONTRADICTS: ({ name, limit }) =>
      `${name} ist zu viel für eine Hand dieser Größe: höchstens ${limit}. Die Interdigitalfalten noch einmal messen, das Lineal am Mittelfinger, und die Handbreite.`,
    OPTION: ({ name, range }) => `${name} geht so nicht. Schreiben Sie ${range}.`,
    DIGIT_NOT_MEASURED: ({ digit }) =>
      `Diese Variante umfasst den ${digit}, der nicht gemessen wurde. Messen Sie ihn, oder wählen Sie eine Variante ohne ihn.`,
    HOLDS_NOTHING: ({ limit }) =>
      `Bei dieser MP-Differenz läuft der Streifen gerade am gehaltenen Finger vorbei und hielte nichts. ${limit === '' ? 'Nehmen Sie eine kleinere.' : `Bei ${limit} hält er.`}`,
    STRIP_TOO_BENT: ({ digit }) =>
      `Der Finger verjüngt sich so stark (${digit}), dass ihm kein Streifen dieser Breite folgen kann. Umfang und Wurzelumfang noch einmal messen, den Wurzelumfang weglassen oder einen schmaleren Streifen nehmen.`,
    STRIP_TOO_NARROW: ({ name, limit }) =>
      `An diesen Falten würde der Streifen zu schmal, um ihn zu machen. Den Versatz der Falten noch einmal messen oder eine andere Variante wählen.${limit === '' ? '' : ` Es geht bei: ${name} ${limit}.`}`,
    PAPER_NOT_LAID: () =>
      'Bei dieser MP-Differenz kann kein Papierstreifen dieser Hand abgelesen worden sein: er würde nichts halten. Die Ablesung leer lassen, oder eine kleinere MP-Differenz wählen und neu probieren.',
    PAPER_READING: ({ limit }) =>
      `Diese Ablesung liegt außerhalb dessen, was Haut und Luft ausmachen können. Flechten Sie den Papierstreifen noch einmal, und messen Sie die Finger noch einmal.${limit === '' ? '' : ` Die nächste mögliche ist ${limit}.`}`,
    NO_PATH: ({ limit }) =>
      `Der Streifen lässt sich nicht um diese Finger legen. ${limit === '' ? 'Breite und Umfang prüfen.' : `Bei ${limit} geht es.`}`,
    BLOCK_COUNT: () => 'Ein Streifen umfasst drei oder vier Finger. Nehmen Sie einen Nachbarn dazu.',
    BLOCK_NEIGHBOURS: () => 'Die Finger eines Streifens müssen Nachbarn sein. Geben Sie dem dazwischen einen Platz.',
    BLOCK_BORDER: () => 'Beide Randfinger müssen umschlossen sein, sonst rutscht das Band ab. Umschließen, oder einen Nachbarn dazunehmen.',
    BLOCK_HOLDS_NONE: () => 'Mindestens ein Finger muss angehoben oder abgesenkt sein, sonst ändert sich nichts.',
    BLOCK_MIXED: () =>
      'Angehoben und abgesenkt lassen sich nicht mischen: Beide Lagen würden im selben Zwischenraum kreuzen. Alle in eine Richtung halten.',
    NO_TARGET: () => 'Noch ist kein behandelter Finger gewählt, darum kein Vorschlag. Wählen Sie ihn, oder wählen Sie eine Variante.',
    NO_DEFICIT: ({ digit }) => `Dem ${digit} fehlt weder PIP-Streckung noch PIP-Beugung, darum kein Vorschlag. Wählen Sie eine Variante.`,
    BOTH_DEFICITS: ({ digit }) =>
      `Dem ${digit} fehlen PIP-Streckung und PIP-Beugung. Ein Streifen lenkt nur eine Bewegung um; hier wird das MP-Gelenk von einer Handschiene gehalten.`,
    NO_BLOCK: ({ digit }) => `Keine der Varianten für den ${digit} lässt sich für diese Hand anfertigen. „Alle Möglichkeiten“ sagt, warum.`,
    HARD_END_FEEL: () =>
      'Das PIP-Gelenk hat ein hartes Endgefühl; umgelenkte aktive Bewegung löst ein solches Gelenk nicht: kein Vorschlag.',
    UNPROTECTED_REPAIR: () =>
      'Eine Naht oder ein Bruch ist nicht geschützt; Bewegung außerhalb des Nachbehandlungsschemas kann sie lösen: kein Vorschlag.',
    MOTION_UNREADABLE: ({ name }) => `${name}: Schreiben Sie Grad, wie 25; für 10 Grad Überstreckung „über 10“.`,
    MOTION_SIGN: ({ name, value }) =>
      `${name} ${value}: Mit Vorzeichen ist beides üblich. Fehlen 10 Grad zur Streckung, schreiben Sie 10; bei 10 Grad Überstreckung „über 10“.`,
    MOTION_OUT_OF_RANGE: ({ name, value, range }) => `${name} ist ${value}; erlaubt ist ${range}.`,
    MOTION_IMPOSSIBLE: ({ name, value }) =>
      `${name} ${value} ist weniger als das, was zur Streckung fehlt. Beides zählt von der Streckung aus.`,
    PLATE_ANGLE_FORCES: () =>
      'Bei diesem Winkel würde die Handschiene das MP-Gelenk über seine gemessene passive Beweglichkeit hinaus zwingen. Schreiben Sie einen Winkel innerhalb davon, oder messen Sie noch einmal.',
    PLATE_ANGLE: () => 'Der MP-Winkel der Handschiene fehlt oder geht nicht. Schreiben Sie 0 bis 90 Grad Beugung.',
    JSON_SYNTAX: () => 'Die Datei ist kaputt: Sie ist kein JSON. Öffnen Sie das Original.',
    JSON_NAME_TWICE: ({ name }) =>
      `In der Datei steht „${name}“ zweimal an einer Stelle, nur eines würde zählen. Entfernen Sie das falsche.`,
    FILE_NEWER: () => 'Diese Datei stammt von einem neueren Knucklewright. Öffnen Sie sie mit diesem; sie wurde nicht verändert.',
    CASE_FULL: () => 'Der Fall hat mehr Termine oder Korrekturen als die 400, die eine Datei fasst. Beginnen Sie einen neuen Fall.',
    FILE_TOO_LARGE: () => 'Die Datei ist größer als das 1 MB, das gelesen wird. Ist es die richtige?',
    DATE: () => 'Das Datum ist nicht zu lesen. Schreiben Sie es als 2026-03-31, oder lassen Sie es leer.',
  },
  warning: {
    VALUE_UNUSUAL: ({ name, value, range }) =>
      `${name} ${value} ist ungewöhnlich; glaubhaft ist ${range}. Noch einmal messen; weiter, wenn es so ist.`,
    RING_CHARTS_DIFFER: ({ name, value }) =>
      `${name}: Die Ringgröße ist als ${value} gelesen; Tabellen weichen ab. Mit Band messen, oder eine Größe nach ISO 8653 angeben, wie EU 54.`,
    DEPTH_RATIO_UNUSUAL: ({ digit }) => `Breite und Umfang passen kaum zusammen (${digit}). Beides auf gleicher Höhe noch einmal messen.`,
    LENGTH_RATIO_UNUSUAL: ({ digit }) => `Palmare Länge und dorsale Länge passen kaum zusammen (${digit}). Beides noch einmal messen.`,
    TAPER_UNUSUAL: ({ digit }) =>
      `Der Finger verjüngt sich stärker als üblich (${digit}). Beide Umfänge noch einmal messen: an der Wurzelfalte und auf halbem Weg zur PIP-Falte.`,
    SETBACK_UNUSUAL: ({ name, value, limit }) =>
      `${name}: ${value} hinter der vordersten Interdigitalfalte ist viel für eine Hand dieser Größe; bis ${limit} ist üblich. Noch einmal messen, das Lineal am Mittelfinger.`,
    STRIP_UNDER_LEAST_WIDTH: () =>
      'Der Streifen ist an einer Stelle schmaler als seine Mindestbreite. Die Interdigitalfalten noch einmal messen; so nicht anfertigen.',
    STRAIGHT_NOT_TAPERED: () =>
      'Die Finger verjüngen sich, dem folgt ein gerader Streifen nicht: Sein distaler Rand steht ab. Den gestaffelten Umriss nehmen.',
    PIP_THINNER: ({ digit }) =>
      `Das PIP-Gelenk ist dünner als das Grundglied (${digit}). Beides noch einmal messen; Schwellung kann es so machen.`,
    CIRCUMFERENCE_ORDER: ({ digit }) =>
      `Der ${digit} ist dicker als neben den anderen üblich. Prüfen, ob zwei vertauscht sind; Schwellung oder eine alte Verletzung kann es so machen.`,
    WIDTH_ORDER: ({ digit }) =>
      `Der ${digit} ist breiter als neben den anderen üblich. Prüfen, ob zwei vertauscht sind; Schwellung oder eine alte Verletzung kann es so machen.`,
    PASSIVE_EXCEEDS_ACTIVE: ({ name }) => `${name} ist größer als das aktive. Prüfen, ob beide vertauscht sind.`,
    NO_MOTION_LEFT: () =>
      'Beide Defizite zusammen lassen keine PIP-Bewegung übrig. Prüfen, ob jedes ein Defizit ist und nicht der erreichte Winkel.',
    PALM_RATIO_UNUSUAL: () => 'Breite und Umfang der Hand passen kaum zusammen. Beides noch einmal messen, ohne Daumen.',
    ESTIMATED: ({ name, value }) => `${name} wurde nicht gemessen; geschätzt ${value}. Messen Sie nach.`,
    DIFFERENTIAL_UNUSUAL: ({ value }) =>
      `Die MP-Differenz von ${value} liegt außerhalb der 11 bis 30 Grad, die befragte Therapeuten verwenden. Nehmen Sie diese, außer Sie haben einen Grund.`,
    FOLD_PRESSES: () =>
      'Gebogen und auf die modellierte Hand gelegt drückt die Handschiene in einen Finger. Polstern Sie dort vor dem Anformen, oder lassen Sie mehr Abstand zur Haut.',
    FOLD_STRETCH: () =>
      'An der Biegung müsste sich das Material mehr dehnen, als Ausstreichen hergibt. Nehmen Sie die schonendste Biegung, eine gerade Linie oder eine mit Schlitz.',
    PIP_CLEARANCE: ({ value, limit }) =>
      `Gebogen endet die Handschiene ${value} vor einem PIP-Gelenk, unter ${limit}. Kürzen Sie dort den distalen Rand.`,
    THUMB_CLEARANCE: ({ value, limit }) => `Der radiale Flügel endet ${value} vor der Daumenfalte, unter ${limit}. Kürzen Sie ihn dort.`,
    HELD_SHORT: ({ digit, value, limit }) =>
      `Die Handschiene bedeckt hinter der Biegung nur ${value} (${digit}), unter ${limit}: Sie hält kaum. Nehmen Sie einen kleineren MP-Winkel oder eine dorsale Handschiene, wenn dieses MP-Gelenk gehalten werden muss.`,
    PIP_CLEARANCE_LESS: ({ value, limit }) =>
      `Die palmare Handschiene endet ${value} vor den PIP-Falten, nicht ${limit}: Sonst hielte sie zu wenig von den Fingern. Prüfen Sie, dass jedes PIP-Gelenk frei über den Rand beugt, oder nehmen Sie einen kleineren MP-Winkel oder eine dorsale Handschiene.`,
    BEND_SHARPER: ({ value, limit }) =>
      `Die palmare Handschiene wird mit einem Innenradius von ${value} gebogen, nicht ${limit}: Sonst hielte sie zu wenig von den Fingern. Erwärmen Sie die Biegung gut, oder nehmen Sie einen kleineren MP-Winkel, dünneres Material oder eine dorsale Handschiene.`,
    DIGIT_LEFT_OUT: ({ digit }) =>
      `Nicht gehalten: ${digit}. Bei diesem MP-Winkel würde die Handschiene zu wenig davon bedecken. Nehmen Sie einen kleineren MP-Winkel oder eine dorsale Handschiene, wenn das MP-Gelenk gehalten werden muss.`,
    CORNER_RADIUS: ({ value, limit }) =>
      `Die engste Ecke hat einen Radius von ${value}, unter ${limit}: Für mehr ist kein Platz. Bördeln Sie sie aus und fühlen Sie, dass sie glatt ist.`,
    PIP_FLEXION_NOT_FREE: ({ digit, value, limit }) =>
      `Die PIP-Beugung wird bei etwa ${value} angehalten (${digit}), unter ${limit}. Eine kleinere Mindestbreite oder weniger Abstand zur Interdigitalfalte hilft, oder eine Variante ohne Lage auf seiner palmaren Seite.`,
    PLATE_STOPS_PIP: ({ digit, value, limit }) =>
      `Die Handschiene hält die PIP-Beugung bei etwa ${value} an (${digit}), unter ${limit}. Eine dorsale lässt sie frei; die Faust prüfen, bevor sie hart wird.`,
    STRAIGHT_PULLED: () =>
      'Ein gerader Streifen muss entlang der Hand gezogen werden, um den Interdigitalfalten zu folgen; das dehnt und staucht ihn. Nehmen Sie den gestaffelten Umriss.',
    TRIM_TOO_SHORT: ({ limit }) =>
      `Die Länge ist auf ± ${limit} bekannt (95 %), mehr als die Zugabe deckt. Mindestens so viel Zugabe nehmen.`,
    BORDER_TARGET_IN_THREE: ({ digit }) =>
      `Der ${digit} ist ein Randfinger: Unter drei Fingern ist seine Drehung nicht geführt, vor allem bei hypermobilen Gelenken. Besser vier Finger.`,
    DEFICIT_WITHIN_ERROR: ({ name, value }) =>
      `${name}: ${value} ist weniger, als eine Messung von der nächsten abweicht. Noch einmal messen; 0 eintragen, wenn die Bewegung voll ist.`,
    NO_PASSIVE_GAIN: ({ name }) =>
      `${name} ist so groß wie das aktive: Das Gelenk ist steif, und umgelenkte aktive Bewegung bringt vielleicht wenig. Endgefühl prüfen; die Steife zuerst oder daneben behandeln.`,
    LOOP_OVER_PIP: () =>
      'Eine fest geschlossene Schlaufe ginge nicht über das PIP-Gelenk. Die Überlappung so machen, dass sie sich öffnen lässt: nicht verkleben, mit einem Band schließen.',
  },
  caution: {
    UNPROTECTED_REPAIR: () =>
      'Ungeschützte Naht oder Bruch: nur nach dem Nachbehandlungsschema der Chirurgie. Fragen, bevor etwas bewegt wird.',
    HARD_END_FEEL: () =>
      'Hartes Endgefühl: Das Gelenk selbst hält die Bewegung an, und umgelenkte aktive Bewegung löst ein solches Gelenk nicht.',
    SENSATION: () =>
      'Vermindertes Gefühl: Wärme und Druck werden nicht gespürt. Kunststoff länger abkühlen lassen, auf der eigenen Haut prüfen, die Haut früh und oft ansehen.',
    SWELLING: () =>
      'Wechselnde Schwellung: messen, wenn sie wie üblich ist, noch einmal vor dem Anfertigen und bei jedem Termin; locker anpassen.',
    HYPERMOBILE: () =>
      'Hypermobile Gelenke: auf Drehung achten, und dass das MP-Gelenk eines angehobenen Fingers nicht über die Gerade geht.',
  },
};
