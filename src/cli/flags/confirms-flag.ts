import { flag } from './flag.ts';

/** The flag of every command that suggests. */
export const confirmsFlag = flag(
  '--clinician-confirms',
  'suggest in spite of a hard end-feel or an unprotected repair: you have examined the hand and take it on',
);
