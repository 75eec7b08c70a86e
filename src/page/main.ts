import './before-anything.ts';
import { h, render } from 'preact';
import { readKept } from './keep.ts';
import { emptyEntries, FRESH_VIEWING, type PageState } from './state.ts';
import { startPage } from './store.ts';
import { LANGUAGES, languageFor } from './texts/languages.ts';
import { App } from './view/app.tsx';

/** What was kept on this computer, or an empty page in the browser's language; inches where the browser is set to the United States. */
function firstState(): PageState {
  const kept = readKept();
  const language = languageFor(navigator.languages);
  const decimal = LANGUAGES[language].decimal === ',' ? ',' : '.';
  if (kept) {
    return {
      entries: { ...emptyEntries(kept.settings.decimal), ...kept.entries },
      settings: kept.settings,
      viewing: { ...FRESH_VIEWING, screen: kept.screen, keep: true },
      file: null,
    };
  }
  const unit = navigator.language.toLowerCase() === 'en-us' ? 'in' : 'mm';
  return { entries: emptyEntries(decimal), settings: { language, unit, decimal }, viewing: FRESH_VIEWING, file: null };
}

const root = document.getElementById('page');
if (!root) throw new Error('the page has no place to be drawn in');
startPage(firstState(), (page) => render(h(App, { page }), root));
