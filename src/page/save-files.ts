import type { CaseFile } from '../record/case-schema.ts';
import { decodeText } from '../units/file-format.ts';
import { LARGEST_JSON_BYTES } from '../units/json-text.ts';
import { visible } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { entriesOf, handFileText } from './hand-file.ts';
import { loadWriters } from './load-writers.ts';
import type { FileKind } from './make-file.ts';
import { readOpened } from './open-file.ts';
import { focusNext, goToField } from './parts/focus.ts';
import { freshEntries, rewritten } from './rewrite-entries.ts';
import type { Store } from './store.ts';
import { fieldName, sayProblem } from './translate-messages.ts';

/** Whether the present pattern may be printed; else what is in the way is shown, said, and gone to. */
function readyToPrint(store: Store): boolean {
  const now = store.settle();
  store.checked.value = true;
  store.mode.value = 'design';
  const words = store.texts.peek();
  const [missing] = now.missing;
  if (now.problems.length > 0 || store.entries.peek().stop === 'some') {
    store.panel.value = 'look';
    store.said.value = words.make.kept;
    return false;
  }
  if (missing !== undefined) {
    const name = fieldName(missing, words);
    const rest = now.missing.length - 1;
    store.said.value = rest > 0 ? words.make.missingMore(name, rest) : words.make.missing(name);
    goToField(store, missing);
    return false;
  }
  if (now.drawn === null || now.average) {
    store.panel.value = 'look';
    store.said.value = words.make.nothing;
    return false;
  }
  return true;
}

/** Makes and proves the pattern anew, writes it and hands it to the download. */
export async function savePattern(store: Store, kind: FileKind): Promise<void> {
  if (!readyToPrint(store)) return;
  const { drawn } = store.derived.peek();
  if (!drawn) return;
  const entries = store.entries.peek();
  const [{ fileOf }, writers] = await Promise.all([import('./make-file.ts'), loadWriters()]);
  const file = fileOf(
    kind,
    drawn,
    { print: entries.print, isStopAsked: entries.stop !== '', unit: store.settings.peek().unit, language: store.settings.peek().language },
    writers,
  );
  if (!file.ok) {
    refuse(store, file.problems);
    return;
  }
  const { name, content, type, pages } = file.value;
  saveAs(name, content, type);
  const words = store.texts.peek();
  const named = pages === null ? name : `${name} (${words.make.pages(pages)})`;
  const said = kind === 'pdf' ? words.make.saved(named) : kind === 'trial' ? words.make.trialSaved(named) : words.files.saved(named);
  confirmSaved(store, named, said);
}

/** The head's Save: the case if one is open, else the hand file. The case code is asked for at the first save. */
export async function saveWork(store: Store): Promise<void> {
  const file = store.file.peek();
  if (file !== null) {
    await saveCase(store, file);
    return;
  }
  if (store.entries.peek().code.trim() === '') {
    askForCode(store);
    return;
  }
  const { hand } = store.settle();
  if (!hand.ok) {
    store.checked.value = true;
    const [missing] = store.derived.peek().missing;
    if (missing !== undefined && store.derived.peek().problems.length === 0) goToField(store, missing);
    else store.panel.value = 'look';
    store.said.value =
      missing === undefined ? store.texts.peek().make.kept : store.texts.peek().make.missing(fieldName(missing, store.texts.peek()));
    return;
  }
  const name = `${hand.value.code}_hand.json`;
  saveAs(name, handFileText(store.entries.peek(), store.settings.peek().unit), 'application/json');
  store.changed.value = false;
  confirmSaved(store, name, store.texts.peek().files.saved(name));
}

export function askForCode(store: Store): void {
  store.mode.value = 'design';
  goToField(store, 'code');
  store.said.value = store.texts.peek().files.askCode;
}

export async function saveCase(store: Store, file: CaseFile): Promise<void> {
  const { caseText } = await import('../record/write-case.ts');
  const text = caseText(file);
  if (!text.ok) {
    refuse(store, text.problems);
    return;
  }
  const name = `${file.code}_case.json`;
  saveAs(name, text.value, 'application/json');
  store.changed.value = false;
  confirmSaved(store, name, store.texts.peek().files.saved(name));
}

/** A save is confirmed beside its button each time, and said. */
function confirmSaved(store: Store, name: string, said: string): void {
  const time = new Date();
  const clock = `${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`;
  store.fileProblems.value = [];
  store.saved.value = store.texts.peek().make.savedAt(`${clock} ${name}`);
  store.said.value = said;
}

/** Opens a hand file or a case; a broken or large one changes nothing and is explained. */
export async function openFile(store: Store, file: File): Promise<void> {
  const texts = store.texts.peek();
  const name = visible(file.name);
  const fail = (problems: readonly Problem[]) => refuse(store, problems, `${texts.files.notOpened(name)}: `);
  if (file.size > LARGEST_JSON_BYTES) {
    fail([{ code: 'FILE_TOO_LARGE', where: '', message: '', kind: 'input' }]);
    return;
  }
  const read = await readOpened(decodeText(new Uint8Array(await file.arrayBuffer()), { keepMark: true }));
  if (!read.ok) {
    fail(read.problems);
    return;
  }
  const { record, hand } = read.value;
  const { decimal } = store.settings.peek();
  const settings = hand === null ? store.settings.peek() : { ...store.settings.peek(), unit: hand.units };
  // Options, paper and all else are those of a fresh page: nothing of the person before stays.
  const fresh = freshEntries(settings);
  const print = { ...fresh.print, paper: store.entries.peek().print.paper };
  const opened =
    hand === null
      ? { ...fresh, code: record?.code ?? '', side: record?.side ?? '', target: record?.digit ?? '' }
      : rewritten(entriesOf(hand, decimal), settings, settings);
  store.set(settings, (entries) => entries);
  store.replace({ ...opened, options: fresh.options, print } as typeof fresh, record);
  store.mode.value = record !== null && record.visits.length > 0 ? 'visits' : 'design';
  store.said.value = texts.files.opened(name);
}

/** Says at the top of the page why something was not done; nothing else changes. */
export function refuse(store: Store, problems: readonly Problem[], prefix = ''): void {
  store.fileProblems.value = problems.map((problem) => `${prefix}${sayProblem(problem, store.speaker.peek()).text}`);
  focusNext('file-problems');
}

/** Hands a file to the browser's own download, as the person asked for by a button; nothing is sent anywhere. */
function saveAs(name: string, content: string | Uint8Array, type: string): void {
  const bytes = typeof content === 'string' ? content : new Uint8Array(content);
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has taken its own hold of the blob by the next turn of a slow machine.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
