import './configure-zod.ts';
import { h, render } from 'preact';
import { readKept, stateOf } from './local-storage.ts';
import { emptyEntries, FRESH_VIEWING, type PageState } from './state.ts';
import { startPage } from './store.ts';
import { LANGUAGES, languageFor } from './texts/languages.ts';
import { App } from './view/app.tsx';

/** What was kept on this computer, or an empty page in the browser's language; inches and Letter where the browser is set to the United States. */
function firstState(): PageState {
  const kept = readKept();
  const language = languageFor(navigator.languages);
  const decimal = LANGUAGES[language].decimal === ',' ? ',' : '.';
  if (kept) return stateOf(kept);
  const isUnitedStates = navigator.language.toLowerCase() === 'en-us';
  const unit = isUnitedStates ? 'in' : 'mm';
  const empty = emptyEntries(decimal);
  return {
    entries: { ...empty, print: { ...empty.print, paper: isUnitedStates ? 'letter' : 'a4' } },
    settings: { language, unit, decimal },
    viewing: FRESH_VIEWING,
    file: null,
  };
}

const root = document.getElementById('page');
if (!root) throw new Error('the page has no place to be drawn in');
startPage(firstState(), (page) => render(h(App, { page }), root));
