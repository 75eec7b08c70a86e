import type { Command } from 'commander';

/** `page`: the page that a therapist opens in a browser, as a file or on this computer's own address. */
export function addPageCommand(program: Command): void {
  program
    .command('page')
    .description('the page for the browser: serve it on this computer alone, or save it as one file that works without a network')
    .option('--save <file>', 'write the page to this file instead of serving it')
    .option('--force', 'replace the file when it exists')
    .option('--port <number>', 'port on 127.0.0.1; 0 takes a free one', '0')
    .action(async (flags: PageFlags) => {
      const { page } = await import('./page.ts');
      await page(flags);
    });
}

export interface PageFlags {
  readonly save?: string;
  readonly force?: boolean;
  readonly port: string;
}
