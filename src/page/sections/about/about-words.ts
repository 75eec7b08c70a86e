import { threeLanguages } from '../../texts/three-languages.ts';

export const aboutWords = threeLanguages(
  {
    heading: 'About this page',
    open: 'About this page, licences',
    own: 'Knucklewright is free to use, copy and change under the MIT licence.',
    others: 'Work of others in this page',
  },
  {
    heading: 'Acerca de esta página',
    open: 'Acerca de esta página, licencias',
    own: 'Knucklewright se puede usar, copiar y modificar libremente con la licencia MIT.',
    others: 'Obra de otros en esta página',
  },
  {
    heading: 'Über diese Seite',
    open: 'Über diese Seite, Lizenzen',
    own: 'Knucklewright ist frei zu nutzen, zu kopieren und zu ändern unter der MIT-Lizenz.',
    others: 'Werke anderer in dieser Seite',
  },
);
