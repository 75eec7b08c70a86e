import { handGerman } from '../hand-words.ts';
import type { Translations } from '../language.ts';
import type { storyEnglish } from './story-english.ts';

export const storyGerman: Translations<typeof storyEnglish> = {
  heading: 'Anfertigen, Schritt für Schritt',
  how: 'Vom Platz der Therapeutin oder des Therapeuten gesehen. Grau: fertig. Blau: jetzt. Orange: der behandelte Finger.',
  finger: handGerman.finger,
  short: handGerman.short,
  and: handGerman.and,
  back: 'Handrücken',
  palm: 'Hohlhand',
  thumbSide: 'Daumenseite',
  mp: { lowered: 'tiefer', raised: 'höher' },
  view: {
    fingertips: 'Von den Fingerspitzen, Handrücken oben',
    side: 'Von der Seite',
    above: 'Von oben, Handrücken oben',
    palmUp: 'Hand umgedreht, Hohlhand oben: auch die Reihenfolge der Finger dreht sich',
    large: 'Von den Fingerspitzen, groß',
    flat: 'Von oben, Handrücken oben; daneben der Streifen',
    flatPalmUp: 'Hand umgedreht, Hohlhand oben; daneben der Streifen',
  },
  step: {
    paper: {
      title: 'In Papier probieren',
      text: (held) =>
        `Papierstreifen ausschneiden, ebenso durchflechten, dabei den ${held} halten; an der Teilung ablesen, wo sich die Enden treffen.`,
    },
    position: {
      title: 'So die Hand halten',
      text: (held, degrees, how) =>
        `${held} am MP-Gelenk ${degrees} Grad ${how} als die Nachbarn; die Winkelkarte liegt auf den Fingerrücken. Handgelenk gerade. Eine zweite Person oder die andere Hand hält die Fingerspitzen.`,
    },
    warm: {
      title: 'Erwärmen, abtupfen, prüfen, beginnen',
      text: (held) =>
        `65 bis 71 °C, unter einer Minute. Abtupfen, warten, an der eigenen Haut prüfen. "AUSSEN" zeigt zu Ihnen; die Marke der Klebestelle liegt auf der Mitte vom ${held}, dort hält Ihre andere Hand sie fest.`,
    },
    first: {
      dorsal: {
        title: (finger) => `Über den ${finger} und herum`,
        text: (finger) =>
          `Über den Rücken vom ${finger}, um seine Außenseite, dann darunter. Die Kante bleibt 2 mm von der Interdigitalfalte.`,
      },
      palmar: {
        title: (finger) => `Unter den ${finger} und herum`,
        text: (finger) =>
          `Unter den ${finger}, um seine Außenseite, dann über den Rücken. Die Kante bleibt 2 mm von der Interdigitalfalte.`,
      },
    },
    through: {
      first: {
        over: {
          title: (held) => `Hinauf, über den ${held}`,
          text: (held) => `Durch die Interdigitalfalte hinauf und über den Rücken vom ${held}, flach und ohne Dehnen.`,
        },
        under: {
          title: (held) => `Hinunter, unter den ${held}`,
          text: (held) => `Durch die Interdigitalfalte hinunter und unter den ${held}, flach und ohne Dehnen.`,
        },
      },
      second: {
        over: {
          title: (held) => `Weiter über den ${held}, hinunter`,
          text: (held) => `Weiter über den Rücken vom ${held}, dann durch die nächste Interdigitalfalte hinunter.`,
        },
        under: {
          title: (held) => `Weiter unter den ${held}, hinauf`,
          text: (held) => `Weiter unter dem ${held} durch, dann durch die nächste Interdigitalfalte hinauf.`,
        },
      },
      over: {
        title: (held) => `Hinauf, über den ${held}, hinunter`,
        text: (held) => `Durch die Interdigitalfalte hinauf, über den Rücken vom ${held}, durch die nächste hinunter.`,
      },
      under: {
        title: (held) => `Hinunter, unter den ${held}, hinauf`,
        text: (held) => `Durch die Interdigitalfalte hinunter, unter dem ${held} durch, durch die nächste hinauf.`,
      },
    },
    beside: {
      title: (finger) => `Am ${finger} entlang`,
      dorsal: (finger) => `Weiter über den Rücken vom ${finger}, flach und ohne Dehnen.`,
      palmar: (finger) => `Weiter unter dem ${finger}, flach und ohne Dehnen.`,
    },
    second: {
      palmar: {
        title: (finger) => `Unter den ${finger}`,
        text: (finger) => `Unter den ${finger}, dann um seine Außenseite. Die ausgeschnittene Kante bleibt von der PIP-Beugefalte weg.`,
      },
      dorsal: {
        title: (finger) => `Über den ${finger}`,
        text: (finger) => `Über den Rücken vom ${finger}, dann um seine Außenseite. Die Kante bleibt vom PIP-Gelenk weg.`,
      },
    },
    back: {
      tacked: {
        title: 'Zurück; Lagen andrücken',
        text: (finger, held) =>
          `Am ${finger} entlang zurück zur Marke. Solange es trocken und weich ist, beide Lagen auf dem ${held} etwa 5 Sekunden zusammendrücken: Daumen oben, Finger dagegen.`,
      },
      spanning: {
        title: 'Zurück zur Klebestelle',
        text: (finger, held) => `Am ${finger} entlang zurück zur Marke. Die äußere Lage bleibt gespannt über dem ${held}.`,
      },
    },
    check: {
      title: 'Abkühlen, prüfen',
      text: 'Jedes PIP-Gelenk strecken, dann beugen. Die Nägel liegen nebeneinander, keiner kreuzt. Ein gedrückter Nagel ist in 2 Sekunden rosa. Gefühl wie vorher.',
    },
    close: {
      title: 'Abnehmen, schließen, kürzen',
      text: {
        lap: 'Finger für Finger abnehmen. Überlappung an den Marken kleben, Ende kürzen, alle Kanten runden. Die Schrift zeigt nach außen.',
        opening:
          'Finger für Finger abnehmen. Die Überlappung bleibt offen und bekommt ein Band. Ende kürzen, alle Kanten runden. Die Schrift zeigt nach außen.',
        pinch:
          'Finger für Finger abnehmen. Laschen an den Marken zusammenkneifen, Ende kürzen, alle Kanten runden. Die Schrift zeigt nach außen.',
      },
    },
  },
  plate: {
    place: {
      title: 'Papier auf der Hand probieren',
      view: 'Von der Seite der Handschiene',
      text: 'Papier ausschneiden und im Winkel auf die Hand legen. Handgelenkfalte, Daumenfalte und freie Finger bleiben frei. Das Papier ändern, nicht das Material.',
    },
    outline: {
      title: 'Umfahren, schneiden',
      view: 'Von oben: grau das Papier, blau das Material',
      text: 'Schrift nach oben. Das Papier umfahren, alle Marken übertragen, schneiden. Polster jetzt auf die knochigen Stellen der Hand kleben, nicht später.',
    },
    hold: {
      title: (degrees) => `MP-Gelenke bei ${degrees} Grad halten`,
      view: 'Von der Seite, die Lehre neben der Hand',
      text: 'Eine zweite Person hält die Fingerspitzen. Ring der Lehre auf dem MP-Gelenk, ihre Arme an Hand und Finger entlang. Handgelenk gerade.',
    },
    bend: {
      title: 'Erwärmen, abtupfen, über eine Kante biegen',
      view: 'Von oben: grau der Tisch',
      text: '65 bis 71 °C, wie das Material es verlangt. Abtupfen, warten, an der eigenen Haut prüfen. An der MP-Knicklinie über die Tischkante biegen.',
      flat: '65 bis 71 °C, wie das Material es verlangt. Abtupfen, warten, an der eigenen Haut prüfen. Bei 0 Grad ist kein Knick da: flach auf die Hand.',
    },
    fit: {
      title: 'Auflegen, anstreichen',
      view: 'Von der Seite der Handschiene',
      text: 'Zuerst der Handteil, dann Flügel und Seitenwände. Streichen, nicht drücken. Lehre daneben, bis es hart ist. Kanten an Handgelenk und Daumen aufbiegen.',
    },
    strap: {
      title: 'Bänder anlegen, prüfen',
      view: 'Von der anderen Seite',
      text: 'Die Bänder A und B halten, sie ziehen nicht. PIP-Gelenke ganz beweglich, Handgelenk und Daumen frei. Ein gedrückter Nagel ist in 2 Sekunden rosa. Gefühl wie vorher.',
    },
  },
  wrong: { crossing: 'Falsch: ein Nagel kreuzt', crease: 'Falsch: über der Falte', twisted: 'Falsch: verdreht' },
  scale: 'Teilung',
  thumb: 'Daumen drückt',
  helper: 'zweite Person',
};
