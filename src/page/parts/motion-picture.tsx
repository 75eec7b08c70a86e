import { plain } from '../../units/number.ts';

const PROXIMAL = 42;
const DISTAL = 44;

/** The finger from the side, straightened and bent as far as it goes; a picture of two numbers, looked at and not dragged. */
export function MotionPicture({ lacks, bends, title }: { readonly lacks: number; readonly bends: number; readonly title: string }) {
  const end = (degrees: number) => {
    const angle = (degrees * Math.PI) / 180;
    return `${plain(PROXIMAL + DISTAL * Math.cos(angle), 1)} ${plain(14 + DISTAL * Math.sin(angle), 1)}`;
  };
  return (
    <svg class="motion-picture" viewBox="-6 -8 104 76" role="img" aria-label={title}>
      <path class="reach" d={`M${PROXIMAL} 14 L${end(lacks)} A${DISTAL} ${DISTAL} 0 0 1 ${end(Math.min(bends, 170))} Z`} />
      <path class="bone" d={`M0 14 H${PROXIMAL}`} />
      <path class="bone far" d={`M${PROXIMAL} 14 L${end(bends)}`} />
      <path class="bone" d={`M${PROXIMAL} 14 L${end(lacks)}`} />
    </svg>
  );
}
