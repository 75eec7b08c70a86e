import { boxOf, type LineArcPath, polyline } from '../../geometry/path.ts';
import { textWidth } from '../../geometry/stroke-letters.ts';
import { placePath, placePoint } from '../../geometry/transform.ts';
import type { Side } from '../../hand/digits.ts';
import { type Speech, speechIn } from '../../words/speech.ts';
import type { Label, Mark } from '../pattern.ts';
import type { Drawn } from '../place-marks.ts';
import { bandLine, bodyEdge } from './band-drawing.ts';
import type { StripSettings } from './strip-options.ts';
import type { StripPath } from './strip-path.ts';

const NAME_HEIGHT = 2.2;
const SMALL = 1.8;
/** Share of a digit's width that its words may take. */
const NAME_ROOM = 0.8;

/**
 * The digits end-on with the strip round them, as the therapist sees the patient's fingertips: dorsal up, the radial side of a left hand
 * on the left. All on INFO, true size, mm; the caller places it.
 */
export function sectionView(
  path: StripPath,
  side: Side,
  options: Pick<StripSettings, 'thickness'>,
  speech: Speech = speechIn('en'),
): Drawn {
  const { hand, strip } = speech;
  // x runs from radial to ulnar; seen from the fingertips that is left to right on a left hand only.
  const seen = { mirrorX: side === 'right', dx: 0, dy: 0 };
  const marks: Mark[] = [];
  const labels: Label[] = [];
  const info = (role: string, title: string, paths: readonly LineArcPath[]) =>
    marks.push({ layer: 'INFO', role, title, paths: paths.map((p) => placePath(p, seen)), circles: [] });
  for (const s of path.hand.sections) {
    const body = { center: { x: s.x, y: s.y }, a: s.halfWidth, b: s.standingHalfDepth, offset: 0 };
    info('section-digit', strip.section.digit(hand.finger[s.digit], hand.place[s.place]), [bodyEdge(body)]);
    const at = placePoint(body.center, seen);
    const room = 2 * s.halfWidth * NAME_ROOM;
    const name = heightFor(hand.short[s.digit], room, NAME_HEIGHT);
    const place = heightFor(hand.place[s.place], room, SMALL);
    labels.push(
      centred(hand.short[s.digit], at.x, at.y + 0.15 * name, name),
      centred(hand.place[s.place], at.x, at.y - 1.8 * place, place),
    );
  }
  const half = options.thickness / 2;
  const faces = [bandLine(path.pieces, half), bandLine(path.pieces, -half)];
  info('section-strip', strip.section.strip, faces);
  const away = path.held === 'raised' ? -1 : 1;
  const inside = path.seam.y - away * half;
  // The line leads out of the band, so that its words stand clear of the loops on both sides.
  const band = boxOf(faces);
  const tip = (away > 0 ? band.maxY : band.minY) + away;
  info('section-seam', strip.section.seam, [
    polyline([
      { x: path.seam.x, y: inside },
      { x: path.seam.x, y: tip },
    ]),
  ]);
  const seam = placePoint({ x: path.seam.x, y: tip }, seen);
  labels.push(centred(strip.section.seamOuter, seam.x, away > 0 ? seam.y + 0.8 : seam.y - 0.8 - SMALL, SMALL));
  return { marks, labels };
}

/** The height at which a word fits the room, at most the usual one; mm. */
function heightFor(word: string, room: number, usual: number): number {
  return Math.min(usual, room / textWidth(word, 1));
}

function centred(text: string, x: number, y: number, height: number): Label {
  return { layer: 'INFO', text, at: { x, y }, height, align: 'center', angle: 0 };
}
