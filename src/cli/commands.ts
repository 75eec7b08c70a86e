import type { Command } from './define-command.ts';

/** Every command by its name, each loaded when it is needed. A new command joins here; its file says the rest. */
export const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  plan: async () => (await import('./commands/plan.ts')).plan,
  draw: async () => (await import('./commands/draw.ts')).draw,
  page: async () => (await import('./commands/page.ts')).page,
  'case new': async () => (await import('./commands/case-new.ts')).caseNew,
  'case add': async () => (await import('./commands/case-add.ts')).caseAdd,
  'case amend': async () => (await import('./commands/case-amend.ts')).caseAmend,
  'case show': async () => (await import('./commands/case-show.ts')).caseShow,
  'case chart': async () => (await import('./commands/case-chart.ts')).caseChart,
  'case report': async () => (await import('./commands/case-report.ts')).caseReport,
  'case next': async () => (await import('./commands/case-next.ts')).caseNext,
  'case close': async () => (await import('./commands/case-close.ts')).caseClose,
  'case fit': async () => (await import('./commands/case-fit.ts')).caseFit,
  'case table': async () => (await import('./commands/case-table.ts')).caseTable,
  'case audit': async () => (await import('./commands/case-audit.ts')).caseAudit,
  batch: async () => (await import('./commands/batch.ts')).batch,
  sizes: async () => (await import('./commands/sizes.ts')).sizes,
  sheets: async () => (await import('./commands/sheets.ts')).sheets,
  redraw: async () => (await import('./commands/redraw.ts')).redraw,
  'print-check': async () => (await import('./commands/print-check.ts')).printCheck,
  inspect: async () => (await import('./commands/inspect.ts')).inspect,
  'kerf-test': async () => (await import('./commands/kerf-test.ts')).kerfTestCommand,
  blocks: async () => (await import('./commands/blocks.ts')).blocks,
  plates: async () => (await import('./commands/plates.ts')).plates,
  schema: async () => (await import('./commands/schema.ts')).schema,
  man: async () => (await import('./commands/man.ts')).manOf(() => commandsFor([])),
  completion: async () => (await import('./commands/completion.ts')).completionOf(() => commandsFor([])),
};

/** What a first word stands for that has commands of its own. */
export const FAMILIES: Readonly<Record<string, string>> = {
  case: 'keep the visits of a case: measure, make, see, make again',
};

/** The command that these words begin with, alone, so that no other is loaded; else all of them, for help and for words that name none. */
export async function commandsFor(words: readonly string[]): Promise<readonly Command[]> {
  const [first = '', second = ''] = words;
  // The program answers this one itself.
  if (words.length === 1 && ['--version', '-V'].includes(first)) return [];
  const named = Object.entries(COMMANDS).filter(([name]) => name === first || name === `${first} ${second}`);
  return Promise.all((named.length > 0 ? named : Object.entries(COMMANDS)).map(([, load]) => load()));
}
