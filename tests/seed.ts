import * as fc from 'fast-check';

/**
 * One seed for every property, so that a change is judged by what it changes. FC_SEED sets another; `npm run nightly` draws one each time,
 * and a failure prints the seed that it needs.
 */
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
