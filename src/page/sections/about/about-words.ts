import { threeLanguages } from '../../texts/three-languages.ts';

export const aboutWords = threeLanguages(
  {
    heading: 'About this page',
    open: 'About this page, licences',
    own: (version: string) => `Knucklewright ${version}, free to use, copy and change under the MIT licence.`,
    clinician: 'It suggests; the clinician decides.',
    others: 'Work of others in this page',
  },
  {
    heading: 'Acerca de esta página',
    open: 'Acerca de esta página, licencias',
    own: (version) => `Knucklewright ${version}: se puede usar, copiar y modificar libremente con la licencia MIT.`,
    clinician: 'La página propone; el profesional decide.',
    others: 'Obra de otros en esta página',
  },
  {
    heading: 'Über diese Seite',
    open: 'Über diese Seite, Lizenzen',
    own: (version) => `Knucklewright ${version}, frei zu nutzen, zu kopieren und zu ändern unter der MIT-Lizenz.`,
    clinician: 'Die Seite schlägt vor; die Fachperson entscheidet.',
    others: 'Werke anderer in dieser Seite',
  },
);
