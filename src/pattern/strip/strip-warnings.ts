import { type Block, placedDigits } from '../../block/block.ts';
import { SURVEYED_DIFFERENTIAL } from '../../block/figures.ts';
import { blocks } from '../../block/library.ts';
import { NO_FIST } from '../../block/rank-blocks.ts';
import { DIGITS, type DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import { freeFlexionOffer, type TriedStrips } from './free-flexion-offer.ts';
import { layStrip } from './lay-strip.ts';
import { narrowWarning } from './least-width-offer.ts';
import { loopsOverPip } from './loops-over-pip.ts';
import { NUMBER_OPTIONS, type StripOptions } from './strip-options.ts';
import { type StripFigures, tapering } from './strip-report.ts';
import { layFirst } from './version-1/lay-first.ts';

/** Everything about a strip that does not stop it but that the therapist must see. */
export function stripWarnings(hand: Hand, f: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  const lay = f.geometryVersion === '1' ? layFirst : layCompared;
  const holds: Holds = (changes) => lay(hand, f.block, { ...f.asked, ...changes }).ok;
  return [
    ...differential(f, holds),
    ...freePip(hand, f),
    ...underLeastWidth(hand, f),
    ...pulled(f, holds),
    ...notTapered(f, holds),
    ...retired(f),
    ...trimCover(f),
    ...borderTarget(hand, f),
    ...loopsOverPip(hand, f.loops, { asked: f.asked.seam, used: f.options.seam }, () => holds({ seam: 'opening' })),
  ];
}

/** Tries another choice on the same hand and block; what is not tried so is not offered. */
type Holds = (changes: Partial<StripOptions>) => boolean;

function differential({ options }: Omit<StripFigures, 'warnings'>, holds: Holds): readonly Warning[] {
  const { low, high } = SURVEYED_DIFFERENTIAL;
  if (options.differential >= low && options.differential <= high) return [];
  const nearest = options.differential < low ? low : high;
  return [
    {
      code: 'DIFFERENTIAL_UNUSUAL',
      where: 'differential',
      message: `differential ${plain(options.differential)} degrees lies outside the ${low} to ${high} that surveyed therapists use (Yates et al. 2023)`,
      value: options.differential,
      limit: nearest,
      next: holds({ differential: nearest })
        ? `use ${nearest} degrees unless you have a reason`
        : `at ${nearest} degrees this strip cannot be made of this hand: choose another block unless you have a reason`,
    },
  ];
}

/** A strip that is only compared with the one that is told: what would mend it is not looked for. */
const layCompared = (hand: Hand, block: Block, options: StripOptions) => layStrip(hand, block, options, 'no offers');

const NOTHING_FREES =
  'no narrower least width, smaller gap to the web or other block that was tried helps: measure palmarRoom again, and check the fist before the plastic sets';

function freePip(hand: Hand, f: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  const tried: TriedStrips = new Map();
  return (Object.entries(f.freePip) as [DigitName, number][]).flatMap(([digit, angle]) =>
    angle >= NO_FIST
      ? []
      : [
          {
            code: 'PIP_FLEXION_NOT_FREE',
            where: `digits.${digit}.palmarRoom`,
            message: `the strip stops PIP flexion of the ${digit} finger at about ${plain(angle, 0)} degrees, under ${NO_FIST}`,
            value: angle,
            limit: NO_FIST,
            next:
              f.geometryVersion === '1'
                ? 'choose a block without this digit on the palmar side, and check the fist before the plastic sets'
                : (freeFlexionOffer(hand, f, digit, tried) ?? NOTHING_FREES),
          },
        ],
  );
}

/** A strip that the rounds of laying its edges leave under its least width. */
function underLeastWidth(
  hand: Hand,
  { tooNarrow, edges, block, asked, options, geometryVersion }: Omit<StripFigures, 'warnings'>,
): readonly Warning[] {
  if (tooNarrow === null) return [];
  return [narrowWarning({ hand, block, asked, options, edges, tooNarrow }, geometryVersion === '1' ? layFirst : layCompared)];
}

/** Over this shear a straight strip must be drawn so much that it thins and creeps back: an assumption, no source. */
const MOST_SHEAR = 0.2;

function pulled({ pull }: Omit<StripFigures, 'warnings'>, holds: Holds): readonly Warning[] {
  if (pull === null || pull.shear <= MOST_SHEAR) return [];
  const half = Math.sqrt(1 + (pull.shear / 2) ** 2);
  const [longer, shorter] = [half + pull.shear / 2 - 1, 1 - (half - pull.shear / 2)];
  return [
    {
      code: 'STRAIGHT_PULLED',
      where: 'outline',
      message: `a straight strip must be pulled ${plain(pull.difference, 1)} mm along the hand between the ${pull.between.join(' and ')} fingers, which stretches it by ${plain(100 * longer, 0)} % one way and presses it by ${plain(100 * shorter, 0)} % the other`,
      value: pull.shear,
      limit: MOST_SHEAR,
      next: holds({ outline: 'staggered' })
        ? 'use the staggered outline, or warm the strip again there and pull it slowly'
        : 'warm the strip again there and pull it slowly',
    },
  ];
}

/** A straight strip stands off at an edge where fingers taper; up to the usual clearance again is let be: an assumption, no source. mm */
const MOST_STAND_OFF = 0.5;

function notTapered(f: Omit<StripFigures, 'warnings'>, holds: Holds): readonly Warning[] {
  if (f.options.outline !== 'straight') return [];
  // From the level at which a finger is measured to the edge of the strip farthest from it the radius changes by about half a width times the taper.
  const off = Math.max(0, ...tapering(f).map((s) => (Math.abs(Math.tan(s.taper)) * f.options.width) / 2));
  if (off <= MOST_STAND_OFF) return [];
  return [
    {
      code: 'STRAIGHT_NOT_TAPERED',
      where: 'outline',
      message: `the fingers taper, which a straight strip does not follow: one of its edges stands off by about ${plain(off, 1)} mm all round`,
      value: off,
      limit: MOST_STAND_OFF,
      next: holds({ outline: 'staggered' })
        ? 'use the staggered outline, which is curved for it'
        : 'warm that edge again and press it to the fingers, without stretching it',
    },
  ];
}

function retired({ options, geometryVersion }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  if (options.pipClearance === undefined || geometryVersion === '1') return [];
  return [
    {
      code: 'OPTION_RETIRED',
      where: 'pipClearance',
      message: 'pipClearance is no longer asked for and was not used: the edge follows from the PIP flexion that must stay free',
      next: 'say freeFlexion, in degrees, instead',
    },
  ];
}

/** The most trim that can be asked for, mm. */
const MOST_TRIM = NUMBER_OPTIONS.find((o) => o.key === 'trim')?.high ?? 0;

function trimCover({ band, options }: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  if (band.above <= options.trim) return [];
  return [
    {
      code: 'TRIM_TOO_SHORT',
      where: 'trim',
      message: `the strip may have to be up to ${plain(band.above, 1)} mm longer (95 % band of the measuring errors), more than the trim of ${plain(options.trim, 1)} mm covers`,
      value: options.trim,
      limit: band.above,
      next:
        band.above <= MOST_TRIM
          ? `use a trim of ${Math.ceil(band.above)} mm`
          : 'measure all fingers again: no trim covers errors as large as these',
    },
  ];
}

function borderTarget(hand: Hand, f: Omit<StripFigures, 'warnings'>): readonly Warning[] {
  const { block } = f;
  const target = hand.target?.digit;
  if ((target !== 'index' && target !== 'little') || placedDigits(block).length === 4) return [];
  return [
    {
      code: 'BORDER_TARGET_IN_THREE',
      where: 'target.digit',
      message: `the ${target} finger is a border digit: in a three-digit block its rotation is not controlled, above all when its joints are hypermobile`,
      next: wider(hand, f),
    },
  ];
}

/** A block of four digits that places those of this one alike, tried on the hand; else what stands in its way. */
function wider(hand: Hand, { block, asked, geometryVersion }: Omit<StripFigures, 'warnings'>): string {
  const lay = geometryVersion === '1' ? layFirst : layCompared;
  const alike = blocks().filter(
    (b) => placedDigits(b).length === 4 && placedDigits(block).every(({ digit, place }) => b.places[digit] === place),
  );
  const [other] = alike.filter((b) => lay(hand, b, asked).ok);
  if (other) return `prefer a block of four digits: ${other.id} can be made of this hand`;
  const missing = DIGITS.find((digit) => hand.digits[digit] === undefined);
  return missing === undefined || hand.absent?.includes(missing)
    ? 'watch its rotation: no block of four digits that places these alike can be made of this hand'
    : `prefer a block of four digits: measure the ${missing} finger for it`;
}
