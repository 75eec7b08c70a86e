import type { DigitName } from '../../../hand/digits.ts';
import { endAllowances, flattened } from '../../../pattern/strip/strip-outline.ts';
import { capital } from '../../../words/hand-words.ts';
import type { DrawnStrip } from '../../derive.ts';
import type { DrawnPlate } from '../../derive-plate.ts';
import { useStore } from '../../parts/store-context.ts';
import type { Texts } from '../../texts/english.ts';
import { fieldName } from '../../translate-messages.ts';

/** All figures of the strip: what the picture shows, in words. */
export function FiguresTable({ shown }: { readonly shown: DrawnStrip }) {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  const { report } = shown;
  const inPattern = texts.pattern;
  const rows: (readonly [string, string])[] = [
    [inPattern.flatLength, format.mm(report.flatLength)],
    [
      report.paperTrial ? inPattern.bandRead : inPattern.band,
      `${format.number(report.lengthBand95[0], 1)} ${texts.to} ${format.mm(report.lengthBand95[1])}`,
    ],
    [inPattern.flatWidth, format.mm(report.flatWidth)],
    [inPattern.pathLength, format.mm(report.pathLength)],
    ...report.relief.map((r) => [inPattern.relief(texts.hand.finger[r.digit]), format.mm(r.depth)] as const),
    ...Object.entries(report.freePipFlexion).map(
      ([digit, angle]) => [inPattern.freePip(texts.hand.finger[digit as DigitName]), format.degrees(angle, 0)] as const,
    ),
    ...report.loops.map(
      (loop) =>
        [
          inPattern.loop(loop.digits.map((d) => texts.hand.finger[d]).join(` ${texts.hand.and} `)),
          `${format.mm(loop.innerCircumference)}, ${inPattern.ringSize(loop.isoRingSize)}`,
        ] as const,
    ),
    ...report.standOff.map((s) => [inPattern.standOff(texts.hand.finger[s.digit]), format.mm(s.distance)] as const),
    ...(report.estimated.length > 0
      ? [[inPattern.estimatedList, report.estimated.map((where) => fieldName(where, texts)).join('; ')] as const]
      : []),
  ];
  return <Figures rows={rows} />;
}

/** All figures of a plate. */
export function PlateTable({ shown }: { readonly shown: DrawnPlate }) {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  const { report } = shown;
  const rows: (readonly [string, string])[] = [
    ...report.faces.flatMap((face) => [
      [texts.plate.size(texts.plate.face[face.face]), `${format.mm(face.width)} ${texts.plate.by} ${format.mm(face.length)}`] as const,
      [texts.plate.bend(texts.plate.face[face.face]), format.mm(Math.max(...face.bend.parts.map((part) => part.length)))] as const,
    ]),
    [texts.plate.cover, format.mm(report.cover)],
    [texts.plate.wrist, format.mm(report.wristFree)],
    ...Object.entries(report.freePipFlexion).map(
      ([digit, angle]) => [texts.pattern.freePip(texts.hand.finger[digit as DigitName]), format.degrees(angle, 0)] as const,
    ),
    ...report.straps.map((s) => [texts.plate.strap(s.id), `${format.mm(s.width)} ${texts.plate.by} ${format.mm(s.length)}`] as const),
    ...(report.estimated.length > 0
      ? [[texts.pattern.estimatedList, report.estimated.map((where) => fieldName(where, texts)).join('; ')] as const]
      : []),
  ];
  return <Figures rows={rows} />;
}

function Figures({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  const { pattern } = useStore().texts.value;
  return (
    <table>
      <caption class="hidden">{pattern.figures}</caption>
      <thead>
        <tr>
          <th scope="col">{pattern.item}</th>
          <th scope="col">{pattern.value}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Every mark with its distance from the starting end, so that one can work with a ruler alone. */
export function MarksTable({ shown }: { readonly shown: DrawnStrip }) {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  return (
    <table class="marks">
      <caption>{texts.pattern.marks}</caption>
      <thead>
        <tr>
          <th scope="col">{texts.pattern.distance}</th>
          <th scope="col">{texts.pattern.mark}</th>
        </tr>
      </thead>
      <tbody>
        {markRows(texts, shown).map(({ at, name }) => (
          <tr key={name}>
            <td class="number">{format.mm(at)}</td>
            <td>{name}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The marks across the strip in words, in the order in which they lie; mm from the starting end. */
export function markRows(texts: Texts, { figures }: DrawnStrip): readonly { readonly at: number; readonly name: string }[] {
  const { path, flat, options } = figures;
  const at = (u: number) => flattened(u, options) - flat.start;
  const p = texts.pattern;
  const { seam, trim } = endAllowances(options);
  const isLap = seam > 0 && options.seam !== 'pinch';
  const rows = [
    ...path.passes.map((x) => ({
      at: at(x.u),
      name: p.midline(texts.hand.first[x.digit], texts.hand.aspect[x.aspect], texts.hand.layer[x.layer]),
    })),
    ...path.webCrossings.map((x) => {
      const [one, other] = x.between;
      return { at: at(x.u), name: p.web(texts.hand.finger[one], texts.hand.finger[other], texts.hand.layer[x.layer]) };
    }),
    ...path.borderTurns.map((x) => ({ at: at(x.u), name: capital(p.borderTurn(texts.hand.border[x.border], texts.hand.finger[x.digit])) })),
    { at: at(0), name: p.seamStart },
    { at: flat.seamEnd - flat.start, name: p.seamEnd },
    ...(isLap ? [{ at: seam - flat.start, name: p.overlapStart }] : []),
    ...(isLap ? [{ at: flat.seamEnd - seam - flat.start, name: p.overlapEnd }] : []),
    ...(trim > 0 ? [{ at: flat.end - trim - flat.start, name: p.trim }] : []),
    { at: flat.flatLength, name: p.end },
  ];
  return rows.toSorted((a, b) => a.at - b.at);
}
