import { type Command, Option } from 'commander';

/** `plan`: from a hand file with deficits to the ranked blocks, or the plate's angle. */
export function addPlanCommand(program: Command): void {
  program
    .command('plan')
    .description('suggest which blocks to try for the target digit, best first, and why; or the angle of a plate')
    .argument('<hand>', 'hand file (JSON) with a target and its PIP deficits, see: knucklewright schema hand')
    .option('--differential <degrees>', 'MP angle between held and enclosed digits (default: 20)')
    .option('--options <file>', 'options file (JSON), as for draw; flags win over it')
    .addOption(confirmsFlag())
    .option('--json', 'print the plan as JSON')
    .action(async (handFile: string, flags: PlanFlags) => {
      const { plan } = await import('./plan.ts');
      await plan(handFile, flags);
    });
}

/** The flags of `plan` as commander gives them. */
export interface PlanFlags {
  readonly differential?: string;
  readonly options?: string;
  readonly clinicianConfirms?: boolean;
  readonly json?: boolean;
}

/** The flag of every command that suggests. */
export function confirmsFlag(): Option {
  return new Option(
    '--clinician-confirms',
    'suggest in spite of a hard end-feel or an unprotected repair: you have examined the hand and take it on',
  );
}
