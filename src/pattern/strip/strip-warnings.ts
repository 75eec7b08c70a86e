import { placedDigits } from '../../block/block.ts';
import { SURVEYED_DIFFERENTIAL } from '../../block/differential.ts';
import { LEAST_FREE_PIP_FLEXION } from '../../block/score-terms.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import { loopsOverPip } from './loops-over-pip.ts';
import type { StripFigures } from './strip-report.ts';

/** Everything about a strip that does not stop it but that the therapist must see. */
export function stripWarnings(hand: Hand, f: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  return [...differential(f), ...freePip(f), ...trimCover(f), ...borderTarget(hand, f), ...loopsOverPip(hand, f.loops)];
}

function differential({ options }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  if (options.differential >= low && options.differential <= high) return [];
  return [
    {
      code: 'DIFFERENTIAL_UNUSUAL',
      where: 'differential',
      message: `differential ${plain(options.differential)} degrees lies outside the ${low} to ${high} that surveyed therapists use (Merritt & Jarrell 2020; Yates et al. 2023)`,
      value: options.differential,
      limit: options.differential < low ? low : high,
      next: `use ${low} to ${high} degrees unless you have a reason`,
    },
  ];
}

function freePip({ freePip }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  return Object.entries(freePip).flatMap(([digit, angle]) =>
    angle >= LEAST_FREE_PIP_FLEXION
      ? []
      : [
          {
            code: 'PIP_FLEXION_NOT_FREE',
            where: `digits.${digit}.palmarRoom`,
            message: `the strip may stop PIP flexion of the ${digit} finger at ${plain(angle, 0)} degrees, under ${LEAST_FREE_PIP_FLEXION}`,
            value: angle,
            limit: LEAST_FREE_PIP_FLEXION,
            next: 'use thinner sheet, a larger pipClearance or a narrower strip',
          },
        ],
  );
}

function trimCover({ band, options }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  if (band.above <= options.trim) return [];
  return [
    {
      code: 'TRIM_TOO_SHORT',
      where: 'trim',
      message: `the strip may have to be up to ${plain(band.above, 1)} mm longer (95 % band of the measuring errors), more than the trim of ${plain(options.trim, 1)} mm covers`,
      value: options.trim,
      limit: band.above,
      next: `use a trim of ${Math.ceil(band.above)} mm`,
    },
  ];
}

function borderTarget(hand: Hand, { block }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  const target = hand.target?.digit;
  if ((target !== 'index' && target !== 'little') || placedDigits(block).length === 4) return [];
  return [
    {
      code: 'BORDER_TARGET_IN_THREE',
      where: 'target.digit',
      message: `the ${target} finger is a border digit: in a three-digit block its rotation is not controlled, above all when its joints are hypermobile`,
      next: 'prefer a block of four digits',
    },
  ];
}
