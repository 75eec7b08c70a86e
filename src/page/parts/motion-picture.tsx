import type { DrawnShape } from '../../pattern/drawing.ts';
import { goniometerPicture, type JointReach } from '../../picture/goniometer.ts';
import { plain } from '../../units/number.ts';
import { DrawnShapes } from './drawn-shapes.tsx';

/** The finger from the side with the goniometer where it is laid, straightened and bent as far as was typed; looked at and not dragged. */
export function MotionPicture({ lacks, bends, title }: JointReach & { readonly title: string }) {
  const { items, extents } = goniometerPicture({ lacks, bends });
  return (
    <div class="motion-room">
      <svg
        class="motion-picture inked"
        viewBox={`0 0 ${plain(extents.maxX - extents.minX, 1)} ${plain(extents.maxY - extents.minY, 1)}`}
        role="img"
        aria-label={title}
      >
        <DrawnShapes items={items as readonly DrawnShape[]} extents={extents} />
      </svg>
    </div>
  );
}
